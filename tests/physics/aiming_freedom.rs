//! What a search may change, what it may not, and that it changes no more than it must.

use std::f64::consts::PI;

use fastrand::Rng;
use two_frames::physics::units::RADIANS_PER_DEGREE;
use two_frames::physics::{Body, Encounter, Finding, Free, Goal, Planet, Search};

use crate::aiming::{miss, search};
use crate::aiming_sets::telling;
use crate::common::{close, encounter, near, solve};
use crate::second_route::{any_angle, approach};

#[test]
fn what_is_not_free_stays() {
    let mut rng = Rng::with_seed(344);
    for i in 0..600 {
        let real = telling(&mut rng);
        let flyby = solve(&real);
        let goal = match i % 3 {
            0 => Goal::MostGain,
            1 => Goal::SpeedChange(flyby.speed_change_km_s()),
            _ => Goal::Turn(0.5 * flyby.turn_rad),
        };
        for free in [Free::Periapsis, Free::AimPoint] {
            let start = Encounter {
                periapsis_km: 2.0 * real.planet.radius_km,
                crank_rad: 0.0,
                ..real
            };
            let search = Search {
                in_plane: free == Free::AimPoint,
                ..search(start, goal, free)
            };
            let found = match search.run().expect("a pass to start from") {
                Finding::Met(found) | Finding::OutOfReach { best: found, .. } => found,
            };
            let kept = Encounter {
                periapsis_km: found.periapsis_km,
                aim_rad: found.aim_rad,
                ..start
            };
            assert_eq!(found, kept, "{search:?}");
            match (free, goal) {
                // A turn has no direction of its own, so the aim angle stays.
                (Free::Periapsis, _) | (_, Goal::Turn(_)) => {
                    near(
                        &format!("aim angle {search:?}"),
                        found.aim_rad,
                        start.aim_rad,
                        1e-12,
                    );
                }
                _ => assert!(
                    [0.0, PI]
                        .iter()
                        .any(|aim| aim.to_bits() == found.aim_rad.to_bits()),
                    "{} {search:?}",
                    found.aim_rad
                ),
            }
        }
    }
}

#[test]
fn no_change_of_speed_is_met_by_the_pass_that_turns_most() {
    let mut rng = Rng::with_seed(345);
    let mut most_turned = 0;
    for _ in 0..1_000 {
        let start = telling(&mut rng);
        let search = search(start, Goal::SpeedChange(0.0), Free::AimPoint);
        let Finding::Met(found) = search.run().expect("a pass to start from") else {
            continue;
        };
        let flyby = solve(&found);
        let speed = start.planet.orbit_speed() + start.v_infinity_km_s;
        near("change", flyby.speed_change_km_s(), 0.0, 1e-12 * speed);
        most_turned += 1;
        // No other pass without a change comes closer, above the surface.
        for [t, r] in search.aim_points_km(90) {
            let closer = approach(&start).periapsis_km(t.hypot(r));
            assert!(found.periapsis_km <= closer * (1.0 + 1e-9), "{search:?}");
        }
    }
    assert!(most_turned > 500, "{most_turned} met");
}

#[test]
fn the_approach_changes_by_as_few_degrees_as_it_must() {
    let mut rng = Rng::with_seed(346);
    let (mut moved, mut whole) = (0, 0);
    for i in 0..120 {
        let real = Encounter {
            crank_rad: 0.0,
            ..telling(&mut rng)
        };
        let flyby = solve(&real);
        let goal = match flyby.orbit_after.speed_at_infinity_km_s {
            Some(left) => Goal::Leave(left),
            None => Goal::SpeedChange(flyby.speed_change_km_s()),
        };
        // A start in whole degrees on every other try.
        let start = Encounter {
            approach_rad: if i % 2 == 0 {
                f64::from(rng.i32(-180..=180)) * RADIANS_PER_DEGREE
            } else {
                any_angle(&mut rng)
            },
            ..real
        };
        let Finding::Met(found) = search(start, goal, Free::Approach).run().expect("a start")
        else {
            continue;
        };
        assert!(miss(goal, &solve(&found)) < 1e-9);
        let apart = |rad: f64| {
            let apart = (rad - start.approach_rad).abs() % (2.0 * PI);
            apart.min(2.0 * PI - apart)
        };
        let changed = apart(found.approach_rad);
        if changed > 0.0 {
            moved += 1;
            let degrees = found.approach_rad / RADIANS_PER_DEGREE;
            near("whole degrees", degrees, degrees.round(), 1e-9);
        }
        for degree in -180..180 {
            let approach_rad = f64::from(degree) * RADIANS_PER_DEGREE;
            if apart(approach_rad) < changed - 1e-9 {
                whole += 1;
                let nearer = search(
                    Encounter {
                        approach_rad,
                        ..start
                    },
                    goal,
                    Free::AimPoint,
                );
                assert!(
                    !matches!(nearer.run(), Ok(Finding::Met(_))),
                    "{degree}° does it too: {changed} rad from {start:?}"
                );
            }
        }
    }
    assert!(
        moved > 20 && whole > 200,
        "{moved} moved, {whole} degrees between"
    );
}

