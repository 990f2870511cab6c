//! Aiming for a value, solved back: what is met is met, by the pass that comes least close; what is not cannot be.

use std::f64::consts::PI;

use fastrand::Rng;
use two_frames::physics::{Encounter, Finding, Flyby, Free, Goal, Measure, Search};

use crate::common::{Worst, logarithmic, solve};
use crate::second_route::{Route, any_angle, any_pass, approach};

/// What a goal asks for, of a solved pass, and how far off it is: as a share of the goal, or of what the goal is a small
/// difference of.
pub(crate) fn miss(goal: Goal, flyby: &Flyby) -> f64 {
    let orbit = &flyby.orbit_after;
    let planet = flyby.encounter.planet;
    let speed = planet.orbit_speed();
    match goal {
        // At n times the planet's distance the aphelion is n times as sensitive to the speed as the speed is exact.
        Goal::Aphelion(km) => orbit.aphelion_km.map_or(f64::INFINITY, |got| {
            ((got - km) / km).abs() / (km / planet.orbit_km).max(1.0)
        }),
        // A perihelion near the Sun is the square of a small difference of speeds.
        Goal::Perihelion(km) => {
            ((orbit.perihelion_km - km) / km).abs() * (km / planet.orbit_km).sqrt().min(1.0)
        }
        // Just leaving is a question of energy.
        Goal::Leave(left) => {
            let got = 2.0 * orbit.energy_km2_s2;
            (got - left * left).abs() / (left * left).max(speed * speed)
        }
        Goal::Turn(rad) => ((flyby.turn_rad - rad) / rad).abs(),
        Goal::SpeedChange(change) => {
            let off = (flyby.speed_change_km_s() - change).abs();
            off / change
                .abs()
                .max(1e-6 * (speed + flyby.encounter.v_infinity_km_s))
        }
        _ => unreachable!("not a value"),
    }
}

/// What one goal value is of a pass, if it is anything: the goals in turn.
fn outcome(kind: u8, flyby: &Flyby) -> Option<Goal> {
    let orbit = &flyby.orbit_after;
    match kind {
        0 => orbit.aphelion_km.map(Goal::Aphelion),
        1 => Some(Goal::Perihelion(orbit.perihelion_km)),
        2 => orbit.speed_at_infinity_km_s.map(Goal::Leave),
        3 => Some(Goal::Turn(flyby.turn_rad)),
        _ => Some(Goal::SpeedChange(flyby.speed_change_km_s())),
    }
}

/// A goal drawn with no pass in mind.
fn blind(rng: &mut Rng, encounter: &Encounter) -> Goal {
    let planet = encounter.planet;
    match rng.u8(..5) {
        0 => Goal::Aphelion(planet.orbit_km * logarithmic(rng, 0.9, 100.0)),
        1 => Goal::Perihelion(planet.orbit_km * logarithmic(rng, 1e-3, 1.1)),
        2 => Goal::Leave(encounter.v_infinity_km_s * rng.f64() * 2.0),
        3 => Goal::Turn(rng.f64() * PI),
        _ => Goal::SpeedChange(encounter.v_infinity_km_s * (rng.f64() * 4.0 - 2.0)),
    }
}

/// A pass that the page allows, half of them in the plane.
pub(crate) fn drawn(rng: &mut Rng) -> Encounter {
    let any = any_pass(rng);
    let planet = any.planet;
    let mut pass = Encounter {
        v_infinity_km_s: logarithmic(rng, 0.5, 60.0),
        periapsis_km: planet.radius_km * logarithmic(rng, 1.0, 300.0),
        ..any
    };
    if rng.bool() {
        pass.crank_rad = 0.0;
    }
    pass
}

pub(crate) fn search(encounter: Encounter, goal: Goal, free: Free) -> Search {
    Search {
        encounter,
        goal,
        free,
        in_plane: false,
        farthest_km: encounter.planet.radius_km * 1e3,
    }
}

#[track_caller]
fn found(search: &Search) -> Finding {
    search
        .run()
        .unwrap_or_else(|error| panic!("{error:?} for {search:?}"))
}

/// Aims for what a real pass leads to, `count` times, starting from another pass of the same approach.
fn aim_for_real_passes(seed: u64, count: u32, kinds: &[u8], free: Free) {
    let mut rng = Rng::with_seed(seed);
    let (mut off, mut closer) = (Worst::default(), Worst::default());
    let mut tried = 0;
    while tried < count {
        let real = drawn(&mut rng);
        let (kind, flyby) = (kinds[rng.usize(..kinds.len())], solve(&real));
        let Some(goal) = outcome(kind, &flyby) else {
            continue;
        };
        // Of a path that is hardly bent the distance cannot be told from what becomes of it: the digits are not there.
        if flyby.turn_rad < 1e-3 {
            continue;
        }
        tried += 1;
        let mut start = real;
        start.periapsis_km = real.planet.radius_km * logarithmic(&mut rng, 1.0, 300.0);
        if free > Free::Periapsis {
            start.aim_rad = any_angle(&mut rng);
        }
        let search = search(start, goal, free);
        let Finding::Met(pass) = found(&search) else {
            panic!("{real:?} does it: {search:?}")
        };
        let flyby = solve(&pass);
        assert!(!flyby.strikes(), "{search:?}");
        assert_eq!(
            (pass.v_infinity_km_s, pass.approach_rad, pass.crank_rad),
            (real.v_infinity_km_s, real.approach_rad, real.crank_rad)
        );
        off.note(miss(goal, &flyby), || format!("{search:?}"));
        // Where an outcome hardly changes with the distance, its last digits do not tell two distances apart.
        let shifted = Encounter {
            periapsis_km: pass.periapsis_km,
            ..real
        };
        if miss(goal, &solve(&shifted)) > 1e-13 {
            closer.note(1.0 - pass.periapsis_km / real.periapsis_km, || {
                format!("real {real:?}, found {pass:?}, {search:?}")
            });
        }
    }
    off.within("goal missed by", 1e-9);
    closer.within("closer than the pass that it was drawn from", 1e-9);
}

