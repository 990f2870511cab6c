//! One setting varied: a table that a spreadsheet reads, and the same numbers as one pass at a time.

use two_frames::report::{Sweep, csv};
use two_frames::scenario::{Field, Scenario};

use super::{Solved, bits};

fn sweep(field: Field, from: f64, to: f64, steps: u32) -> Sweep {
    Sweep {
        field,
        from,
        to,
        steps,
    }
}

fn table(text: &str, sweep: &Sweep) -> String {
    csv(&Scenario::read_strictly(text).expect("a good text"), sweep).expect("a table")
}

/// The records and fields of a table.
///
/// Source: RFC 4180, section 2: records end with CRLF, a field with a comma stands in quotation marks (M).
fn records(table: &str) -> Vec<Vec<String>> {
    assert!(
        table.ends_with("\r\n") && table.matches('\n').count() == table.matches("\r\n").count()
    );
    let fields = |record: &str| {
        let (mut fields, mut quoted) = (vec![String::new()], false);
        for letter in record.chars() {
            match letter {
                '"' => quoted = !quoted,
                ',' if !quoted => fields.push(String::new()),
                other => fields.last_mut().expect("there is a first").push(other),
            }
        }
        fields
    };
    table
        .trim_end_matches("\r\n")
        .split("\r\n")
        .map(fields)
        .collect()
}

#[test]
fn the_header_names_every_column_with_its_unit() {
    let header = &records(&table("", &sweep(Field::Periapsis, 1.0, 50.0, 2)))[0];
    let known = [
        "periapsis [planet radii]",
        "outcome",
        "turn [deg]",
        "impact parameter [km]",
        "periapsis [km]",
        "speed at periapsis, planet frame [km/s]",
        "speed in, Sun frame [km/s]",
        "speed out, Sun frame [km/s]",
        "speed change, Sun frame [km/s]",
        "energy change, Sun frame [km^2/s^2]",
        "perihelion after [AU]",
        "aphelion after [AU]",
        "inclination after [deg]",
        "speed left far from the Sun [km/s]",
    ];
    assert_eq!(*header, known);
    for (field, first) in [
        (Field::Approach, "approach [deg]"),
        (Field::VInfinity, "v-infinity [km/s]"),
        (Field::ProbeMass, "probe-mass [kg]"),
    ] {
        assert_eq!(records(&table("", &sweep(field, 1.0, 2.0, 1)))[0][0], first);
    }
}

#[test]
fn each_row_is_the_pass_at_its_value() {
    for (text, sweep) in [
        ("", sweep(Field::Periapsis, 0.5, 50.0, 40)),
        (
            "planet=venus&v-infinity=6&crank=20",
            sweep(Field::Approach, -180.0, 180.0, 36),
        ),
        (
            "planet=custom&gm=2500000&radius=15000&orbit=0.35",
            sweep(Field::Gm, 1e4, 1e8, 8),
        ),
        ("planet=saturn", sweep(Field::VInfinity, 20.0, 2.0, 18)),
    ] {
        let records = records(&table(text, &sweep));
        assert_eq!(
            records.len(),
            2 + sweep.steps as usize,
            "a header and a row for each end of a step"
        );
        for record in &records[1..] {
            assert_eq!(record.len(), records[0].len());
            let mut scenario = Scenario::read_strictly(text).expect("a good text");
            scenario
                .set_text(sweep.field, &record[0])
                .expect("a value in the range");
            let solved = Solved::new(&scenario).expect("a pass");
            let (planet, sun, orbit) = (
                &solved.solution.planet_frame,
                &solved.solution.sun_frame,
                &solved.solution.orbit_after,
            );
            let want = [
                planet.turn_deg,
                Some(planet.impact_parameter_km),
                Some(planet.periapsis_km),
                planet.periapsis_speed_km_s,
                Some(sun.speed_in_km_s),
                sun.speed_out_km_s,
                sun.speed_change_km_s,
                sun.energy_change_km2_s2,
                orbit.perihelion_au,
                orbit.aphelion_au,
                orbit.inclination_deg,
                orbit.speed_left_at_infinity_km_s,
            ];
            assert_eq!(record[1], solved.solution.outcome);
            for (i, (cell, want)) in record[2..].iter().zip(want).enumerate() {
                let got = (!cell.is_empty()).then(|| cell.parse::<f64>().expect("a plain number"));
                assert_eq!(
                    bits(got),
                    bits(want),
                    "{text}: {} at {}",
                    records[0][i + 2],
                    record[0]
                );
            }
        }
    }
}

