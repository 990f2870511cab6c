//! What is printed reads back bit for bit, in one order, and is short.

use fastrand::Rng;
use two_frames::scenario::{Field, PRESETS, PlanetChoice, Scenario};

use super::scenarios::any;
use super::{bits, complaints, words};

#[test]
fn what_is_printed_reads_back_bit_for_bit() {
    let mut rng = Rng::with_seed(1);
    let mut longest = 0;
    for _ in 0..100_000 {
        let scenario = any(&mut rng);
        let text = scenario.to_string();
        let read = Scenario::read_strictly(&text)
            .unwrap_or_else(|notices| panic!("{text}: {:?}", words(&notices)));
        assert_eq!(bits(&read), bits(&scenario), "{text}");
        assert_eq!(read.planet().key(), scenario.planet().key(), "{text}");
        assert_eq!(read.to_string(), text);
        if scenario.get(Field::Gm).is_none() {
            longest = longest.max(text.len());
        }
    }
    // Even with every digit of every number a link to a known planet stays short enough for a slide.
    println!("the longest text with a known planet has {longest} characters");
    assert!(longest <= 200, "{longest} characters");
}

#[test]
fn the_ends_of_every_range_read_back_too() {
    for field in Field::ALL {
        let spec = field.spec();
        for value in [
            spec.min,
            spec.max,
            0.0,
            5e-324,
            1e-7,
            1e21,
            123_456_789.123_456_79,
        ] {
            let mut scenario = Scenario::default();
            scenario
                .choose_planet(PlanetChoice::CUSTOM)
                .expect("custom is a planet");
            if scenario.set(field, value).is_err() {
                continue;
            }
            let text = scenario.to_string();
            let read = Scenario::read_strictly(&text)
                .unwrap_or_else(|notices| panic!("{text}: {:?}", words(&notices)));
            assert_eq!(bits(&read), bits(&scenario), "{text}");
        }
    }
}

/// A handle let go a little below 0° must not leave "approach=-0" in the address, nor be another pass than 0°.
#[test]
fn zero_has_no_sign() {
    for field in [Field::Approach, Field::Crank, Field::Aim] {
        let mut scenario = Scenario::default();
        scenario.set(field, -0.0).expect("zero is in the range");
        assert_eq!(scenario.get(field).map(f64::to_bits), Some(0), "{field:?}");
        let text = format!("{}=-0", field.spec().key);
        let read = Scenario::read_strictly(&text).expect("zero is in the range");
        assert_eq!(read.get(field).map(f64::to_bits), Some(0), "{text}");
    }
}

#[test]
fn ordinary_links_are_short() {
    for preset in &PRESETS {
        assert!(
            preset.text.len() <= 120,
            "{}: {} characters",
            preset.id,
            preset.text.len()
        );
    }
    let mut rng = Rng::with_seed(3);
    for _ in 0..1_000 {
        let mut scenario = Scenario::default();
        for field in Field::ALL
            .into_iter()
            .filter(|field| !field.is_of_custom_planet())
        {
            let (low, high, _) = field.spec().slider_range();
            let value = field.spec().value_at(low + (high - low) * rng.f64());
            scenario.set(field, value).expect("a slider's value");
        }
        let text = scenario.to_string();
        assert!(text.len() <= 110, "{text}: {} characters", text.len());
    }
}

/// The keys in the order of the contract.
const KEYS: [&str; 11] = [
    "v",
    "planet",
    "gm",
    "radius",
    "orbit",
    "v-infinity",
    "approach",
    "crank",
    "periapsis",
    "aim",
    "probe-mass",
];

#[test]
fn keys_stand_in_one_order_and_may_be_given_in_any() {
    let mut rng = Rng::with_seed(4);
    for _ in 0..2_000 {
        let scenario = any(&mut rng);
        let text = scenario.to_string();
        let mut pieces: Vec<_> = text.split('&').collect();
        let places: Vec<_> = pieces
            .iter()
            .map(|piece| {
                let key = piece.split_once('=').expect("key=value").0;
                KEYS.iter()
                    .position(|known| *known == key)
                    .expect("a known key")
            })
            .collect();
        assert!(places.windows(2).all(|pair| pair[0] < pair[1]), "{text}");
        for always in [
            "v=1",
            "planet=",
            "v-infinity=",
            "approach=",
            "periapsis=",
            "aim=",
        ] {
            assert!(
                pieces.iter().any(|piece| piece.starts_with(always)),
                "{always} in {text}"
            );
        }
        rng.shuffle(&mut pieces);
        let read = Scenario::read_strictly(&pieces.join("&")).expect("any order will do");
        assert_eq!(read.to_string(), text);
    }
}

#[test]
fn what_is_left_out_has_its_default() {
    let full = Scenario::default().to_string();
    assert_eq!(
        full,
        "v=1&planet=jupiter&v-infinity=9&approach=129&periapsis=8&aim=0"
    );
    for text in [
        "",
        "v=1",
        "planet=jupiter",
        "aim=0&v=1",
        "&&",
        "crank=0&probe-mass=480",
    ] {
        assert_eq!(complaints(text), (Scenario::default(), vec![]), "{text}");
    }
}
