//! The whole set of aim points that meet a goal.

use std::f64::consts::PI;

use fastrand::Rng;
use two_frames::physics::units::GM_SUN;
use two_frames::physics::{
    Approach, Body, Encounter, Finding, Free, Goal, Planet, Search, SpeedCircle,
};

use crate::aiming::{drawn, miss, search};
use crate::common::{Worst, close, encounter, near, relative, solve};
use crate::second_route::approach;

/// A pass that plainly changes something, and what it leaves the probe with.
pub(crate) fn telling(rng: &mut Rng) -> Encounter {
    loop {
        let pass = drawn(rng);
        if solve(&pass).turn_rad > 0.01 {
            return pass;
        }
    }
}

/// The speed round the Sun afterwards that a goal asks for, km/s.
fn wanted_speed(goal: Goal, plane: &Approach) -> f64 {
    match goal {
        Goal::SpeedChange(change) => plane.sun_velocity_in().speed() + change,
        Goal::Leave(left) => left.hypot((2.0 * GM_SUN / plane.planet.orbit_km).sqrt()),
        _ => unreachable!("not a speed"),
    }
}

/// The part along the planet's motion that the outgoing direction has at a speed round the Sun: the law of cosines. T
fn forward_part(plane: &Approach, speed: f64) -> f64 {
    let (v, planet) = (plane.v_infinity_km_s, plane.planet.orbit_speed());
    (speed * speed - planet * planet - v * v) / (2.0 * planet * v)
}

#[test]
fn every_aim_point_of_a_goal_meets_it() {
    let mut rng = Rng::with_seed(341);
    let (mut off, mut points) = (Worst::default(), 0);
    for i in 0..400 {
        let real = telling(&mut rng);
        let flyby = solve(&real);
        let goal = match i % 4 {
            0 => Goal::SpeedChange(flyby.speed_change_km_s()),
            1 => Goal::Turn(flyby.turn_rad),
            2 => Goal::Perihelion(flyby.orbit_after.perihelion_km),
            _ => match flyby.orbit_after.aphelion_km {
                Some(km) => Goal::Aphelion(km),
                None => Goal::Leave(flyby.orbit_after.speed_at_infinity_km_s.unwrap_or(0.0)),
            },
        };
        let search = search(real, goal, Free::AimPoint);
        let (plane, all) = (approach(&real), search.aim_points_km(48));
        points += all.len();
        let farthest = plane.impact_parameter_km(search.farthest_km);
        for [t, r] in all {
            let b = t.hypot(r);
            assert!(b >= plane.strike_radius_km() * (1.0 - 1e-11) && b <= farthest * (1.0 + 1e-11));
            off.note(miss(goal, &solve(&plane.encounter([t, r]))), || {
                format!("{t}, {r} of {search:?}")
            });
        }
        // The pass that it was drawn from is on the set: its own ray meets it.
        let along = Search {
            free: Free::Periapsis,
            ..search
        };
        assert!(matches!(along.run(), Ok(Finding::Met(_))), "{search:?}");
    }
    assert!(points > 4_000, "{points} points");
    off.within("aim points off the goal", 1e-9);
}

