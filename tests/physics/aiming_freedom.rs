//! What a search may change, what it may not, and that it changes no more than it must.

use std::f64::consts::PI;

use fastrand::Rng;
use two_frames::physics::units::RADIANS_PER_DEGREE;
use two_frames::physics::{Encounter, Finding, Free, Goal, Search};

use crate::aiming::{miss, search};
use crate::aiming_sets::telling;
use crate::common::{near, solve};
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
