//! The JSON of a solution, and the paths into it that every number shown carries.

use serde_json::Value as Json;
use two_frames::report::{Pass, Piece, Quantity, Sentence, Solution, Value};
use two_frames::sandbox::Sandbox;
use two_frames::scenario::Scenario;

use super::{Solved, bits, many};

/// A solution as the command prints it, read back.
fn json(solution: &Solution) -> Json {
    let text = serde_json::to_string(solution).expect("a solution has a text");
    serde_json::from_str(&text).expect("and the text is JSON")
}

/// The value at a path of parts joined by dots.
fn at<'a>(json: &'a Json, path: &str) -> Option<&'a Json> {
    path.split('.').try_fold(json, |part, key| part.get(key))
}

/// The number at a path, `None` where the JSON has null; panics where there is neither.
fn number_at(json: &Json, path: &str) -> Option<f64> {
    match at(json, path) {
        Some(Json::Null) => None,
        Some(value) => Some(
            value
                .as_f64()
                .unwrap_or_else(|| panic!("{path} is {value}")),
        ),
        None => panic!("the JSON has no {path}"),
    }
}

#[test]
fn every_quantity_is_the_number_at_its_path() {
    let mut paths: Vec<_> = Quantity::ALL.iter().map(|quantity| quantity.path).collect();
    let count = paths.len();
    paths.sort_unstable();
    paths.dedup();
    assert_eq!(paths.len(), count, "each path once");
    let (mut there, mut null) = (0, 0);
    for Solved {
        scenario,
        flyby,
        solution,
    } in many()
    {
        let json = json(&solution);
        let pass = Pass {
            flyby: &flyby,
            probe_mass_kg: scenario.probe_mass_kg(),
        };
        for quantity in Quantity::ALL {
            let value = (quantity.get)(&pass);
            assert!(
                value.is_none_or(f64::is_finite),
                "{scenario}: {}",
                quantity.path
            );
            if !quantity.path.starts_with("page.") {
                assert_eq!(
                    bits(value),
                    bits(number_at(&json, quantity.path)),
                    "{scenario}: {}",
                    quantity.path
                );
                there += usize::from(value.is_some());
                null += usize::from(value.is_none());
            }
        }
    }
    assert!(
        there > 5_000 && null > 500,
        "{there} numbers and {null} nulls compared"
    );
}

fn numbers(sentence: &Sentence) -> Vec<Value> {
    let pieces = sentence.pieces().iter().filter_map(|piece| match piece {
        Piece::Number(value) => Some(value.clone()),
        Piece::Words(_) => None,
    });
    pieces.collect()
}

/// Every value that a panel shows.
fn shown(text: &str) -> Option<Vec<Value>> {
    let panel = Sandbox::open(text).panel().ok()?;
    let mut all: Vec<Value> = panel
        .rows
        .iter()
        .flat_map(|row| row.cells.to_vec())
        .collect();
    all.extend(
        panel
            .facts
            .iter()
            .chain(&panel.now)
            .map(|fact| fact.value.clone()),
    );
    let sentences = [
        &panel.planet_sentence,
        &panel.sun_sentence,
        &panel.motion_note,
        &panel.why,
    ];
    sentences
        .into_iter()
        .chain(&panel.cautions)
        .for_each(|sentence| all.extend(numbers(sentence)));
    Some(all)
}

#[test]
fn every_number_shown_is_the_one_its_path_names() {
    for Solved {
        scenario, solution, ..
    } in many()
    {
        let json = json(&solution);
        for Value { text, path, value } in shown(&scenario.to_string()).expect("it was solved") {
            let want = match path.split_once('-') {
                _ if path.starts_with("page.") => continue,
                Some((after, before)) => number_at(&json, after)
                    .zip(number_at(&json, before))
                    .map(|(a, b)| a - b),
                None => number_at(&json, &path),
            };
            assert_eq!(
                bits(value),
                bits(want),
                "{scenario}: {path}, shown as {text}"
            );
        }
    }
}

