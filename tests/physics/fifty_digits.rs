//! The core against numbers computed to fifty digits elsewhere (`fifty_digits.txt` says how).

use glam::{DVec3, dvec3};
use two_frames::physics::{Conic, Planet};

use crate::common::{BODIES, Worst, encounter, relative, relative_vector, solve};

/// The rows of one kind: the words before the bar and the numbers after it.
fn rows(kind: &str) -> Vec<(Vec<&'static str>, Vec<f64>)> {
    let number = |text: &str| text.parse().expect("a number");
    let rows: Vec<_> = include_str!("fifty_digits.txt")
        .lines()
        .filter_map(|line| line.strip_prefix(kind)?.split_once('|'))
        .map(|(given, found)| {
            let found = found.split_whitespace().map(number).collect();
            (given.split_whitespace().collect(), found)
        })
        .collect();
    assert!(rows.len() > 10, "the table has rows of kind {kind}");
    rows
}

fn number(text: &str) -> f64 {
    text.parse().expect("a number")
}

#[test]
fn turn_e_and_b() {
    let mut worst = Worst::default();
    for (given, found) in rows("pass ") {
        let planet = BODIES
            .map(Planet::of)
            .into_iter()
            .find(|planet| planet.name == given[0])
            .expect("one of the eight");
        let periapsis = number(given[2]) * planet.radius_km;
        let flyby = solve(&encounter(planet, number(given[1]), 129.0, periapsis));
        let got = [
            flyby.eccentricity,
            flyby.turn_rad,
            flyby.impact_parameter_km,
        ];
        for (got, want) in got.into_iter().zip(found) {
            worst.note(relative(got, want), || given.join(" "));
        }
    }
    // The contract is 1e-12; a handful of roundings of 1.1e-16 each is what the formulas cost.
    worst.within("e, turn and b against fifty digits", 2e-15);
}

#[test]
fn position_and_velocity_at_a_time() {
    let (mut place, mut speed) = (Worst::default(), Worst::default());
    for (given, found) in rows("time ") {
        let (alpha, tau) = (number(given[0]), number(given[1]));
        let orbit = Conic::new(1.0, 1.0, alpha, DVec3::X, DVec3::Y);
        let (after, before) = (orbit.state_at(tau), orbit.state_at(-tau));
        let r = dvec3(found[0], found[1], 0.0);
        let v = dvec3(found[2], found[3], 0.0);
        place.note(relative_vector(after.r, r), || given.join(" "));
        speed.note(relative_vector(after.v, v), || given.join(" "));
        // Before periapsis the path is the mirror image.
        place.note(relative_vector(before.r, r * dvec3(1.0, -1.0, 1.0)), || {
            given.join(" ")
        });
        speed.note(relative_vector(before.v, v * dvec3(-1.0, 1.0, 1.0)), || {
            given.join(" ")
        });
    }
    // The contract is 1e-9. A handful of roundings is what the solution costs; the last rows are places where a step taken
    // for the last one too early once left 2e-14.
    worst_within(place, "position");
    worst_within(speed, "velocity");
}

fn worst_within(worst: Worst, what: &str) {
    worst.within(&format!("{what} at a time against fifty digits"), 3e-15);
}
