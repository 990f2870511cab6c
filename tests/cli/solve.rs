//! `solve TEXT`: the contract's keys, numbers that read back, nulls that mean something, refusals in the library's words.

use fastrand::Rng;
use serde_json::Value;
use two_frames::report::refusal;
use two_frames::sandbox::Sandbox;
use two_frames::scenario::{Notice, PRESETS, PlanetChoice, Scenario};

use crate::{feed, printed, refusals, run};

/// Every key in its order. Source: the contract, "What outsiders may rely on", written down by hand.
const KEYS: &str = "
    scenario outcome
    planet name gm_km3_s2 radius_km orbit_radius_km orbit_speed_km_s
    planet_frame v_infinity_km_s eccentricity semi_major_axis_km turn_deg impact_parameter_km b_t_km b_r_km periapsis_km
    periapsis_speed_km_s periapsis_direction velocity_in_km_s velocity_out_km_s
    sun_frame velocity_in_km_s velocity_out_km_s speed_in_km_s speed_out_km_s speed_change_km_s velocity_change_km_s
    energy_change_km2_s2 side
    orbit_before semi_major_axis_au eccentricity perihelion_au aphelion_au period_yr inclination_deg
    speed_left_at_infinity_km_s
    orbit_after semi_major_axis_au eccentricity perihelion_au aphelion_au period_yr inclination_deg
    speed_left_at_infinity_km_s";

/// What comes after an impact. Source: DEVELOPERS.md, "Where the contract left room".
const AFTER_AN_IMPACT: &str = "
    /planet_frame/turn_deg /planet_frame/periapsis_speed_km_s /planet_frame/periapsis_direction
    /planet_frame/velocity_out_km_s
    /sun_frame/velocity_out_km_s /sun_frame/speed_out_km_s /sun_frame/speed_change_km_s /sun_frame/velocity_change_km_s
    /sun_frame/energy_change_km2_s2 /sun_frame/side
    /orbit_after/semi_major_axis_au /orbit_after/eccentricity /orbit_after/perihelion_au /orbit_after/aphelion_au
    /orbit_after/period_yr /orbit_after/inclination_deg /orbit_after/speed_left_at_infinity_km_s";

#[test]
fn the_keys_stand_in_the_order_of_the_contract() {
    let text = printed(run(&["solve", ""]));
    assert_eq!(text.lines().count(), 1);
    // A key is what stands in quotes before a colon; no value of an answer has a quote in it.
    let parts: Vec<_> = text.split('"').collect();
    let keys = parts.windows(2).filter(|pair| pair[1].starts_with(':'));
    let keys: Vec<_> = keys.map(|pair| pair[0]).collect();
    let contract: Vec<_> = KEYS.split_whitespace().collect();
    assert_eq!(keys, contract);
}

#[test]
fn the_default_pass_is_the_contract_s() {
    let answer: Value = serde_json::from_str(&printed(run(&["solve", ""]))).expect("JSON");
    let text = "v=1&planet=jupiter&v-infinity=9&approach=129&periapsis=8&aim=0";
    assert_eq!(answer["scenario"], text);
    assert_eq!(answer["outcome"], "passes");
    assert_eq!(answer["sun_frame"]["side"], "behind");
    assert_eq!(answer["planet"]["name"], "Jupiter");
    let speeds = ["speed_in_km_s", "speed_out_km_s"].map(|key| {
        let speed = answer["sun_frame"][key].as_f64().expect("a number");
        format!("{speed:.2}")
    });
    // Source: the project's own promise for the default pass.
    assert_eq!(speeds, ["10.18", "21.08"]);
}

/// Passes of every kind: the presets, ordinary ones, and planets at the edge of what can be computed.
fn texts() -> Vec<String> {
    let mut rng = Rng::with_seed(7);
    let mut texts: Vec<_> = PRESETS
        .iter()
        .map(|preset| preset.text.to_owned())
        .collect();
    for i in 0..600 {
        let planet = match i % 9 {
            8 => format!(
                "custom&gm={:e}&radius={:e}&orbit={:e}",
                wide(&mut rng),
                wide(&mut rng),
                wide(&mut rng)
            ),
            known => PlanetChoice::KNOWN[known].0.to_owned(),
        };
        let angle = |rng: &mut Rng| 45 * rng.i32(-4..=4);
        texts.push(format!(
            "planet={planet}&v-infinity={}&approach={}&crank={}&periapsis={}&aim={}",
            0.01 + 40.0 * rng.f64(),
            angle(&mut rng),
            angle(&mut rng),
            libm::pow(10.0, 4.0 * rng.f64() - 1.0),
            360.0 * rng.f64() - 180.0
        ));
    }
    texts
}

/// A number between a hundred-thousandth and a million million.
fn wide(rng: &mut Rng) -> f64 {
    libm::pow(10.0, 17.0 * rng.f64() - 5.0)
}

/// Each text that has an answer, with the answer.
fn answers() -> Vec<(String, Value)> {
    let texts = texts();
    let output = feed(&["solve", "-"], texts.join("\n").as_bytes());
    let lines = String::from_utf8(output.stdout).expect("the output is UTF-8");
    let read = |line| serde_json::from_str::<Value>(line).expect("each line is JSON");
    let answers: Vec<_> = texts.into_iter().zip(lines.lines().map(read)).collect();
    let solved: Vec<_> = answers
        .into_iter()
        .filter(|(_, answer)| answer.get("error").is_none())
        .collect();
    assert!(solved.len() > 550, "only {} have an answer", solved.len());
    solved
}

