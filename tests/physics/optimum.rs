//! The most of something: against dense grids of passes worked out by rotations, and against a theorem.

use std::f64::consts::PI;

use fastrand::Rng;
use two_frames::physics::{Body, Encounter, Finding, Free, Goal, Measure, Planet, Search};

use crate::common::{BODIES, Worst, close, encounter, logarithmic, printed, solve};
use crate::second_route::{Route, any_angle, any_pass, approach};

const MOST: [Goal; 3] = [Goal::MostGain, Goal::MostLoss, Goal::MostInclination];

/// What a goal wants most of, from the second route.
fn value(goal: Goal, route: &Route) -> f64 {
    match goal {
        Goal::MostGain => route.speed_change(),
        Goal::MostLoss => -route.speed_change(),
        Goal::MostInclination => route.inclination(),
        _ => unreachable!("not the most of anything"),
    }
}

fn impact_parameter(encounter: &Encounter) -> f64 {
    let a = encounter.planet.gm / encounter.v_infinity_km_s.powi(2);
    (encounter.periapsis_km * (encounter.periapsis_km + 2.0 * a)).sqrt()
}

fn of_encounter(goal: Goal, encounter: &Encounter) -> f64 {
    let route = Route::of(encounter, impact_parameter(encounter), encounter.aim_rad);
    value(goal, &route)
}

/// Distances from grazing to the farthest, evenly spread in the turn.
fn distances(search: &Search, count: u32) -> Vec<f64> {
    let at = |km: f64| Encounter {
        periapsis_km: km,
        ..search.encounter
    };
    let a = search.encounter.planet.gm / search.encounter.v_infinity_km_s.powi(2);
    let ends = [search.farthest_km, search.encounter.planet.radius_km]
        .map(|km| 2.0 * a.atan2(impact_parameter(&at(km))));
    (0..=count)
        .map(|i| ends[0] + (ends[1] - ends[0]) * f64::from(i) / f64::from(count))
        .map(|turn| a / (0.5 * turn).tan())
        .collect()
}

/// Angles all round, with 0 and a half turn among them.
fn all_round(count: u32) -> Vec<f64> {
    (0..count)
        .map(|i| 2.0 * PI * f64::from(i) / f64::from(count) - PI)
        .collect()
}

/// The best of a grid over whatever is free.
fn brute_force(search: &Search, fine: u32) -> f64 {
    let Encounter {
        approach_rad,
        aim_rad,
        ..
    } = search.encounter;
    let aims = match search.free {
        Free::Periapsis => vec![aim_rad],
        _ if search.in_plane && search.goal != Goal::MostInclination => vec![0.0, PI],
        _ => all_round(fine),
    };
    let approaches = match search.free {
        Free::Approach => all_round(fine),
        _ => vec![approach_rad],
    };
    let distances = distances(search, 24);
    let mut best = f64::NEG_INFINITY;
    for approach_rad in approaches {
        let start = Encounter {
            approach_rad,
            ..search.encounter
        };
        for aim in &aims {
            for b in &distances {
                best = best.max(value(search.goal, &Route::of(&start, *b, *aim)));
            }
        }
    }
    best
}

fn any_search(rng: &mut Rng, free: Free) -> Search {
    let mut start = any_pass(rng);
    if rng.bool() {
        start.crank_rad = 0.0;
    }
    Search {
        encounter: start,
        goal: MOST[rng.usize(..3)],
        free,
        in_plane: rng.bool(),
        farthest_km: start.planet.radius_km * logarithmic(rng, 2.0, 1e4),
    }
}

/// How far grids beat the search, as a share of the value; never below the surface, and never past the farthest.
fn contest(seed: u64, count: u32, free: Free, fine: u32) {
    let mut rng = Rng::with_seed(seed);
    let mut worst = Worst::default();
    for _ in 0..count {
        let search = any_search(&mut rng, free);
        let Ok(Finding::Met(found)) = search.run() else {
            panic!("there is always a most: {search:?}")
        };
        assert!(!solve(&found).strikes(), "{search:?}");
        assert!(found.periapsis_km <= search.farthest_km, "{search:?}");
        let (got, best) = (
            of_encounter(search.goal, &found),
            brute_force(&search, fine),
        );
        // The test's own rounding: speeds of up to the fastest, and a tilt's of two speeds.
        let speed = search.encounter.v_infinity_km_s + search.encounter.planet.orbit_speed();
        let rounding = 1e-15
            * if search.goal == Goal::MostInclination {
                10.0
            } else {
                speed
            };
        worst.note((best - got - rounding) / best.abs(), || {
            format!("{got:e}, {best:e}: {search:?}")
        });
    }
    worst.within("grid beats the search, share", 1e-9);
}