#[test]
fn what_a_pass_does_is_met_by_one_no_closer() {
    // Leaving, turn and change of speed are known in closed form.
    aim_for_real_passes(331, 5_700, &[2, 3, 4], Free::AimPoint);
    aim_for_real_passes(332, 300, &[0, 1], Free::AimPoint);
}

#[test]
fn what_a_pass_does_is_met_along_its_own_ray() {
    aim_for_real_passes(333, 3_400, &[0, 1, 2, 3, 4], Free::Periapsis);
}

/// The sign of a pass against a goal, by the second route; positive above.
fn above(goal: Goal, route: &Route) -> f64 {
    let speed = |left: f64| route.after.length_squared() - left;
    match goal {
        Goal::Aphelion(km) => 1.0 / km - route.inverse_aphelion(),
        Goal::Perihelion(km) => route.perihelion() - km,
        Goal::Leave(left) => route.twice_energy() - left * left,
        Goal::Turn(rad) => route.turn - rad,
        Goal::SpeedChange(change) => {
            let wanted = route.before.length() + change;
            speed(wanted * wanted.abs())
        }
        _ => unreachable!("not a value"),
    }
}

/// Whether any two passes of a grid lie on both sides of a goal: then some pass between them meets it.
fn grid_crosses(search: &Search, aims: u32, turns: u32) -> bool {
    let Encounter {
        planet,
        v_infinity_km_s: v,
        aim_rad,
        ..
    } = search.encounter;
    let a = planet.gm / (v * v);
    let b = |km: f64| (km * (km + 2.0 * a)).sqrt();
    let [low, high] = [search.farthest_km, planet.radius_km].map(|km| a.atan2(b(km)));
    let rays: Vec<f64> = match search.free {
        Free::Periapsis => vec![aim_rad],
        _ => (0..aims)
            .map(|i| 2.0 * PI * f64::from(i) / f64::from(aims))
            .collect(),
    };
    let (mut up, mut down) = (false, false);
    for aim in rays {
        for j in 0..=turns {
            // The ends belong to it; a hair inside them, so that rounding decides nothing.
            let half =
                low + (high - low) * (f64::from(j) / f64::from(turns)).clamp(1e-9, 1.0 - 1e-9);
            let height = above(
                search.goal,
                &Route::of(&search.encounter, a / half.tan(), aim),
            );
            up |= height > 0.0;
            down |= height < 0.0;
        }
    }
    up && down
}

#[test]
fn blind_goals_are_met_or_out_of_reach_of_every_pass() {
    let mut rng = Rng::with_seed(334);
    let (mut off, mut met, mut out) = (Worst::default(), 0, 0);
    for i in 0..600 {
        let start = drawn(&mut rng);
        let free = if i % 4 == 0 {
            Free::AimPoint
        } else {
            Free::Periapsis
        };
        let search = search(start, blind(&mut rng, &start), free);
        match found(&search) {
            Finding::Met(pass) => {
                met += 1;
                let flyby = solve(&pass);
                assert!(!flyby.strikes(), "{search:?}");
                off.note(miss(search.goal, &flyby), || format!("{search:?}"));
            }
            Finding::OutOfReach { best, .. } => {
                out += 1;
                assert!(!solve(&best).strikes(), "{search:?}");
                let aims = if out % 16 == 0 { 200 } else { 24 };
                assert!(!grid_crosses(&search, aims, 60), "{search:?}");
            }
        }
    }
    println!("{met} met, {out} out of reach");
    assert!(met > 60 && out > 60, "{met} met, {out} out of reach");
    off.within("goal missed by", 1e-9);
}

#[test]
fn what_only_few_aim_points_do_is_found() {
    // The extreme of a fine grid of real passes: those that do as much lie within a tenth of a degree or so of its aim angle.
    let mut rng = Rng::with_seed(335);
    let mut tried = 0;
    while tried < 40 {
        let start = drawn(&mut rng);
        let plane = approach(&start);
        let b = plane.strike_radius_km() * (1.0 + 1e-9);
        let farthest = (0..3_600).map(|i| {
            let (sin, cos) = (f64::from(i) * PI / 1_800.0).sin_cos();
            Measure::Aphelion.of(&plane.aimed([b * cos, b * sin]))
        });
        let most = farthest.fold(0.0, f64::max);
        if most.is_infinite() {
            continue;
        }
        tried += 1;
        let search = search(start, Goal::Aphelion(most), Free::AimPoint);
        assert!(matches!(search.run(), Ok(Finding::Met(_))), "{search:?}");
    }
}
