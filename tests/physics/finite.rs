//! Hostile but allowed inputs: a sentence or finite answers, never NaN or infinity.

use fastrand::Rng;
use glam::DVec3;
use two_frames::physics::{Encounter, Flyby, FlybyError, Outcome, Planet, SunOrbit};
use two_frames::report::refusal;

use crate::common::{BODIES, encounter, logarithmic};

/// Every number that a solved pass says, with its name.
fn numbers(flyby: &Flyby) -> Vec<(&'static str, f64)> {
    let mut all = vec![
        ("semi-major axis", flyby.semi_major_axis_km),
        ("eccentricity", flyby.eccentricity),
        ("turn", flyby.turn_rad),
        ("impact parameter", flyby.impact_parameter_km),
        ("B·T", flyby.aim_point_km[0]),
        ("B·R", flyby.aim_point_km[1]),
        ("speed at periapsis", flyby.periapsis_speed_km_s),
        ("energy change", flyby.energy_change_km2_s2),
        ("speed change", flyby.speed_change_km_s()),
        ("speed in", flyby.velocity_in.speed()),
        ("speed out", flyby.velocity_out.speed()),
        ("speed round the Sun in", flyby.sun_velocity_in.speed()),
        ("speed round the Sun out", flyby.sun_velocity_out.speed()),
        ("size of the change", flyby.velocity_change.length()),
        (
            "planet's change",
            flyby.planet_velocity_change(480.0).length(),
        ),
    ];
    let plane = flyby.aim_plane;
    for vector in [flyby.periapsis_direction, plane.s, plane.t, plane.r] {
        all.extend(parts("a direction", vector));
    }
    if let Outcome::Strikes(strike) = flyby.outcome {
        all.extend([
            ("time of impact", strike.time_s),
            ("speed of impact", strike.speed_km_s),
        ]);
    }
    for orbit in [&flyby.orbit_before, &flyby.orbit_after] {
        all.extend(orbit_numbers(orbit));
    }
    all
}

fn parts(name: &'static str, vector: DVec3) -> impl Iterator<Item = (&'static str, f64)> {
    vector.to_array().into_iter().map(move |part| (name, part))
}

fn orbit_numbers(orbit: &SunOrbit) -> impl Iterator<Item = (&'static str, f64)> {
    [
        ("orbit's eccentricity", Some(orbit.eccentricity)),
        ("perihelion", Some(orbit.perihelion_km)),
        ("energy", Some(orbit.energy_km2_s2)),
        ("orbit's semi-major axis", orbit.semi_major_axis_km),
        ("aphelion", orbit.aphelion_km),
        ("period", orbit.period_s),
        ("inclination", orbit.inclination_rad),
        ("speed left", orbit.speed_at_infinity_km_s),
    ]
    .into_iter()
    .filter_map(|(name, value)| Some((name, value?)))
}

/// Positions and velocities within a million days either way, in both frames.
fn states(flyby: &Flyby, rng: &mut Rng) -> Vec<(&'static str, f64)> {
    let longest = 1e6 * 86_400.0;
    let some_time = logarithmic(rng, 1e-6, longest);
    let mut all = Vec::new();
    for t in [0.0, -longest, longest, some_time, -some_time] {
        let (near_planet, near_sun) = (flyby.seen_from_planet(t), flyby.seen_from_sun(t));
        all.extend(parts("position seen from the planet", near_planet.0.km));
        all.extend(parts("velocity seen from the planet", near_planet.1.km_s));
        all.extend(parts("position seen from the Sun", near_sun.0.km));
        all.extend(parts("velocity seen from the Sun", near_sun.1.km_s));
    }
    for radii in [0.5, 1.0, 30.0] {
        let distance = radii * flyby.encounter.planet.radius_km;
        let time = flyby.time_at_distance(distance);
        all.extend(time.map(|time| ("time at a distance", time)));
    }
    all
}

/// A refusal says what is wrong and what to try, with no number that is none.
fn assert_sentence(error: &FlybyError) {
    let sentence = refusal(error);
    assert!(
        sentence.ends_with('.') && sentence.contains(": try "),
        "{sentence}"
    );
    assert!(
        !sentence.contains("NaN") && !sentence.contains("inf"),
        "{sentence}"
    );
}

/// Solves, and fails if any number is not finite. Says whether there was an answer.
fn check(encounter: &Encounter, rng: &mut Rng) -> bool {
    match Flyby::solve(encounter) {
        Err(error) => {
            assert_sentence(&error);
            false
        }
        Ok(flyby) => {
            let all = numbers(&flyby).into_iter().chain(states(&flyby, rng));
            for (name, value) in all {
                assert!(value.is_finite(), "{name} is {value} for {encounter:?}");
            }
            true
        }
    }
}