#[test]
fn no_grid_beats_the_best_aim_point() {
    contest(321, 1_500, Free::AimPoint, 48);
}

#[test]
fn no_grid_beats_the_best_closest_distance() {
    contest(322, 3_000, Free::Periapsis, 1);
}

#[test]
fn no_grid_beats_the_best_approach() {
    contest(323, 150, Free::Approach, 24);
}

#[test]
fn the_largest_change_of_velocity_is_at_the_circular_speed() {
    // Maximum of 2 v/(1 + r v²/μ) over v: v = √(μ/r), where e = 2 and the turn is 60°. T
    // Source: the numbers follow from the planets' GM and radii (DE440, IAU WGCCRE 2015), recomputed with numpy, no book.
    let rows = [
        "3.0046", "7.3266", "7.9054", "3.5512", "42.0956", "25.0874", "15.0562", "16.6135",
    ];
    let mut rng = Rng::with_seed(324);
    for (body, text) in BODIES.into_iter().zip(rows) {
        let planet = Planet::of(body);
        let change = |v: f64, aim: f64| {
            let plane = approach(&encounter(planet, v, 40.0, planet.radius_km));
            let b = plane.strike_radius_km();
            Measure::VelocityChange.of(&plane.aimed([b * aim.cos(), b * aim.sin()]))
        };
        let circular = (planet.gm / planet.radius_km).sqrt();
        let most = change(circular, any_angle(&mut rng));
        printed(planet.name, most, text, 0.0);
        close(planet.name, most, circular, 1e-15);
        for _ in 0..1_000 {
            let v = circular * logarithmic(&mut rng, 1e-2, 1e2);
            let here = change(v, any_angle(&mut rng));
            assert!(here <= most * (1.0 + 1e-15), "{} at {v} km/s", planet.name);
            // Off the best speed by a few per cent it is plainly less.
            assert!(here < most || (v / circular - 1.0).abs() < 1e-6);
        }
        let flyby = solve(&encounter(planet, circular, 40.0, planet.radius_km));
        close("eccentricity", flyby.eccentricity, 2.0, 1e-15);
        close("turn", flyby.turn_rad, PI / 3.0, 1e-15);
    }
}

#[test]
fn the_most_gain_of_a_stated_pass() {
    // Head-on to Jupiter at its own speed the velocity is turned until it points forward or the probe grazes: worked out by
    // hand. v∞ = V, so the probe stands still in the Sun frame before; turned by δ its speed is 2 V sin(δ/2). T
    let jupiter = Planet::of(Body::Jupiter);
    let v = jupiter.orbit_speed();
    let search = Search {
        encounter: encounter(jupiter, v, 180.0, 1e6),
        goal: Goal::MostGain,
        free: Free::AimPoint,
        in_plane: true,
        farthest_km: 1e8,
    };
    let Ok(Finding::Met(found)) = search.run() else {
        panic!("there is always a most")
    };
    close("grazing", found.periapsis_km, jupiter.radius_km, 1e-12);
    let e = 1.0 + jupiter.radius_km * v * v / jupiter.gm;
    close(
        "gain",
        solve(&found).speed_change_km_s(),
        2.0 * v / e,
        1e-12,
    );
}

#[test]
fn of_two_nearly_equal_peaks_the_higher_is_found() {
    // North against south of an approach out of the plane, and one side of the planet against the other: the lower peak is
    // 0.02 % and 0.3 % below, and a coarse grid of aim points takes it for the higher one.
    let start = Encounter {
        approach_rad: 2.454_797_798_078_844,
        crank_rad: -1.742_424_998_122_486_4,
        aim_rad: -0.46,
        ..encounter(Planet::of(Body::Neptune), 0.563_216_666_152_01, 0.0, 2.3e7)
    };
    let planet = Planet::custom(
        232_007_720.236_675_35,
        205_088.630_561_536,
        17_573_975.758_413,
    )
    .expect("a planet");
    let other = Encounter {
        approach_rad: -1.507_141_619_488_099,
        crank_rad: 0.645_070_774_028_963_9,
        aim_rad: 0.88,
        ..encounter(planet, 0.453_896_916_228_052_6, 0.0, 1.5e7)
    };
    let searches = [
        (start, Goal::MostInclination, 32_164_133.597_41, false),
        (other, Goal::MostLoss, 474_976_680.996, true),
    ];
    for (encounter, goal, farthest_km, in_plane) in searches {
        let search = Search {
            encounter,
            goal,
            free: Free::AimPoint,
            in_plane,
            farthest_km,
        };
        let Ok(Finding::Met(found)) = search.run() else {
            panic!("there is always a most")
        };
        let (got, best) = (of_encounter(goal, &found), brute_force(&search, 48));
        assert!(got >= best * (1.0 - 1e-9), "{got} and {best}: {search:?}");
    }
}
