//! Hostile inputs of the aim plane and of aiming: finite answers, and an end to every search.

use fastrand::Rng;
use two_frames::physics::{
    Approach, Encounter, Finding, Flyby, Free, Goal, Measure, Planet, Search,
};

use crate::common::{encounter, logarithmic};
use crate::second_route::{any_angle, any_planet};

/// Encounters of any size at all that can be computed.
fn hostile(rng: &mut Rng) -> Encounter {
    let (low, high) = [(1e-60, 1e60), (1e-20, 1e20), (1e-3, 1e12)][rng.usize(..3)];
    let mut any = || logarithmic(rng, low, high);
    let (v, periapsis) = (any(), any());
    let planet = Planet::custom(any(), any(), any()).expect("positive numbers");
    let planet = if rng.bool() { planet } else { any_planet(rng) };
    Encounter {
        approach_rad: any_angle(rng),
        crank_rad: if rng.bool() { 0.0 } else { any_angle(rng) },
        aim_rad: any_angle(rng),
        ..encounter(planet, v, 0.0, periapsis)
    }
}

fn any_goal(rng: &mut Rng) -> Goal {
    let value = match rng.u8(..10) {
        0 => f64::NAN,
        1 => f64::INFINITY,
        2 => f64::NEG_INFINITY,
        3 => 0.0,
        4 => -logarithmic(rng, 1e-30, 1e30),
        5 => logarithmic(rng, 1e-300, 1e300),
        _ => logarithmic(rng, 1e-3, 1e12),
    };
    match rng.u8(..8) {
        0 => Goal::Aphelion(value),
        1 => Goal::Perihelion(value),
        2 => Goal::Leave(value),
        3 => Goal::Turn(value),
        4 => Goal::SpeedChange(value),
        5 => Goal::MostGain,
        6 => Goal::MostLoss,
        _ => Goal::MostInclination,
    }
}

#[test]
fn every_aim_point_has_finite_outcomes() {
    let mut rng = Rng::with_seed(361);
    for _ in 0..20_000 {
        let start = hostile(&mut rng);
        let plane = Approach::of(&start).expect("within the range");
        let b = plane.impact_parameter_km(start.periapsis_km);
        let point = plane.aim_point_km(start.periapsis_km, start.aim_rad);
        assert!(
            b.is_finite() && plane.strike_radius_km().is_finite(),
            "{start:?}"
        );
        for point in [point, [0.0, 0.0], [b, 0.0], [0.0, -b]] {
            let pass = plane.aimed(point);
            for measure in [
                Measure::SpeedChange,
                Measure::EnergyChange,
                Measure::VelocityChange,
                Measure::Perihelion,
                Measure::Inclination,
                Measure::Turn,
            ] {
                assert!(
                    measure.of(&pass).is_finite(),
                    "{measure:?} at {point:?} of {start:?}"
                );
            }
            let aphelion = Measure::Aphelion.of(&pass);
            assert!(aphelion > 0.0, "{aphelion} at {point:?} of {start:?}");
            assert!(pass.periapsis_km().is_finite(), "{point:?} of {start:?}");
            // Whatever the sizes, a direction is a direction.
            let length = pass.periapsis_direction().length();
            assert!(
                (length - 1.0).abs() < 1e-15,
                "{length} at {point:?} of {start:?}"
            );
        }
    }
}

#[test]
fn every_search_ends() {
    let mut rng = Rng::with_seed(362);
    let mut met = 0;
    for i in 0..400 {
        let start = hostile(&mut rng);
        let free = [Free::Periapsis, Free::AimPoint, Free::Approach][i % 3];
        let search = Search {
            encounter: start,
            goal: any_goal(&mut rng),
            free,
            in_plane: rng.bool(),
            farthest_km: start.planet.radius_km * [0.1, 1.0, 1e3, 1e12][rng.usize(..4)],
        };
        let found = match search.run() {
            Err(error) => {
                assert!(search.farthest_km > 1e60, "{error:?} for {search:?}");
                continue;
            }
            Ok(finding) => finding,
        };
        let found = match found {
            Finding::Met(found) => {
                met += 1;
                found
            }
            Finding::OutOfReach { best, .. } => best,
        };
        let flyby = Flyby::solve(&found).unwrap_or_else(|error| panic!("{error:?} {search:?}"));
        assert!(!flyby.strikes(), "{search:?}");
        for [t, r] in search.aim_points_km(8) {
            assert!(t.is_finite() && r.is_finite(), "{search:?}");
        }
    }
    assert!(met > 50, "{met} met");
}

#[test]
fn a_start_that_is_no_pass_is_refused() {
    let good = encounter(Planet::of(two_frames::physics::Body::Earth), 5.0, 40.0, 1e4);
    for bad in [
        Encounter {
            v_infinity_km_s: f64::NAN,
            ..good
        },
        Encounter {
            periapsis_km: 0.0,
            ..good
        },
        Encounter {
            aim_rad: f64::INFINITY,
            ..good
        },
    ] {
        let search = Search {
            encounter: bad,
            goal: Goal::MostGain,
            free: Free::AimPoint,
            in_plane: true,
            farthest_km: 1e6,
        };
        let refusals = (
            search.run().expect_err("no pass"),
            Flyby::solve(&bad).expect_err("no pass"),
        );
        // By their texts, because NaN is not even itself.
        assert_eq!(format!("{:?}", refusals.0), format!("{:?}", refusals.1));
        assert!(Approach::of(&bad).is_err());
    }
}
