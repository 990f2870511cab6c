//! The closed-form path against a numerical integration that knows only Newton's law of gravity.
//!
//! The integrator is Dormand and Prince's eighth-order method (crate `ode_solvers`). It is run twice for each pass: in the
//! planet frame, and in the Sun frame with the planet itself moving along, so that no frame change of ours is trusted.
//! How it is known to be good enough: every run is repeated at a 100 times looser tolerance, energy and angular momentum
//! are watched at every point, and all three have to be 10 times better than what they are used to judge.

use glam::{DMat3, DVec3};
use ode_solvers::{Dop853, OutputType, SVector, System};
use two_frames::physics::units::GM_SUN;
use two_frames::physics::{Encounter, Flyby, Planet, State};

use crate::common::{BODIES, Worst, encounter, solve};

/// What the core promises.
const PROMISE: f64 = 1e-9;
/// What the integrator has to show about itself.
const TRUSTED: f64 = 1e-10;
const TIGHT: f64 = 1e-14;
const LOOSE: f64 = 1e-12;

/// Gravity of a planet that moves at constant velocity, in units of the periapsis distance and √(r³/μ).
///
/// The planet's place is part of what is integrated, not a function of time: `ode_solvers` 0.6.2 has a wrong node (c12 = 0)
/// that spoils every system that depends on time by itself (its pull request 42) and leaves the others alone.
struct Gravity {
    planet_velocity: DVec3,
}

/// Probe's position, probe's velocity, planet's position.
type Nine = SVector<f64, 9>;

impl System<f64, Nine> for Gravity {
    fn system(&self, _: f64, y: &Nine, dy: &mut Nine) {
        let r = DVec3::new(y[0] - y[6], y[1] - y[7], y[2] - y[8]);
        let pull = r * (-1.0 / (r.length_squared() * r.length()));
        dy.fixed_rows_mut::<3>(0).copy_from(&y.fixed_rows::<3>(3));
        dy.fixed_rows_mut::<3>(3).copy_from_slice(&pull.to_array());
        dy.fixed_rows_mut::<3>(6)
            .copy_from_slice(&self.planet_velocity.to_array());
    }
}

/// A probe and a planet, scaled.
#[derive(Clone, Copy)]
struct Pair {
    probe: State,
    planet: DVec3,
}

/// Integrates for a time `dt` of either sign.
fn integrate(start: Pair, planet_velocity: DVec3, dt: f64, tolerance: f64) -> Pair {
    let parts = [start.probe.r, start.probe.v, start.planet].map(|part| part.to_array());
    let y = Nine::from_column_slice(parts.as_flattened());
    let mut stepper = Dop853::new(
        Gravity { planet_velocity },
        0.0,
        dt,
        dt,
        y,
        tolerance,
        tolerance,
    );
    stepper.set_output(OutputType::Sparse);
    stepper.integrate().expect("a smooth path");
    let y = stepper.y_out().last().expect("an end");
    let part = |i: usize| DVec3::new(y[i], y[i + 1], y[i + 2]);
    let (r, v, planet) = (part(0), part(3), part(6));
    Pair {
        probe: State { r, v },
        planet,
    }
}

/// The state at periapsis in scaled units, from the turn alone: the outgoing direction is the incoming one turned about
/// the pass's normal, periapsis lies along their difference and the motion there along their sum.
fn at_periapsis(encounter: &Encounter) -> State {
    let (mu, v, r) = (
        encounter.planet.gm,
        encounter.v_infinity_km_s,
        encounter.periapsis_km,
    );
    let (sin_a, cos_a) = encounter.approach_rad.sin_cos();
    let (sin_k, cos_k) = encounter.crank_rad.sin_cos();
    let incoming = DVec3::new(sin_a * cos_k, cos_a, sin_a * sin_k);
    let t = incoming.cross(DVec3::Z).normalize();
    let miss = DMat3::from_axis_angle(incoming, encounter.aim_rad) * t;
    let turn = 2.0 * (1.0 / (1.0 + r * v * v / mu)).asin();
    // Missed on one side, bent to the other.
    let outgoing = DMat3::from_axis_angle(miss.cross(incoming), turn) * incoming;
    State {
        r: (incoming - outgoing).normalize(),
        v: (incoming + outgoing).normalize() * (2.0 + r * v * v / mu).sqrt(),
    }
}