/// The value's leaves with their paths.
fn leaves(path: &str, value: &Value) -> Vec<(String, Value)> {
    match value {
        Value::Object(members) => members
            .iter()
            .flat_map(|(key, value)| leaves(&format!("{path}/{key}"), value))
            .collect(),
        _ => vec![(path.to_owned(), value.clone())],
    }
}

/// The page computes with the library, so what reads back from the command's text has to be the library's bits.
#[test]
fn numbers_read_back_to_the_bits_that_the_page_has() {
    for (text, answer) in answers() {
        let mut sandbox = Sandbox::open(&text);
        let solution = sandbox.solution().expect("it has an answer");
        let library = serde_json::to_value(&solution).expect("plain values");
        for (path, value) in leaves("", &library) {
            let printed = answer.pointer(&path).expect("the same keys");
            let bits = |value: &Value| value.as_f64().map(f64::to_bits);
            assert_eq!(bits(printed), bits(&value), "{path} of {text}");
            assert_eq!(*printed, value, "{path} of {text}");
        }
    }
}

#[test]
fn the_scenario_printed_gives_the_same_answer() {
    for preset in PRESETS {
        let first = printed(run(&["solve", preset.text]));
        let answer: Value = serde_json::from_str(&first).expect("JSON");
        let scenario = answer["scenario"].as_str().expect("a text");
        assert_eq!(printed(run(&["solve", scenario])), first);
    }
}

#[test]
fn the_probe_leaves_the_planet_as_fast_as_it_came() {
    for (text, answer) in answers() {
        let frame = &answer["planet_frame"];
        let Some(out) = frame["velocity_out_km_s"].as_array() else {
            continue;
        };
        let squares = out.iter().filter_map(Value::as_f64).map(|part| part * part);
        let out = squares.sum::<f64>().sqrt();
        let speed = frame["v_infinity_km_s"].as_f64().expect("a number");
        // The contract's bound for the core is 1e-14; the sum of squares adds an ulp or two to it.
        assert!(
            (out / speed - 1.0).abs() < 2e-14,
            "{text}: {out} after {speed}"
        );
    }
}

/// JSON has no NaN and no infinity, and `serde_json` would print null for them: so each null must have its reason.
#[test]
fn each_null_is_a_value_that_does_not_exist() {
    let mut strikes = 0;
    for (text, answer) in answers() {
        let struck = answer["outcome"] == "strikes";
        strikes += u32::from(struck);
        for (path, value) in leaves("", &answer) {
            let expected = if struck && AFTER_AN_IMPACT.split_whitespace().any(|key| key == path) {
                true
            } else if let Some((orbit, key)) = path
                .rsplit_once('/')
                .filter(|(orbit, _)| orbit.starts_with("/orbit"))
            {
                is_missing(answer.pointer(orbit).expect("it is there"), key)
            } else {
                false
            };
            assert_eq!(value.is_null(), expected, "{path} of {text}");
        }
    }
    assert!(strikes > 20, "only {strikes} strikes");
}

/// Whether an orbit lacks a value: a parabola has no semi-major axis, an escape no aphelion and no period, a bound
/// orbit no speed left over, and a path straight through the Sun no inclination.
fn is_missing(orbit: &Value, key: &str) -> bool {
    let number = |key: &str| orbit[key].as_f64();
    let bound = number("semi_major_axis_au").is_some_and(|a| a > 0.0);
    match key {
        "semi_major_axis_au" => {
            number("eccentricity") == Some(1.0)
                && number("speed_left_at_infinity_km_s") == Some(0.0)
        }
        "aphelion_au" | "period_yr" => !bound,
        "speed_left_at_infinity_km_s" => bound,
        "inclination_deg" => number("perihelion_au") == Some(0.0),
        _ => false,
    }
}

#[test]
fn a_bad_text_is_refused_in_the_library_s_words() {
    let texts = [
        "planet=pluto&periapsis=0.001&v-infinity=fast&flavour=3",
        "periapsis=8&periapsis=9&x",
        "gm=5&v=2&aim=NaN",
        "planet=custom&gm=5e5",
        "プラネット=木星&v-infinity=９",
        "#v=2",
    ];
    for text in texts {
        let notices = Scenario::read_strictly(text).expect_err("it is bad");
        let words: Vec<_> = notices.iter().map(Notice::to_string).collect();
        assert_eq!(refusals(&run(&["solve", text])), words);
        for arguments in [
            ["figure", text, "--part", "diagram"],
            ["table", text, "--vary", "aim=0..1"],
        ] {
            assert_eq!(refusals(&run(&arguments)), words);
        }
    }
}

#[test]
fn settings_without_a_flyby_are_refused_in_the_library_s_words() {
    let text = "planet=custom&gm=1e300&radius=1e200&orbit=1e200";
    let error = Sandbox::open(text).solution();
    let words = [refusal(&error.expect_err("no computer holds it"))];
    assert_eq!(refusals(&run(&["solve", text])), words);
    assert_eq!(refusals(&run(&["figure", text, "--part", "record"])), words);
    assert_eq!(
        refusals(&run(&["table", text, "--vary", "aim=0..1"])),
        words
    );
}
