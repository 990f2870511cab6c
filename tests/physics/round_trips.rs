//! There and back: elements to state to elements, and a step in time forth and back, for every kind of conic.
//!
//! The promise is a share of 1e-10. What rounding of the *inputs* alone does to an answer is also worked out, because
//! no code can do better: where that exceeds the promise (years away from a pass of seconds), it is the tolerance.

use std::f64::consts::PI;

use fastrand::Rng;
use glam::DVec3;
use two_frames::physics::{Conic, Elements, State};

use crate::common::{Worst, logarithmic, relative_vector};

const PROMISE: f64 = 1e-10;

/// What rounding does, per unit of the lever that the orbit gives it: the six numbers of a state, used twice each in the
/// energy, whose error the third law takes 1.5 times; an anomaly F rounded at its own size, up to 30; there and back.
const ROUNDING: f64 = 100.0 * f64::EPSILON;

/// From a circle to nearly a straight line, with the parabola and its neighbours from 1e-9 to 1e-3.
const ECCENTRICITIES: [f64; 26] = [
    0.0,
    1e-9,
    1e-3,
    0.1,
    0.5,
    0.9,
    0.99,
    1.0 - 1e-3,
    1.0 - 1e-5,
    1.0 - 1e-7,
    1.0 - 1e-9,
    1.0 - f64::EPSILON,
    1.0,
    1.0 + f64::EPSILON,
    1.0 + 1e-9,
    1.0 + 1e-7,
    1.0 + 1e-5,
    1.0 + 1e-3,
    1.01,
    1.3,
    2.0,
    5.0,
    30.0,
    100.0,
    500.0,
    1e3,
];

/// Smallest difference between two angles.
fn angle(a: f64, b: f64) -> f64 {
    let turns = (a - b) / std::f64::consts::TAU;
    (turns - turns.round()).abs() * std::f64::consts::TAU
}

/// True anomalies round an orbit out to `farthest` periapsis distances.
fn anomalies(e: f64, farthest: f64) -> impl Iterator<Item = f64> {
    // r = q (1 + e)/(1 + e cos ν).
    let cos = ((1.0 + e) / farthest - 1.0) / e.max(1e-300);
    let last = if cos <= -1.0 { PI } else { cos.acos() };
    [-1.0, -0.9, -0.5, -0.1, 0.0, 1e-5, 0.3, 0.7, 0.999, 1.0]
        .into_iter()
        .map(move |share| share * last)
}

/// The worst difference of the elements, each as a share of itself or in radians, less what has no meaning on a circle.
fn difference(got: &Elements, want: &Elements) -> f64 {
    let e = (got.eccentricity - want.eccentricity).abs() / want.eccentricity.max(1.0);
    let q = ((got.periapsis_km - want.periapsis_km) / want.periapsis_km).abs();
    let tilt = angle(got.inclination, want.inclination).max(angle(got.node, want.node));
    // On a circle only the sum of argument and anomaly has a meaning; towards it each loses digits as 1/e.
    let place = angle(
        got.argument + got.true_anomaly,
        want.argument + want.true_anomaly,
    );
    let share = want.eccentricity.min(1.0);
    let line = angle(got.argument, want.argument).max(angle(got.true_anomaly, want.true_anomaly));
    let line = if share < 1e-6 { 0.0 } else { line * share };
    [e, q, tilt, place, line].into_iter().fold(0.0, f64::max)
}

fn there_and_back(gm: f64, want: &Elements) -> (f64, f64) {
    let (orbit, _) = Conic::from_elements(gm, want);
    let state = orbit.state_at_true_anomaly(want.true_anomaly);
    let (again, _) = Conic::from_state(gm, &state).expect("an orbit");
    // A rounding of the position at a distance R moves the line of flight by 1e-16 R, and periapsis with it.
    let lever = state.r.length() / want.periapsis_km;
    (difference(&again.elements_at(state.r), want), lever)
}

