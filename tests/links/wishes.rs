//! The goal's text form: what is printed reads back bit for bit, and whatever is not a goal is refused in words.

use fastrand::Rng;
use two_frames::physics::{Body, Planet};
use two_frames::scenario::{BadWish, Most, PlanetChoice, Wish, WishKind};

/// Every kind of wish; those with a value have one anywhere in the range, ends included.
fn any(rng: &mut Rng) -> Wish {
    match rng.usize(..7) {
        5 => Wish::Reach(PlanetChoice::KNOWN[rng.usize(..8)].1),
        6 => Wish::Most(Most::ALL[rng.usize(..3)].1),
        kind => {
            let kind = WishKind::ALL[kind];
            let spec = kind.spec();
            let value = match rng.u8(..4) {
                0 => spec.min,
                1 => spec.max,
                2 => spec.usual,
                _ => spec.min + (spec.max - spec.min) * rng.f64(),
            };
            Wish::Value(kind, value)
        }
    }
}

fn same(one: Wish, other: Wish) -> bool {
    match (one, other) {
        (Wish::Value(a, x), Wish::Value(b, y)) => a == b && x.to_bits() == y.to_bits(),
        _ => one == other,
    }
}

#[test]
fn goals_read_back_bit_for_bit() {
    let mut rng = Rng::with_seed(61);
    for _ in 0..20_000 {
        let wish = any(&mut rng);
        let text = wish.to_string();
        let read = Wish::read(&text).unwrap_or_else(|bad| panic!("{text}: {bad}"));
        assert!(same(wish, read), "{text}: {read:?}");
    }
}

/// As a person would write them, by hand.
#[test]
fn goals_are_written_as_promised() {
    for (text, wish) in [
        ("aphelion=9.5", Wish::Value(WishKind::Aphelion, 9.5)),
        ("perihelion=1", Wish::Value(WishKind::Perihelion, 1.0)),
        ("leave=0", Wish::Value(WishKind::Leave, 0.0)),
        ("turn=90", Wish::Value(WishKind::Turn, 90.0)),
        ("change=-2.5", Wish::Value(WishKind::Change, -2.5)),
        ("reach=saturn", Wish::Reach(Body::Saturn)),
        ("most=gain", Wish::Most(Most::Gain)),
        ("most=loss", Wish::Most(Most::Loss)),
        ("most=inclination", Wish::Most(Most::Inclination)),
    ] {
        assert_eq!(Wish::read(text), Ok(wish), "{text}");
        assert_eq!(wish.to_string(), text);
    }
    assert_eq!(
        Wish::read("change=-0").map(|wish| wish.to_string()),
        Ok("change=0".into())
    );
}

#[test]
fn the_advice_in_a_refusal_works() {
    for text in [
        "",
        "=",
        "aphelion",
        "turn=0",
        "change=1e4",
        "leave=NaN",
        "reach=sun",
        "most=",
        "a=b",
    ] {
        let bad = Wish::read(text).expect_err(text).to_string();
        let (_, advice) = bad
            .split_once("; try ")
            .unwrap_or_else(|| panic!("no advice: {bad}"));
        let key = text.split_once('=').map_or(text, |(key, _)| key);
        for tried in advice
            .trim_end_matches('.')
            .replace(" or ", ", ")
            .split(", ")
        {
            let tried = if tried.contains('=') {
                tried.to_owned()
            } else {
                format!("{key}={tried}")
            };
            assert!(Wish::read(&tried).is_ok(), "{tried}, advised by: {bad}");
        }
    }
}

/// Every planet's own orbit, also under a custom planet; every other one can be aimed for.
#[test]
fn the_own_orbit_is_no_goal() {
    for (_, passed) in PlanetChoice::KNOWN {
        for (_, wanted) in PlanetChoice::KNOWN {
            let known = Planet::of(passed);
            let custom = Planet::custom(1e6, 1e4, known.orbit_km).expect("a planet");
            for planet in [known, custom] {
                let goal = Wish::Reach(wanted).goal(&planet);
                if wanted == passed {
                    assert_eq!(goal, Err(BadWish::OwnOrbit(known.name)));
                } else {
                    assert!(goal.is_ok(), "{passed:?} to {wanted:?}");
                }
            }
        }
    }
}

#[test]
fn nothing_breaks_on_garbage() {
    const PIECES: [&str; 16] = [
        "aphelion",
        "perihelion=",
        "leave=",
        "turn=",
        "change=-",
        "reach=",
        "most=",
        "gain",
        "saturn",
        "=",
        "1e999",
        "NaN",
        "-inf",
        "9,5",
        "𝛼",
        "\u{0}",
    ];
    let mut rng = Rng::with_seed(62);
    let mut good = 0;
    for _ in 0..40_000 {
        let piece = |rng: &mut Rng| match rng.u8(..6) {
            0 => rng.char(..).to_string(),
            1 => format!("{:e}", f64::from_bits(rng.u64(..))),
            2 => rng.u64(..1000).to_string(),
            _ => PIECES[rng.usize(..PIECES.len())].to_owned(),
        };
        let text: String = (0..rng.usize(..5)).map(|_| piece(&mut rng)).collect();
        match Wish::read(&text) {
            Ok(wish) => {
                good += 1;
                let again = Wish::read(&wish.to_string()).expect("it prints a goal");
                assert!(same(wish, again), "{text}");
            }
            Err(bad) => {
                let bad = bad.to_string();
                assert!(
                    bad.ends_with('.') && bad.chars().count() < 300,
                    "{text}: {bad}"
                );
            }
        }
    }
    assert!(good > 100, "only {good} goals among the garbage");
}