/// The keys of the contract, in its order. Source: the project's own contract with outsiders, version 1.
const KEYS: &str = "\
    scenario outcome \
    planet name gm_km3_s2 radius_km orbit_radius_km orbit_speed_km_s \
    planet_frame v_infinity_km_s eccentricity semi_major_axis_km turn_deg impact_parameter_km b_t_km b_r_km periapsis_km \
    periapsis_speed_km_s periapsis_direction velocity_in_km_s velocity_out_km_s \
    sun_frame velocity_in_km_s velocity_out_km_s speed_in_km_s speed_out_km_s speed_change_km_s velocity_change_km_s \
    energy_change_km2_s2 side \
    orbit_before semi_major_axis_au eccentricity perihelion_au aphelion_au period_yr inclination_deg \
    speed_left_at_infinity_km_s \
    orbit_after semi_major_axis_au eccentricity perihelion_au aphelion_au period_yr inclination_deg \
    speed_left_at_infinity_km_s";

#[test]
fn the_json_has_the_contract_s_keys_in_its_order() {
    for Solved {
        scenario, solution, ..
    } in many()
    {
        let text = serde_json::to_string(&solution).expect("a solution has a text");
        // No value holds a quotation mark, so that every second piece is a string, and a key when a colon follows.
        let pieces: Vec<_> = text.split('"').collect();
        let keys: Vec<_> = (1..pieces.len())
            .step_by(2)
            .filter(|i| pieces[i + 1].starts_with(':'))
            .map(|i| pieces[i])
            .collect();
        assert_eq!(
            keys,
            KEYS.split_whitespace().collect::<Vec<_>>(),
            "{scenario}"
        );
        let json: Json = serde_json::from_str(&text).expect("it is JSON");
        assert_eq!(json["scenario"], Json::String(scenario.to_string()));
        assert_eq!(
            serde_json::from_value::<Scenario>(json["scenario"].clone()).expect("it reads back"),
            scenario
        );
        for vector in [
            "planet_frame.velocity_in_km_s",
            "sun_frame.velocity_in_km_s",
        ] {
            assert_eq!(
                at(&json, vector).and_then(Json::as_array).map(Vec::len),
                Some(3),
                "{scenario}"
            );
        }
    }
}

/// What comes after the impact.
const AFTER: [&str; 10] = [
    "planet_frame.turn_deg",
    "planet_frame.periapsis_speed_km_s",
    "planet_frame.periapsis_direction",
    "planet_frame.velocity_out_km_s",
    "sun_frame.velocity_out_km_s",
    "sun_frame.speed_out_km_s",
    "sun_frame.speed_change_km_s",
    "sun_frame.velocity_change_km_s",
    "sun_frame.energy_change_km2_s2",
    "sun_frame.side",
];

#[test]
fn after_a_strike_everything_is_null_and_before_it_nothing() {
    let mut strikes = 0;
    for Solved {
        scenario,
        flyby,
        solution,
    } in many()
    {
        let json = json(&solution);
        strikes += usize::from(flyby.strikes());
        assert_eq!(
            json["outcome"],
            if flyby.strikes() { "strikes" } else { "passes" },
            "{scenario}"
        );
        for path in AFTER {
            assert_eq!(
                at(&json, path).expect("the key is there").is_null(),
                flyby.strikes(),
                "{scenario}: {path}"
            );
        }
        let orbit = json["orbit_after"].as_object().expect("an object");
        assert_eq!(
            orbit.values().all(Json::is_null),
            flyby.strikes(),
            "{scenario}"
        );
        for part in ["planet", "planet_frame", "sun_frame"] {
            let nulls = json[part]
                .as_object()
                .expect("an object")
                .iter()
                .filter(|(_, value)| value.is_null());
            for (key, _) in nulls {
                assert!(
                    AFTER.contains(&&*format!("{part}.{key}")),
                    "{scenario}: {part}.{key}"
                );
            }
        }
    }
    assert!(strikes > 20, "{strikes} strikes");
}