/// Orientations: inclination, node, argument. In the x-y plane the node is 0 by convention; 1e-3 rad above it the node
/// has lost three of its digits.
fn orientations() -> impl Iterator<Item = (f64, f64, f64)> {
    let flat = [0.0, PI].map(|inclination| (inclination, 0.0, 2.0));
    let tilted = [1e-3, 0.5, PI / 2.0, 2.5]
        .into_iter()
        .flat_map(|inclination| {
            [(0.0, 0.0), (0.4, 2.0), (3.0, -3.0), (-2.0, 1e-4)]
                .map(|(node, argument)| (inclination, node, argument))
        });
    flat.into_iter().chain(tilted)
}

#[test]
fn elements_to_state_to_elements() {
    let mut worst = Worst::default();
    let sizes = [
        (1.0, 1.0),
        (126_686_531.9, 571_936.0),
        (132_712_440_041.279, 1.5e8),
    ];
    for (gm, periapsis_km) in sizes {
        for eccentricity in ECCENTRICITIES {
            for (inclination, node, argument) in orientations() {
                for true_anomaly in anomalies(eccentricity, 1e4) {
                    let elements = Elements {
                        periapsis_km,
                        eccentricity,
                        inclination,
                        node,
                        argument,
                        true_anomaly,
                    };
                    let (error, _) = there_and_back(gm, &elements);
                    worst.note(error, || format!("{elements:?}"));
                }
            }
        }
    }
    worst.within("elements there and back", PROMISE);
}

#[test]
fn elements_to_state_to_elements_at_random_and_from_very_far() {
    let mut rng = Rng::with_seed(61);
    let (mut worst, mut far) = (Worst::default(), Worst::default());
    for _ in 0..50_000 {
        let e = random_eccentricity(&mut rng);
        let shares: Vec<f64> = anomalies(e, logarithmic(&mut rng, 2.0, 1e9)).collect();
        let mut turn = || (rng.f64() * 2.0 - 1.0) * PI;
        let elements = Elements {
            periapsis_km: 1e5,
            eccentricity: e,
            node: turn(),
            argument: turn(),
            inclination: 0.01 + 0.99 * turn().abs() * 0.99,
            true_anomaly: shares[rng.usize(..shares.len())],
        };
        let (error, lever) = there_and_back(398_600.435_5, &elements);
        if lever < 1e4 {
            worst.note(error, || format!("{elements:?}"));
        } else {
            far.note(error / lever, || format!("{elements:?}"));
        }
    }
    worst.within("random elements there and back", PROMISE);
    far.within(
        "the same from beyond 10 000 periapsis distances, share of the distance",
        ROUNDING,
    );
}

fn random_eccentricity(rng: &mut Rng) -> f64 {
    match rng.u8(..4) {
        0 => ECCENTRICITIES[rng.usize(..ECCENTRICITIES.len())],
        1 => rng.f64(),
        2 => 1.0 + logarithmic(rng, 1e-9, 1e-3) * if rng.bool() { 1.0 } else { -1.0 },
        _ => logarithmic(rng, 1.0, 1e3),
    }
}

/// By how many roundings the place at `state` moves, as a share, if a span of time is off by a rounding.
fn stiffness(span: f64, state: &State) -> f64 {
    1.0 + span.abs() * state.v.length() / state.r.length()
}

/// By how many roundings the energy is off that a state gives: it is a small difference of v²/2 and mu/r, of which the
/// nearer place has the larger; what is left of it decides the time that the farther place is reached at.
fn energy_lever(e: f64, q: f64, near: f64, far: f64) -> f64 {
    1.0 + (1.0 / near) / ((e - 1.0).abs() / q + 1.0 / far)
}