#[test]
fn aim_points_of_one_speed_lie_on_its_circle() {
    let mut rng = Rng::with_seed(342);
    let (mut off, mut best, mut circles) = (Worst::default(), Worst::default(), 0);
    for _ in 0..2_000 {
        let real = telling(&mut rng);
        let flyby = solve(&real);
        let plane = approach(&real);
        let goal = Goal::SpeedChange(flyby.speed_change_km_s());
        let part = forward_part(&plane, wanted_speed(goal, &plane));
        let Some(circle) = SpeedCircle::new(&plane, part) else {
            // Straight forward or back, but for a rounding.
            assert!(part.abs() < 1.0 + 1e-12, "{part}");
            continue;
        };
        let Some(([t0, r0], radius)) = circle.centre_and_radius_km() else {
            panic!("a change of speed is no line: {real:?}")
        };
        // A nearly straight piece of a huge circle cannot be told from a line.
        if radius > 1e3 * flyby.impact_parameter_km {
            continue;
        }
        circles += 1;
        let mut points = search(real, goal, Free::AimPoint).aim_points_km(16);
        points.push(flyby.aim_point_km);
        let size = radius + t0.hypot(r0);
        for [t, r] in points {
            let error = ((t - t0).hypot(r - r0) - radius).abs() / size;
            off.note(
                error * f64::min(1.0, plane.semi_major_axis_km / size),
                || format!("{t}, {r} of {real:?}"),
            );
        }
        // The farthest point of a circle lies beyond its centre.
        let Some((aim, b)) = circle.best() else {
            panic!("{real:?} is not along the planet's motion")
        };
        best.note(relative(b, size), || format!("{real:?}"));
        let [on, _] = circle.on_ray([aim.cos(), aim.sin()]);
        // Where a ray through the centre leaves a circle it does so squarely.
        best.note(relative(on.unwrap_or(f64::NAN), b), || format!("{real:?}"));
    }
    assert!(circles > 1_000, "{circles} circles");
    off.within("off the circle", 1e-12);
    best.within("farthest point", 1e-12);
}

#[test]
fn in_the_plane_the_aim_points_of_one_speed_solve_a_quadratic() {
    // In the orbit plane S' = cos δ S ∓ sin δ T with δ = 2 atan(1/u): S'·y = c is a quadratic in u. From the angles: the
    // outgoing direction is at ±acos(c) from the motion, so the turn is the approach angle's distance from that. T
    let mut rng = Rng::with_seed(343);
    let mut checked = 0;
    for _ in 0..3_000 {
        let real = Encounter {
            crank_rad: 0.0,
            aim_rad: if rng.bool() { 0.0 } else { PI },
            ..telling(&mut rng)
        };
        let plane = approach(&real);
        let change = solve(&real).speed_change_km_s();
        let part = forward_part(&plane, plane.sun_velocity_in().speed() + change);
        let Some(circle) = SpeedCircle::new(&plane, part) else {
            continue;
        };
        let out = part.clamp(-1.0, 1.0).acos();
        // Ill-conditioned at the ends of the arccosine.
        if part.abs() > 0.999 {
            continue;
        }
        for outgoing in [out, -out] {
            // Bent outward (towards larger approach angles) it was aimed at the side that lies inward, −T.
            let bend = (outgoing - real.approach_rad).rem_euclid(2.0 * PI);
            let (aim, turn) = if bend < PI {
                (-1.0, bend)
            } else {
                (1.0, 2.0 * PI - bend)
            };
            let b = plane.semi_major_axis_km / (0.5 * turn).tan();
            if !(0.01..=3.1).contains(&turn) {
                continue;
            }
            checked += 1;
            let roots = circle.on_ray([aim, 0.0]);
            let nearest = roots
                .into_iter()
                .flatten()
                .map(|root| relative(root, b))
                .fold(f64::INFINITY, f64::min);
            assert!(nearest < 1e-9, "{roots:?} without {b}: {real:?}");
            assert!(roots[1] <= roots[0], "the farther first: {roots:?}");
        }
    }
    assert!(checked > 2_000, "{checked} checked");
}

#[test]
fn along_the_planets_motion_every_direction_gives_the_same_speed() {
    // Head-on: S' makes the turn angle with −y wherever it is aimed. T
    let start = encounter(Planet::of(Body::Saturn), 8.0, 180.0, 3e5);
    let flyby = solve(&start);
    let goal = Goal::SpeedChange(flyby.speed_change_km_s());
    let search = search(
        Encounter {
            aim_rad: 1.0,
            periapsis_km: 1e5,
            ..start
        },
        goal,
        Free::AimPoint,
    );
    let Ok(Finding::Met(found)) = search.run() else {
        panic!("it does it itself")
    };
    close("closest distance", found.periapsis_km, 3e5, 1e-9);
    near("aim angle", found.aim_rad, 1.0, 1e-9);
}
