//! How long aiming takes: the outcome of one aim point, a whole map of them, and the search for a goal.
//!
//! Run with `cargo bench --bench aim`; the median is the number to quote.

use std::f64::consts::PI;
use std::hint::black_box;

use divan::Bencher;
use fastrand::Rng;
use two_frames::physics::{Approach, Body, Encounter, Free, Goal, Measure, Planet, Search};

fn main() {
    divan::main();
}

/// A power of two, so that the index wraps for nothing.
const COUNT: usize = 1024;

/// A pass of Jupiter as a person is likely to set one.
fn encounter(approach_deg: f64, aim_rad: f64) -> Encounter {
    let planet = Planet::of(Body::Jupiter);
    Encounter {
        planet,
        v_infinity_km_s: 9.0,
        approach_rad: approach_deg * PI / 180.0,
        crank_rad: 0.1,
        periapsis_km: 8.0 * planet.radius_km,
        aim_rad,
    }
}

fn approach() -> Approach {
    Approach::of(&encounter(129.0, 0.0)).expect("an ordinary approach")
}

/// Aim points within 40 radii.
fn points(plane: &Approach) -> Vec<[f64; 2]> {
    let mut rng = Rng::with_seed(11);
    let half = 40.0 * plane.planet.radius_km;
    let mut any = || (rng.f64() * 2.0 - 1.0) * half;
    (0..COUNT).map(|_| [any(), any()]).collect()
}

fn one_point(bencher: Bencher<'_, '_>, of: impl Fn(&Approach, [f64; 2]) -> f64) {
    let plane = approach();
    let points = points(&plane);
    let mut i = 0;
    bencher.bench_local(|| {
        i = (i + 1) % COUNT;
        of(black_box(&plane), black_box(points[i]))
    });
}

/// Target: 25 ns.
#[divan::bench(sample_size = 4096, sample_count = 200)]
fn sun_speed_of_one_aim_point(bencher: Bencher<'_, '_>) {
    one_point(bencher, |plane, point| plane.aimed(point).sun_speed_km_s());
}

#[divan::bench(sample_size = 4096, sample_count = 200)]
fn speed_change_of_one_aim_point(bencher: Bencher<'_, '_>) {
    one_point(bencher, |plane, point| {
        Measure::SpeedChange.of(&plane.aimed(point))
    });
}

/// Target: 80 ns.
#[divan::bench(sample_size = 4096, sample_count = 200)]
fn aphelion_of_one_aim_point(bencher: Bencher<'_, '_>) {
    one_point(bencher, |plane, point| {
        Measure::Aphelion.of(&plane.aimed(point))
    });
}

#[divan::bench(sample_size = 4096, sample_count = 200)]
fn inclination_of_one_aim_point(bencher: Bencher<'_, '_>) {
    one_point(bencher, |plane, point| {
        Measure::Inclination.of(&plane.aimed(point))
    });
}

/// 65,536 aim points.
#[divan::bench(sample_size = 1, sample_count = 200)]
fn map_of_aphelia_256_by_256(bencher: Bencher<'_, '_>) {
    let plane = approach();
    let mut map = vec![0.0; 256 * 256];
    let step = 80.0 * plane.planet.radius_km / 256.0;
    bencher.bench_local(|| {
        let plane = black_box(&plane);
        for (row, line) in map.chunks_exact_mut(256).enumerate() {
            let r = (row as f64 - 127.5) * step;
            for (column, cell) in line.iter_mut().enumerate() {
                let t = (column as f64 - 127.5) * step;
                *cell = Measure::Aphelion.of(&plane.aimed([t, r]));
            }
        }
        black_box(&mut map);
    });
}

const AU: f64 = 149_597_870.7;

/// Goals in reach of Jupiter at 9 km/s, and two that are not.
const GOALS: [(&str, Goal); 10] = [
    ("aphelion", Goal::Aphelion(9.5 * AU)),
    ("perihelion", Goal::Perihelion(2.0 * AU)),
    ("leave", Goal::Leave(5.0)),
    ("turn", Goal::Turn(1.0)),
    ("speed change", Goal::SpeedChange(3.0)),
    ("most gain", Goal::MostGain),
    ("most loss", Goal::MostLoss),
    ("most inclination", Goal::MostInclination),
    ("perihelion out of reach", Goal::Perihelion(5.5 * AU)),
    ("speed change out of reach", Goal::SpeedChange(60.0)),
];

/// Aims from many starts that differ in approach and aim angle. Target: 5 ms.
fn search(bencher: Bencher<'_, '_>, name: &str, free: Free) {
    let goal = GOALS.iter().find(|(of, _)| *of == name).expect("a goal").1;
    let mut i = 0.0;
    bencher.bench_local(|| {
        i = (i + 1.0) % 16.0;
        let encounter = encounter(121.0 + i, 0.37 * i - 3.0);
        let farthest_km = 1e3 * encounter.planet.radius_km;
        let search = Search {
            encounter,
            goal,
            free,
            in_plane: false,
            farthest_km,
        };
        black_box(search.run()).expect("a start")
    });
}

#[divan::bench(args = GOALS.map(|(name, _)| name), sample_size = 1, sample_count = 64)]
fn aim_with_closest_distance(bencher: Bencher<'_, '_>, goal: &str) {
    search(bencher, goal, Free::Periapsis);
}

#[divan::bench(args = GOALS.map(|(name, _)| name), sample_size = 1, sample_count = 64)]
fn aim_with_aim_point(bencher: Bencher<'_, '_>, goal: &str) {
    search(bencher, goal, Free::AimPoint);
}

#[divan::bench(args = GOALS.map(|(name, _)| name), sample_size = 1, sample_count = 64)]
fn aim_with_approach(bencher: Bencher<'_, '_>, goal: &str) {
    search(bencher, goal, Free::Approach);
}