/// One step of `dt` from a state at `t` on `orbit`, and back: the larger error as a share, and the stiffness of the step.
fn step(gm: f64, orbit: &Conic, t: f64, dt: f64) -> (f64, f64) {
    let (start, target) = (orbit.state_at(t), orbit.state_at(t + dt));
    let leg = |from: &State, to: &State, dt: f64| {
        let (orbit, time) = Conic::from_state(gm, from).expect("an orbit");
        let end = orbit.state_at(time + dt);
        let error = relative_vector(end.r, to.r).max(relative_vector(end.v, to.v));
        (end, error)
    };
    let (there, forth) = leg(&start, &target, dt);
    let (_, back) = leg(&there, &start, -dt);
    // Both legs are rounded at both ends, and a leg through periapsis is as stiff as the motion there.
    let round = orbit
        .period_s()
        .is_some_and(|period| dt.abs() > 0.5 * period);
    let through = (t * (t + dt) <= 0.0 || round).then(|| orbit.state_at(0.0));
    let span = t.abs().max(dt.abs());
    let stiff = [Some(start), Some(target), through].into_iter().flatten();
    let stiff = stiff
        .map(|state| stiffness(span, &state))
        .fold(0.0, f64::max);
    let (a, b) = (start.r.length(), target.r.length());
    let lever = energy_lever(
        orbit.eccentricity(),
        orbit.periapsis_km(),
        a.min(b),
        a.max(b),
    );
    (forth.max(back), stiff * lever)
}

/// Takes steps and sorts their errors: where rounding allows it, against the promise, otherwise against rounding.
#[derive(Default)]
struct Steps {
    promised: Worst,
    stiff: Worst,
    count: u32,
}

impl Steps {
    fn take(&mut self, gm: f64, e: f64, t: f64, dt: f64) {
        let q = 1e5;
        let unit = q * (q / gm).sqrt();
        let orbit = Conic::new(gm, q, (1.0 - e) / q, DVec3::X, DVec3::Z);
        let (error, stiff) = step(gm, &orbit, t * unit, dt * unit);
        if stiff * ROUNDING < PROMISE {
            self.count += 1;
            self.promised
                .note(error, || format!("e {e}, {t:e}, {dt:e}"));
        } else {
            self.stiff
                .note(error / stiff, || format!("e {e}, {t:e}, {dt:e}"));
        }
    }

    #[track_caller]
    fn within(self, at_least: u32) {
        assert!(
            self.count >= at_least,
            "only {} steps under the promise",
            self.count
        );
        println!("{} steps under the promise", self.count);
        self.promised.within("step there and back", PROMISE);
        self.stiff
            .within("stiff step, share of its stiffness", ROUNDING);
    }
}

#[test]
fn a_step_in_time_there_and_back() {
    let mut steps = Steps::default();
    for e in ECCENTRICITIES {
        for t in [0.0, 1e-6, 0.1, -0.7, 2.0, -5.0, 40.0, -1e3, 1e5] {
            for dt in [
                1e-6, 0.01, -0.3, 1.0, 3.0, -8.0, 100.0, -2e3, 1e4, 1e5, -1e7, 1e9,
            ] {
                steps.take(398_600.435_5, e, t, dt);
            }
        }
    }
    steps.within(1_500);
}

#[test]
fn a_step_in_time_there_and_back_at_random() {
    let mut rng = Rng::with_seed(62);
    let mut steps = Steps::default();
    for _ in 0..50_000 {
        let e = random_eccentricity(&mut rng);
        let mut time = || logarithmic(&mut rng, 1e-6, 1e8) * if rng.bool() { 1.0 } else { -1.0 };
        let (t, dt) = (time(), time());
        steps.take(132_712_440_041.279, e, t, dt);
    }
    steps.within(25_000);
}

#[test]
fn whole_periods_change_nothing() {
    for e in [0.0, 0.3, 0.9, 0.999] {
        let orbit = Conic::new(1.0, 1.0, 1.0 - e, DVec3::X, DVec3::Y);
        let period = orbit.period_s().expect("an ellipse");
        for turns in [-1e4, -1.0, 1.0, 365.0, 1e4] {
            let t = 0.3;
            let (here, there) = (orbit.state_at(t), orbit.state_at(t + turns * period));
            let stiff = stiffness(turns * period, &here);
            let error = relative_vector(there.r, here.r) / stiff;
            assert!(
                error < ROUNDING,
                "e {e}, {turns} turns: {error:e} of {stiff:e}"
            );
        }
    }
}