#[test]
fn what_more_would_help_does_help_and_nothing_less() {
    let mut rng = Rng::with_seed(347);
    let mut answers = [0; 3];
    for _ in 0..150 {
        let real = telling(&mut rng);
        let flyby = solve(&real);
        let goal = Goal::SpeedChange(flyby.speed_change_km_s() * (1.0 + rng.f64()));
        let start = Encounter {
            aim_rad: any_angle(&mut rng),
            ..real
        };
        let search = search(start, goal, Free::Periapsis);
        let Finding::OutOfReach { more, .. } = search.run().expect("a start") else {
            continue;
        };
        let met = |free: Free| matches!(Search { free, ..search }.run(), Ok(Finding::Met(_)));
        let (aim_point, any_approach) = (met(Free::AimPoint), met(Free::Approach));
        let want = match (aim_point, any_approach) {
            (true, _) => Some(Free::AimPoint),
            (false, true) => Some(Free::Approach),
            (false, false) => None,
        };
        assert_eq!(more, want, "{search:?}");
        answers[more.map_or(2, |free| usize::from(free == Free::Approach))] += 1;
    }
    assert!(answers.into_iter().all(|count| count > 3), "{answers:?}");
}

/// A pass of Jupiter in the plane.
fn ordinary() -> Encounter {
    let jupiter = Planet::of(Body::Jupiter);
    encounter(jupiter, 9.0, 129.0, 8.0 * jupiter.radius_km)
}

#[test]
fn nobody_turns_by_more_than_half_a_turn() {
    for rad in [PI + 0.1, 2.0 * PI + 1.0, 4.0 * PI + 1.0, 7.0] {
        let search = search(ordinary(), Goal::Turn(rad), Free::AimPoint);
        let Ok(Finding::OutOfReach { best, more: None }) = search.run() else {
            panic!("{rad} rad: {search:?}")
        };
        // The most there is: grazing.
        close("closest distance", best.periapsis_km, 71_492.0, 1e-12);
    }
}

#[test]
fn nobody_loses_more_speed_than_there_is() {
    let before = solve(&ordinary()).sun_velocity_in.speed();
    // Minus twice the speed would be the same speed backwards: the same energy, but no speed.
    for lost in [1.001, 1.5, 2.0] {
        let goal = Goal::SpeedChange(-lost * before);
        // Another approach may come in faster, and so have more to lose.
        for free in [Free::Periapsis, Free::AimPoint] {
            let search = search(ordinary(), goal, free);
            assert!(
                matches!(search.run(), Ok(Finding::OutOfReach { .. })),
                "{search:?}"
            );
            assert!(search.aim_points_km(24).is_empty());
        }
    }
}

#[test]
fn of_two_equal_aim_points_the_northern_one_is_chosen() {
    // A convention of the project's, no source: R points south, so a negative aim angle is north.
    let mut clipped = 0;
    for degrees in 60..=120 {
        let start = Encounter {
            approach_rad: f64::from(degrees) * RADIANS_PER_DEGREE,
            ..ordinary()
        };
        let found = search(start, Goal::SpeedChange(0.0), Free::AimPoint).run();
        let Ok(Finding::Met(found)) = found else {
            continue;
        };
        if found.periapsis_km < 71_492.1 {
            clipped += 1;
            assert!(found.aim_rad < 0.0, "{found:?}");
        }
    }
    assert!(clipped > 10, "{clipped} at the surface");
}

#[test]
fn no_ray_beside_the_chosen_one_does_it_from_farther_out() {
    let mut rng = Rng::with_seed(348);
    for i in 0..40 {
        let real = telling(&mut rng);
        let orbit = solve(&real).orbit_after;
        let goal = match orbit.aphelion_km {
            Some(km) if i % 2 == 0 => Goal::Aphelion(km),
            _ => Goal::Perihelion(orbit.perihelion_km),
        };
        let Ok(Finding::Met(found)) = search(real, goal, Free::AimPoint).run() else {
            panic!("it does it itself: {real:?}")
        };
        for beside in [1e-2, 1e-3, 1e-4, 1e-5] {
            for aim_rad in [found.aim_rad - beside, found.aim_rad + beside] {
                let start = Encounter { aim_rad, ..real };
                if let Ok(Finding::Met(other)) = search(start, goal, Free::Periapsis).run() {
                    let most = found.periapsis_km * (1.0 + 2e-9);
                    assert!(other.periapsis_km <= most, "{beside}: {real:?}");
                }
            }
        }
    }
}

#[test]
fn the_nearest_whole_degree_is_tried_first() {
    // Degree by degree: where a gain begins to be in reach.
    let met = |degrees: f64, gain: f64, free: Free| {
        let start = Encounter {
            approach_rad: degrees * RADIANS_PER_DEGREE,
            ..ordinary()
        };
        let found = search(start, Goal::SpeedChange(gain), free).run();
        match found.expect("a start") {
            Finding::Met(found) => Some(found.approach_rad / RADIANS_PER_DEGREE),
            Finding::OutOfReach { .. } => None,
        }
    };
    let mut close_by = 0;
    for gain in [6.0, 6.5, 7.0, 7.5, 8.0, 8.5, 9.0] {
        let first = (0..180)
            .map(f64::from)
            .find(|degrees| met(*degrees, gain, Free::AimPoint).is_some())
            .expect("head-on it is in reach");
        assert!(first > 5.0, "{first}");
        for before in [0.1, 0.3, 0.49, 0.51, 0.7, 0.9, 1.0, 3.4, 3.6] {
            let start = first - before;
            if met(start, gain, Free::AimPoint).is_none() {
                close_by += u32::from(before < 0.5);
                let found = met(start, gain, Free::Approach).expect("in reach");
                near("approach", found, first, 1e-9);
            }
        }
    }
    assert!(close_by > 1, "{close_by} within half a degree");
}
