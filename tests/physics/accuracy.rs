//! The accuracy that the core promises for a pass, over everything that the page lets a person set: v∞ 0.01 to
//! 100 km/s, periapsis 1 to 10 000 radii, eight planets. The promises: speed out = speed in to 1e-14; e, turn and b
//! to 1e-12.

use two_frames::physics::{Encounter, Planet};

use crate::common::{BODIES, Worst, angle_between, encounter, random_encounter, relative, solve};

/// A grid of all planets, speeds and distances, with the angles changing from point to point.
fn grid() -> impl Iterator<Item = Encounter> {
    BODIES.into_iter().flat_map(|body| {
        (0..=24).flat_map(move |i| {
            (0..=24).map(move |j| {
                let planet = Planet::of(body);
                let v_infinity = 10_f64.powf(-2.0 + f64::from(i) / 6.0);
                let radii = 10_f64.powf(f64::from(j) / 6.0);
                let turn = f64::from(25 * i + j);
                Encounter {
                    crank_rad: 1.3 * turn,
                    aim_rad: 2.7 * turn,
                    ..encounter(
                        planet,
                        v_infinity,
                        31.0 * turn % 360.0,
                        radii * planet.radius_km,
                    )
                }
            })
        })
    })
}

/// The grid and as many random encounters again.
fn all() -> impl Iterator<Item = Encounter> {
    let mut rng = fastrand::Rng::with_seed(6);
    grid().chain((0..20_000).map(move |_| random_encounter(&mut rng)))
}

#[test]
fn speed_out_equals_speed_in() {
    let (mut equal, mut given) = (Worst::default(), Worst::default());
    for encounter in all() {
        let flyby = solve(&encounter);
        let (before, after) = (flyby.velocity_in.speed(), flyby.velocity_out.speed());
        equal.note(relative(after, before), || format!("{encounter:?}"));
        given.note(relative(before, encounter.v_infinity_km_s), || {
            format!("{encounter:?}")
        });
    }
    equal.within("speed out against speed in", 1e-14);
    given.within("speed in against v∞", 1e-14);
}

/// e, turn and b by a second way, none of which loses digits anywhere on the grid.
///
/// From the conservation of energy and angular momentum: the speed at periapsis is √(v∞² + 2μ/r), and b v∞ = r v.
/// Then e² = 1 + (b v∞²/μ)². Source: any text on mechanics, here from memory. M
/// The turn is Rutherford's: tan(δ/2) = μ/(b v∞²) (Rutherford 1911, Philosophical Magazine 21, 669, from memory. M);
/// as an arc cosine of its half where the turn is nearly a half circle, as an arc sine where it is small.
fn second_way(encounter: &Encounter) -> [f64; 3] {
    let (mu, v, r) = (
        encounter.planet.gm,
        encounter.v_infinity_km_s,
        encounter.periapsis_km,
    );
    let b = r * (v * v + 2.0 * mu / r).sqrt() / v;
    let e = 1.0_f64.hypot(b * v * v / mu);
    // cos(δ/2) = √(e² − 1)/e and sin(δ/2) = 1/e.
    let cos_half = b * v * v / mu / e;
    let half = if cos_half < 0.7 {
        cos_half.acos()
    } else {
        (1.0 / e).asin()
    };
    [e, 2.0 * half, b]
}

#[test]
fn eccentricity_turn_and_impact_parameter() {
    let mut worst = [Worst::default(), Worst::default(), Worst::default()];
    for encounter in all() {
        let flyby = solve(&encounter);
        let got = [
            flyby.eccentricity,
            flyby.turn_rad,
            flyby.impact_parameter_km,
        ];
        for ((worst, got), want) in worst.iter_mut().zip(got).zip(second_way(&encounter)) {
            worst.note(relative(got, want), || format!("{encounter:?}"));
        }
    }
    for (worst, what) in worst
        .into_iter()
        .zip(["eccentricity", "turn", "impact parameter"])
    {
        worst.within(what, 1e-12);
    }
}

#[test]
fn vectors_show_the_same_turn_and_change() {
    let (mut turn, mut change, mut aim) = (Worst::default(), Worst::default(), Worst::default());
    for encounter in all() {
        let flyby = solve(&encounter);
        let (before, after) = (flyby.velocity_in.km_s, flyby.velocity_out.km_s);
        // A direction has an error of some 1e-16 rad, however small the turn: the difference is not relative.
        let bend = angle_between(before, after);
        turn.note((bend - flyby.turn_rad).abs(), || format!("{encounter:?}"));
        // So has a velocity, as a share of its size.
        let difference =
            (after - before - flyby.velocity_change).length() / encounter.v_infinity_km_s;
        change.note(difference, || format!("{encounter:?}"));
        // Aim point and turn lie in one plane: T cos θ + R sin θ is where the probe is missed towards.
        let plane = flyby.aim_plane;
        let miss = plane.t * flyby.aim_point_km[0] + plane.r * flyby.aim_point_km[1];
        let out_of_plane = miss.cross(plane.s).normalize().dot(after) / encounter.v_infinity_km_s;
        aim.note(out_of_plane.abs(), || format!("{encounter:?}"));
        aim.note(relative(miss.length(), flyby.impact_parameter_km), || {
            format!("{encounter:?}")
        });
    }
    turn.within("turn between the vectors, rad", 1e-14);
    change.within("velocity change, share of v∞", 1e-14);
    aim.within("path out of the aim's plane", 1e-14);
}

#[test]
fn periapsis_is_where_and_as_fast_as_promised() {
    let (mut place, mut speed) = (Worst::default(), Worst::default());
    for encounter in all() {
        let flyby = solve(&encounter);
        let (r, v) = flyby.seen_from_planet(0.0);
        let p = flyby.periapsis_direction * encounter.periapsis_km;
        place.note((r.km - p).length() / encounter.periapsis_km, || {
            format!("{encounter:?}")
        });
        // At right angles to the line from the planet, or it would not be the closest point.
        let across = r.km.dot(v.km_s).abs() / (r.km.length() * v.speed());
        place.note(across, || format!("{encounter:?}"));
        speed.note(relative(v.speed(), flyby.periapsis_speed_km_s), || {
            format!("{encounter:?}")
        });
    }
    place.within("place of periapsis", 1e-14);
    speed.within("speed at periapsis", 1e-14);
}
