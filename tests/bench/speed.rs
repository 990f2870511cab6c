//! How long the core takes: one pass, one state at a time, one root of Kepler's equation, the pictures of one frame,
//! the chart of an outcome.
//!
//! Inputs vary from call to call, as they do under a slider, so that no branch is learnt by heart. Run with
//! `cargo bench --bench speed`; the median is the number to quote.

use std::f64::consts::PI;
use std::hint::black_box;

use divan::Bencher;
use fastrand::Rng;
use glam::DVec2;
use two_frames::figure::{Grid, Look, Scene, Track, Views, contours, outcome_chart};
use two_frames::physics::{Body, Encounter, Flyby, Planet, solve_kepler};
use two_frames::report::MeasureWords;
use two_frames::sandbox::{Input, Pictures, Sandbox, Sizes};
use two_frames::scenario::{Field, PRESETS, Preset};

fn main() {
    divan::main();
}

/// A power of two, so that the index wraps for nothing.
const COUNT: usize = 1024;

/// The numbers that a person is likely to set: 2 to 30 km/s, 1 to 100 radii, any angle, any planet.
fn encounters() -> Vec<Encounter> {
    const BODIES: [Body; 8] = [
        Body::Mercury,
        Body::Venus,
        Body::Earth,
        Body::Mars,
        Body::Jupiter,
        Body::Saturn,
        Body::Uranus,
        Body::Neptune,
    ];
    let mut rng = Rng::with_seed(1);
    let encounter = |_| {
        let planet = Planet::of(BODIES[rng.usize(..8)]);
        let mut angle = || (rng.f64() * 2.0 - 1.0) * PI;
        let (approach_rad, crank_rad, aim_rad) = (angle(), angle(), angle());
        Encounter {
            planet,
            v_infinity_km_s: 2.0 * 15.0_f64.powf(rng.f64()),
            approach_rad,
            crank_rad,
            periapsis_km: planet.radius_km * 100.0_f64.powf(rng.f64()),
            aim_rad,
        }
    };
    (0..COUNT).map(encounter).collect()
}

/// Passes with a time each, within the arc that is drawn: out to 30 periapsis distances or so, both ways.
fn moments() -> Vec<(Flyby, f64)> {
    let mut rng = Rng::with_seed(2);
    let moment = |encounter: Encounter| {
        let flyby = Flyby::solve(&encounter).expect("an ordinary pass");
        let end = flyby
            .time_at_distance(30.0 * encounter.periapsis_km)
            .expect("outside periapsis");
        (flyby, (rng.f64() * 2.0 - 1.0) * end)
    };
    encounters().into_iter().map(moment).collect()
}

/// Measures `work` on one input after the other, round and round.
fn cycle<T>(bencher: Bencher<'_, '_>, inputs: &[T], mut work: impl FnMut(&T)) {
    let mut i = 0;
    bencher.bench_local(|| {
        i = (i + 1) % COUNT;
        work(black_box(&inputs[i]));
    });
}

/// All answers of one pass, both frames and both orbits round the Sun. Target: 400 ns.
#[divan::bench(sample_size = 1024, sample_count = 200)]
fn solve_one_pass(bencher: Bencher<'_, '_>) {
    cycle(bencher, &encounters(), |encounter| {
        let _ = black_box(Flyby::solve(encounter));
    });
}

/// Position and velocity at a time, both frames' worth. Target: 150 ns.
#[divan::bench(sample_size = 1024, sample_count = 200)]
fn state_at_a_time(bencher: Bencher<'_, '_>) {
    cycle(bencher, &moments(), |(flyby, time)| {
        black_box(flyby.seen_from_sun(*time));
    });
}

/// The root of Kepler's equation alone.
#[divan::bench(sample_size = 1024, sample_count = 200)]
fn kepler_root(bencher: Bencher<'_, '_>) {
    let roots: Vec<_> = moments()
        .into_iter()
        .map(|(flyby, time)| {
            let r = flyby.encounter.periapsis_km;
            let unit = r * (r / flyby.encounter.planet.gm).sqrt();
            (flyby.eccentricity, time / unit)
        })
        .collect();
    cycle(bencher, &roots, |(e, tau)| {
        black_box(solve_kepler(*e, 1.0 - e, *tau));
    });
}

