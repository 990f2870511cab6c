//! Which way is which, worked out by hand from the definitions: y forward, z north, x away from the Sun;
//! T = S × north, R = S × T; the probe is bent towards the planet, away from the side that it is aimed at. T

use glam::DVec3;
use two_frames::physics::{AimPlane, Body, Encounter, Planet};

use crate::common::{Worst, encounter, random_encounter, solve};

const QUARTER: f64 = std::f64::consts::FRAC_PI_2;

#[track_caller]
fn along(what: &str, got: DVec3, want: DVec3) {
    // Sines and cosines of quarter turns are off by 1e-16.
    assert!(
        (got - want).length() < 4e-16,
        "{what}: {got}, expected {want}"
    );
}

#[test]
fn axes_of_the_aim_plane_for_straight_approaches() {
    let (x, y, z) = (DVec3::X, DVec3::Y, DVec3::Z);
    // Approach angle and crank angle in quarter turns; S, T, R.
    let rows = [
        ("catching up", 0.0, 0.0, y, x, -z),
        ("outward", 1.0, 0.0, x, -y, -z),
        ("head-on", 2.0, 0.0, -y, -x, -z),
        ("sunward", -1.0, 0.0, -x, y, -z),
        ("northward", 1.0, 1.0, z, y, -x),
        ("southward", 1.0, -1.0, -z, -y, -x),
    ];
    for (name, approach, crank, s, t, r) in rows {
        let plane = AimPlane::facing(approach * QUARTER, crank * QUARTER);
        along(name, plane.s, s);
        along(name, plane.t, t);
        along(name, plane.r, r);
        along(name, plane.direction(0.0), t);
        along(name, plane.direction(QUARTER), r);
    }
}

#[test]
fn a_probe_is_bent_away_from_the_side_it_is_aimed_at() {
    let earth = Planet::of(Body::Earth);
    let pass = |aim: f64| {
        solve(&Encounter {
            aim_rad: aim * QUARTER,
            ..encounter(earth, 5.0, 0.0, 10_000.0)
        })
    };
    // Coming up from behind (S = y) and aimed outward, south, sunward, north.
    let bent = [0.0, 1.0, 2.0, 3.0].map(|aim| pass(aim).velocity_out.km_s);
    assert!(bent[0].x < -1.0 && bent[1].z > 1.0 && bent[2].x > 1.0 && bent[3].z < -1.0);
    let nearest = [0.0, 1.0, 2.0, 3.0].map(|aim| pass(aim).periapsis_direction);
    assert!(nearest[0].x > 0.7 && nearest[1].z < -0.7);
    assert!(nearest[2].x < -0.7 && nearest[3].z > 0.7);
}

#[test]
fn axes_are_square_and_right_handed_everywhere() {
    let mut rng = fastrand::Rng::with_seed(9);
    let mut worst = Worst::default();
    for i in 0..20_000 {
        let any = random_encounter(&mut rng);
        // Every other one close to the pole, on both sides of where the reference direction changes.
        let close = 10_f64.powf(-12.0 * rng.f64());
        let (approach, crank) = if i % 2 == 0 {
            (any.approach_rad, any.crank_rad)
        } else {
            (QUARTER + close, QUARTER - close)
        };
        let AimPlane { s, t, r } = AimPlane::facing(approach, crank);
        for error in [
            s.length() - 1.0,
            t.length() - 1.0,
            s.dot(t),
            (s.cross(t) - r).length(),
            (t.cross(r) - s).length(),
        ] {
            worst.note(error.abs(), || format!("{approach}, {crank}"));
        }
    }
    worst.within("axes of the aim plane, off square", 1e-15);
}