#[test]
fn values_are_spread_on_the_field_s_own_scale_with_exact_ends() {
    let values = |sweep: &Sweep| -> Vec<f64> {
        records(&table("", sweep))[1..]
            .iter()
            .map(|record| record[0].parse().expect("a number"))
            .collect()
    };
    let linear = values(&sweep(Field::Approach, 10.0, 30.0, 4));
    assert_eq!(linear, [10.0, 15.0, 20.0, 25.0, 30.0]);
    let ratios = values(&sweep(Field::Periapsis, 1.0, 49.0, 4));
    assert_eq!(
        (ratios[0].to_bits(), ratios[4].to_bits()),
        (1.0_f64.to_bits(), 49.0_f64.to_bits())
    );
    for pair in ratios.windows(2) {
        assert!(
            (pair[1] / pair[0] / 7.0_f64.sqrt() - 1.0).abs() < 1e-12,
            "equal ratios: {ratios:?}"
        );
    }
    assert_eq!(
        values(&sweep(Field::Aim, -180.0, 180.0, 1)),
        [-180.0, 180.0]
    );
}

#[test]
fn a_strike_leaves_its_cells_empty() {
    let records = records(&table("", &sweep(Field::Periapsis, 0.5, 2.0, 1)));
    let (strikes, passes) = (&records[1], &records[2]);
    assert_eq!((&*strikes[1], &*passes[1]), ("strikes", "passes"));
    let empty: Vec<_> = (0..strikes.len())
        .filter(|i| strikes[*i].is_empty())
        .collect();
    assert_eq!(empty, [2, 5, 7, 8, 9, 10, 11, 12, 13]);
    // The orbit after this pass leaves the Sun: no aphelion.
    assert_eq!(
        (0..passes.len())
            .filter(|i| passes[*i].is_empty())
            .collect::<Vec<_>>(),
        [11]
    );
}

#[test]
fn a_value_out_of_range_is_refused_in_words() {
    let scenario = Scenario::default();
    for (sweep, words) in [
        (
            sweep(Field::Periapsis, 0.0, 50.0, 2),
            ["periapsis=0", "from 0.01 to 10000 planet radii"],
        ),
        (
            sweep(Field::Aim, 400.0, 0.0, 2),
            ["aim=400", "from -180 to 180°"],
        ),
        (
            sweep(Field::Gm, 1.0, 2.0, 2),
            ["gm=1", "only planet=custom"],
        ),
        (
            sweep(Field::VInfinity, f64::NAN, 2.0, 2),
            ["v-infinity=", "from 0.01 to 100 km/s"],
        ),
    ] {
        let error = csv(&scenario, &sweep)
            .expect_err("this is not allowed")
            .to_string();
        for word in words.into_iter().chain(["try "]) {
            assert!(error.contains(word), "“{word}” is not in: {error}");
        }
    }
    let custom =
        Scenario::read_strictly("planet=custom&gm=1&radius=1&orbit=1").expect("a good text");
    let error = csv(&custom, &sweep(Field::Gm, 1.0, 1e300, 1))
        .expect_err("no numbers reach that far")
        .to_string();
    assert!(
        error.contains("1e300 km³/s²") && error.contains("try "),
        "{error}"
    );
}