/// The same for the whole accuracy grid: e − 1 from 1e-9 to 1e6, times from a millionth to 10^12 periapsis times.
#[divan::bench(sample_size = 1024, sample_count = 200)]
fn kepler_root_anywhere(bencher: Bencher<'_, '_>) {
    let mut rng = Rng::with_seed(3);
    let roots: Vec<_> = (0..COUNT)
        .map(|_| {
            let excess = 10.0_f64.powf(-9.0 + 15.0 * rng.f64());
            (excess, 10.0_f64.powf(-6.0 + 18.0 * rng.f64()))
        })
        .collect();
    cycle(bencher, &roots, |(excess, tau)| {
        black_box(solve_kepler(1.0 + excess, -excess, *tau));
    });
}

/// What a frame of the page asks for at every ready-made pass, at the size of a laptop's pictures.
fn scenes() -> Vec<(Flyby, Track)> {
    let scene = |preset: &Preset| {
        let encounter = preset.scenario().encounter().expect("a planet");
        let flyby = Flyby::solve(&encounter).expect("a ready-made pass");
        (flyby, Track::of(&flyby))
    };
    (0..COUNT)
        .map(|i| scene(&PRESETS[i % PRESETS.len()]))
        .collect()
}

/// All four pictures of a solved and sampled pass, labels placed. Target: 150 µs.
#[divan::bench(sample_size = 16, sample_count = 200)]
fn compose_four_pictures(bencher: Bencher<'_, '_>) {
    let sizes = Sizes::all(DVec2::new(400.0, 400.0));
    cycle(bencher, &scenes(), |(flyby, track)| {
        let time_s = track.telling_s;
        let scene = Scene {
            flyby,
            track,
            time_s,
        };
        let views = Views::fit(&scene, Look::NORTH, sizes.stage, 1.0);
        black_box(Pictures::compose(&scene, &views, &sizes));
    });
}

/// The chart of an outcome: sampled, its best found, drawn. Target: 150 µs.
#[divan::bench(sample_size = 16, sample_count = 200, args = [Field::Periapsis, Field::Approach, Field::VInfinity])]
fn compose_chart(bencher: Bencher<'_, '_>, against: Field) {
    let size = DVec2::new(400.0, 240.0);
    let mut turn = 0;
    cycle(bencher, &scenes(), |(flyby, _)| {
        turn = (turn + 1) % MeasureWords::ALL.len();
        let measure = MeasureWords::ALL[turn].measure;
        black_box(outcome_chart(flyby, measure, against, size));
    });
}

/// From a slider's move on: solving, sampling, pictures, numbers and sentences.
#[divan::bench(sample_size = 16, sample_count = 200)]
fn slider_to_pictures_and_numbers(bencher: Bencher<'_, '_>) {
    let sizes = Sizes::all(DVec2::new(400.0, 400.0));
    let mut sandbox = Sandbox::default();
    let mut position = 0.0;
    bencher.bench_local(|| {
        position = (position + 1.0) % 1000.0;
        sandbox
            .apply(Input::Slide(Field::Periapsis, position))
            .expect("the slider has no bad places");
        black_box((sandbox.pictures(&sizes), sandbox.panel()))
            .0
            .expect("pictures")
    });
}

/// Lines of equal value on three maps of 97 by 97 values each, several levels a map. Target: 500 µs for 12 in all.
#[divan::bench(args = [4, 12])]
fn contours_of_three_maps(bencher: Bencher<'_, '_>, levels: usize) {
    const SIDE: usize = 97;
    let map = |shift: f64| -> Vec<f64> {
        let value = |i: usize| {
            let x = ((i % SIDE) as f64 - 48.5) / 20.0 + shift;
            let y = ((i / SIDE) as f64 - 48.5) / 20.0;
            let square = x * x + y * y;
            (x * x + 0.7 * y * y).sqrt() + x / (0.3 + square)
        };
        (0..SIDE * SIDE).map(value).collect()
    };
    let maps = [0.0, 0.13, 0.26].map(map);
    let levels: Vec<_> = (0..levels)
        .map(|i| 0.3 + 2.4 * i as f64 / levels as f64)
        .collect();
    bencher.bench_local(|| {
        for values in &maps {
            let columns = SIDE;
            black_box(contours(Grid { columns, values }, black_box(&levels)));
        }
    });
}