fn hostile_angle(rng: &mut Rng) -> f64 {
    match rng.u8(..4) {
        0 => (f64::from(rng.i8(-4..=4))) * std::f64::consts::FRAC_PI_2,
        1 => logarithmic(rng, 1e-300, 1e300),
        _ => (rng.f64() * 2.0 - 1.0) * std::f64::consts::PI,
    }
}

fn with_hostile_angles(encounter: Encounter, rng: &mut Rng) -> Encounter {
    Encounter {
        approach_rad: hostile_angle(rng),
        crank_rad: hostile_angle(rng),
        aim_rad: hostile_angle(rng),
        ..encounter
    }
}

#[test]
fn custom_planets_of_any_size() {
    let mut rng = Rng::with_seed(300);
    let mut solved = 0;
    for _ in 0..40_000 {
        let (low, high) = [(1e-300, 1e300), (1e-60, 1e60), (1e-3, 1e12)][rng.usize(..3)];
        let mut any = || logarithmic(&mut rng, low, high);
        let planet = Planet::custom(any(), any(), any()).expect("allowed one by one");
        let v_infinity = logarithmic(&mut rng, 0.01, 100.0);
        let radii = logarithmic(&mut rng, 0.01, 1e4);
        let plain = encounter(planet, v_infinity, 0.0, radii * planet.radius_km);
        solved += u32::from(check(&with_hostile_angles(plain, &mut rng), &mut rng));
    }
    println!("{solved} solved");
    assert!(
        solved > 10_000,
        "only {solved} had an answer: the test has become too easy"
    );
}

#[test]
fn any_positive_speed_and_periapsis() {
    let mut rng = Rng::with_seed(301);
    let mut solved = 0;
    for _ in 0..40_000 {
        let planet = Planet::of(BODIES[rng.usize(..8)]);
        let (low, high) = if rng.bool() {
            (1e-300, 1e300)
        } else {
            (1e-60, 1e60)
        };
        let v_infinity = logarithmic(&mut rng, low, high);
        let periapsis = logarithmic(&mut rng, low, high);
        let plain = encounter(planet, v_infinity, 0.0, periapsis);
        solved += u32::from(check(&with_hostile_angles(plain, &mut rng), &mut rng));
    }
    println!("{solved} solved");
    assert!(solved > 1_000, "only {solved} had an answer");
}

#[test]
fn everything_the_page_allows_for_the_eight_planets_has_an_answer() {
    let mut rng = Rng::with_seed(302);
    for _ in 0..20_000 {
        let planet = Planet::of(BODIES[rng.usize(..8)]);
        let radii = logarithmic(&mut rng, 0.01, 1e4);
        let v_infinity = logarithmic(&mut rng, 0.01, 100.0);
        let plain = encounter(planet, v_infinity, 0.0, radii * planet.radius_km);
        let hostile = with_hostile_angles(plain, &mut rng);
        assert!(check(&hostile, &mut rng), "{hostile:?}");
    }
}

#[test]
fn numbers_outside_their_domain_are_refused_in_words() {
    let good = encounter(Planet::of(BODIES[4]), 9.0, 129.0, 571_936.0);
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        for change in [
            Encounter {
                approach_rad: bad,
                ..good
            },
            Encounter {
                crank_rad: bad,
                ..good
            },
            Encounter {
                aim_rad: bad,
                ..good
            },
        ] {
            let error = Flyby::solve(&change).expect_err("not an angle");
            assert!(matches!(error, FlybyError::NotAnAngle { .. }), "{error:?}");
            assert_sentence(&error);
        }
    }
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -0.0, -1.0] {
        let faults = [
            Flyby::solve(&Encounter {
                v_infinity_km_s: bad,
                ..good
            })
            .expect_err("a bad speed"),
            Flyby::solve(&Encounter {
                periapsis_km: bad,
                ..good
            })
            .expect_err("a bad distance"),
            Planet::custom(bad, 1.0, 1.0).expect_err("a bad pull"),
            Planet::custom(1.0, bad, 1.0).expect_err("a bad radius"),
            Planet::custom(1.0, 1.0, bad).expect_err("a bad orbit"),
        ];
        for error in faults {
            assert!(matches!(error, FlybyError::NotPositive { .. }), "{error:?}");
            assert_sentence(&error);
        }
    }
}