/// Scaled times to look at, out to where the drawn arc ends: max(3 b, 6 r), and for good measure 40 r and 3 a more.
fn times(flyby: &Flyby, unit: f64) -> Vec<f64> {
    let r = flyby.encounter.periapsis_km;
    let end = (3.0 * flyby.impact_parameter_km).max(40.0 * r) + 3.0 * flyby.semi_major_axis_km;
    let last = flyby.time_at_distance(end).expect("outside periapsis") / unit;
    (1..=12)
        .map(|i| last * (f64::from(i) / 12.0).powi(3))
        .collect()
}

/// Energy and angular momentum relative to the planet, scaled.
fn conserved(state: &State) -> (f64, DVec3) {
    let energy = 0.5 * state.v.length_squared() - 1.0 / state.r.length();
    (energy, state.r.cross(state.v))
}

#[derive(Default)]
struct Report {
    planet: Worst,
    planet_speed: Worst,
    sun: Worst,
    loose: Worst,
    energy: Worst,
    momentum: Worst,
}

fn fly(encounter: &Encounter, report: &mut Report) {
    let flyby = solve(encounter);
    let (q, mu) = (encounter.periapsis_km, encounter.planet.gm);
    let unit = q * (q / mu).sqrt();
    let planet_velocity = DVec3::Y * (GM_SUN / encounter.planet.orbit_km).sqrt() * unit / q;
    let periapsis = at_periapsis(encounter);
    let (energy, momentum) = conserved(&periapsis);
    let place = |t: f64| format!("e {:.3}, t {t:.3e}, {encounter:?}", flyby.eccentricity);
    for direction in [-1.0, 1.0] {
        let start = Pair {
            probe: periapsis,
            planet: DVec3::ZERO,
        };
        let (mut fixed, mut loose, mut moving) = (start, start, start);
        moving.probe.v += planet_velocity;
        let mut now = 0.0;
        for t in times(&flyby, unit).into_iter().map(|t| t * direction) {
            let dt = t - now;
            fixed = integrate(fixed, DVec3::ZERO, dt, TIGHT);
            loose = integrate(loose, DVec3::ZERO, dt, LOOSE);
            moving = integrate(moving, planet_velocity, dt, TIGHT);
            now = t;

            // Everything is judged as a share of the distance from the planet, the smaller number.
            let (got, got_v) = flyby.seen_from_planet(t * unit);
            let (seen, _) = flyby.seen_from_sun(t * unit);
            let State { r, v } = fixed.probe;
            let share = |difference: DVec3| difference.length() / r.length();
            report.planet.note(share(got.km / q - r), || place(t));
            report
                .planet_speed
                .note((got_v.km_s * unit / q - v).length() / v.length(), || {
                    place(t)
                });
            report
                .sun
                .note(share(seen.km / q - moving.probe.r), || place(t));
            report.loose.note(share(loose.probe.r - r), || place(t));
            let (e, h) = conserved(&fixed.probe);
            report
                .energy
                .note(((e - energy) / (1.0 + energy.abs())).abs(), || place(t));
            report
                .momentum
                .note((h - momentum).length() / momentum.length(), || place(t));
        }
    }
}

#[test]
fn the_path_is_newtons() {
    let mut report = Report::default();
    let mut rng = fastrand::Rng::with_seed(853);
    for (i, e) in [
        1.01, 1.03, 1.1, 1.3, 1.366, 2.0, 3.0, 5.0, 10.0, 20.0, 35.0, 50.0,
    ]
    .into_iter()
    .enumerate()
    {
        for j in 0..4 {
            let planet = Planet::of(BODIES[(i + 3 * j) % BODIES.len()]);
            let periapsis = planet.radius_km * [1.1, 3.0, 8.0, 40.0][j];
            let v_infinity = ((e - 1.0) * planet.gm / periapsis).sqrt();
            let mut turn = || (rng.f64() * 2.0 - 1.0) * std::f64::consts::PI;
            let (crank_rad, aim_rad) = if j == 0 { (0.0, 0.0) } else { (turn(), turn()) };
            let approach_deg = turn().to_degrees();
            let encounter = Encounter {
                crank_rad,
                aim_rad,
                ..encounter(planet, v_infinity, approach_deg, periapsis)
            };
            fly(&encounter, &mut report);
        }
    }
    report.loose.within("integrator, 100 times looser", TRUSTED);
    report.energy.within("integrator, energy", TRUSTED);
    report
        .momentum
        .within("integrator, angular momentum", TRUSTED);
    report
        .planet
        .within("position in the planet frame against Newton", PROMISE);
    report
        .planet_speed
        .within("velocity in the planet frame against Newton", PROMISE);
    report
        .sun
        .within("position in the Sun frame against Newton", PROMISE);
}
