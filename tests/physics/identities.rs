//! Identities that hold for every pass, whatever the numbers: theorems, so no source. T

use glam::{DVec3, dvec3};
use two_frames::physics::units::GM_SUN;
use two_frames::physics::{Encounter, Flyby, Planet, Side, SunOrbit};

use crate::common::{
    BODIES, Worst, close, encounter, near, printed, random_encounter, relative, solve,
};

/// Random passes, a third each: any; in the orbit plane; along the axes, where sides tie.
fn passes() -> impl Iterator<Item = Flyby> {
    let mut rng = fastrand::Rng::with_seed(35);
    (0..10_000).map(move |_| {
        let any = random_encounter(&mut rng);
        let quarter = |angle: f64| {
            (angle / std::f64::consts::FRAC_PI_2).round() * std::f64::consts::FRAC_PI_2
        };
        let chosen = match rng.u8(..3) {
            0 => any,
            1 => Encounter {
                crank_rad: 0.0,
                aim_rad: 0.0,
                ..any
            },
            _ => Encounter {
                approach_rad: quarter(any.approach_rad),
                crank_rad: quarter(any.crank_rad),
                aim_rad: quarter(any.aim_rad),
                ..any
            },
        };
        solve(&chosen)
    })
}

/// The largest energy per unit mass that a pass has to do with, as the scale of its rounding errors.
fn energy_scale(flyby: &Flyby) -> f64 {
    let top = flyby
        .sun_velocity_in
        .speed()
        .max(flyby.sun_velocity_out.speed());
    let v = flyby
        .encounter
        .v_infinity_km_s
        .max(flyby.encounter.planet.orbit_speed());
    top.max(v).powi(2)
}

#[test]
fn energy_gained_is_the_planets_velocity_times_the_change() {
    let mut worst = [Worst::default(), Worst::default(), Worst::default()];
    for flyby in passes() {
        let (before, after) = (flyby.sun_velocity_in.km_s, flyby.sun_velocity_out.km_s);
        let kinetic = 0.5 * (after.length_squared() - before.length_squared());
        // In the Sun frame Δ(v²/2) = V·Δv + Δ(v∞²)/2, and the last term is 0.
        let work = flyby.motion().velocity().km_s.dot(after - before);
        let orbit = flyby.orbit_after.energy_km2_s2 - flyby.orbit_before.energy_km2_s2;
        let sum = flyby.sun_velocity_in.speed() + flyby.sun_velocity_out.speed();
        let speeds = 0.5 * flyby.speed_change_km_s() * sum;
        for (worst, other) in worst.iter_mut().zip([kinetic, work, orbit]) {
            let error = (flyby.energy_change_km2_s2 - other) / energy_scale(&flyby);
            worst.note(error.abs(), || format!("{:?}", flyby.encounter));
        }
        near(
            "energy from the speeds",
            speeds,
            flyby.energy_change_km2_s2,
            1e-13 * energy_scale(&flyby),
        );
    }
    // A few roundings of numbers as large as the scale.
    for worst in worst {
        worst.within("energy change, share of the largest energy", 1e-14);
    }
}

/// Tisserand's parameter R/a + 2 √(a(1 − e²)/R) cos i, from the core's orbit. a(1 − e²) = q(1 + e) keeps its digits.
fn tisserand(orbit: &SunOrbit, radius: f64) -> f64 {
    let inverse = orbit.semi_major_axis_km.map_or(0.0, |a| radius / a);
    let parameter = orbit.perihelion_km * (1.0 + orbit.eccentricity) / radius;
    inverse + 2.0 * parameter.sqrt() * orbit.inclination_rad.map_or(0.0, f64::cos)
}

#[test]
fn tisserand_parameter_is_the_same_after_as_before() {
    let (mut worst, mut tilted) = (Worst::default(), 0);
    for flyby in passes() {
        let planet = flyby.encounter.planet;
        let ratio = flyby.encounter.v_infinity_km_s / planet.orbit_speed();
        let want = 3.0 - ratio * ratio;
        let (before, after) = (
            tisserand(&flyby.orbit_before, planet.orbit_km),
            tisserand(&flyby.orbit_after, planet.orbit_km),
        );
        // The terms are as large as the squared speeds in units of the planet's, so that is what the roundings go with.
        let scale = 3.0 + ratio * ratio;
        for error in [before - want, after - want, after - before] {
            worst.note((error / scale).abs(), || format!("{:?}", flyby.encounter));
        }
        tilted += u32::from(flyby.orbit_after.inclination_rad.is_some_and(|i| i > 0.01));
    }
    worst.within("Tisserand parameter", 1e-13);
    assert!(tilted > 1_000, "only {tilted} passes left the orbit plane");
}

#[test]
fn tisserand_parameter_of_a_stated_example() {
    // Source: own recomputation with numpy: V 13.06, v∞ 7 km/s at 20, 70 and 130°.
    let planet = Planet::custom(1.267e8, 71_492.0, GM_SUN / 13.06 / 13.06).expect("a planet");
    for alpha in [20.0, 70.0, 130.0] {
        let flyby = solve(&encounter(planet, 7.0, alpha, 1e6));
        let before = tisserand(&flyby.orbit_before, planet.orbit_km);
        let after = tisserand(&flyby.orbit_after, planet.orbit_km);
        printed("before", before, "2.712717133", 0.0);
        printed("after", after, "2.712717133", 0.0);
    }
}

#[test]
fn change_points_from_periapsis_to_the_centre_and_gains_behind() {
    let (mut line, mut size) = (Worst::default(), Worst::default());
    let mut sides = [0; 3];
    for flyby in passes() {
        let place = format!("{:?}", flyby.encounter);
        let v_infinity = flyby.encounter.v_infinity_km_s;
        let change = flyby.sun_velocity_out.km_s - flyby.sun_velocity_in.km_s;
        let (to_periapsis, _) = flyby.seen_from_planet(0.0);
        let p = to_periapsis.km.normalize();
        // Opposite to p: nothing across, and the rest is −|Δv|. The scale of roundings is that of the velocities.
        let scale = v_infinity + flyby.encounter.planet.orbit_speed();
        line.note((change + p * change.length()).length() / scale, || {
            place.clone()
        });
        size.note(
            relative(
                flyby.velocity_change.length(),
                2.0 * v_infinity / flyby.eccentricity,
            ),
            || place.clone(),
        );
        let behind = p.y < 0.0;
        let side = match flyby.side {
            Side::Behind => 0,
            Side::Ahead => 1,
            Side::Neither => 2,
        };
        sides[side] += 1;
        // 1e-12 is the core's own threshold for "neither".
        match flyby.side {
            Side::Neither => assert!(p.y.abs() < 2e-12, "{place}"),
            Side::Behind => assert!(behind && flyby.energy_change_km2_s2 > 0.0, "{place}"),
            Side::Ahead => assert!(!behind && flyby.energy_change_km2_s2 < 0.0, "{place}"),
        }
        assert_eq!(
            flyby.speed_change_km_s() > 0.0,
            flyby.energy_change_km2_s2 > 0.0,
            "{place}"
        );
    }
    line.within("change off the line from periapsis to the centre", 1e-14);
    size.within("size of the change against 2 v∞/e", 1e-14);
    assert!(
        sides.into_iter().all(|count| count > 100),
        "all sides met: {sides:?}"
    );
}

#[test]
fn north_and_south_mirror_each_other() {
    let mirror = dvec3(1.0, 1.0, -1.0);
    let mut rng = fastrand::Rng::with_seed(8);
    let mut worst = Worst::default();
    for _ in 0..5_000 {
        let north = random_encounter(&mut rng);
        // South of the plane the crank angle and the aim angle change sign: T stays in the plane, R flips.
        let south = Encounter {
            crank_rad: -north.crank_rad,
            aim_rad: -north.aim_rad,
            ..north
        };
        let (one, other) = (solve(&north), solve(&south));
        let t = 3.0 * north.periapsis_km / north.v_infinity_km_s;
        let pairs: [(DVec3, DVec3); 4] = [
            (one.velocity_in.km_s, other.velocity_in.km_s),
            (one.velocity_out.km_s, other.velocity_out.km_s),
            (one.periapsis_direction, other.periapsis_direction),
            (one.seen_from_sun(t).0.km, other.seen_from_sun(t).0.km),
        ];
        for (a, b) in pairs {
            // Sines and cosines are exactly odd and even, so not a bit may differ; 1e-15 keeps the test from saying more.
            worst.note((a * mirror - b).length() / b.length(), || {
                format!("{north:?}")
            });
        }
        let speeds = (one.speed_change_km_s(), other.speed_change_km_s());
        near("gain", speeds.0, speeds.1, 1e-15 * north.v_infinity_km_s);
    }
    worst.within("south against the mirror image of north", 1e-15);
}

#[test]
fn the_largest_change_at_a_periapsis_is_its_circular_speed() {
    // |Δv| = 2 v∞/(1 + r v∞²/μ) is largest at v∞ = √(μ/r), where e = 2 and the turn is 60°.
    // Source: own recomputation with numpy of √(GM/R) for a pass that grazes the equator.
    let speeds = [
        "3.0046", "7.3266", "7.9054", "3.5512", "42.0956", "25.0874", "15.0562", "16.6135",
    ];
    for (body, text) in BODIES.into_iter().zip(speeds) {
        let planet = Planet::of(body);
        let change = |v: f64| {
            solve(&encounter(planet, v, 77.0, planet.radius_km))
                .velocity_change
                .length()
        };
        let best = (1..=100_000)
            .map(|i| change(f64::from(i) * 1e-3))
            .fold(0.0, f64::max);
        printed(planet.name, best, text, 0.0);
        // The scan's steps of 0.001 km/s miss the top by 0.0005; the top is flat: (0.0005/3)² of it.
        let circular = (planet.gm / planet.radius_km).sqrt();
        close(planet.name, best, circular, 3e-8);
        let top = solve(&encounter(planet, circular, 77.0, planet.radius_km));
        close("e at the top", top.eccentricity, 2.0, 1e-15);
        close(
            "turn at the top",
            top.turn_rad,
            std::f64::consts::FRAC_PI_3,
            1e-15,
        );
    }
}

#[test]
fn frames_differ_by_the_planets_motion_alone() {
    for flyby in passes().take(2_000) {
        let speed = (GM_SUN / flyby.encounter.planet.orbit_km).sqrt();
        for t in [-3.0e6, -10.0, 0.0, 1.0e3, 8.64e7] {
            let (near_planet, near_sun) = (flyby.seen_from_planet(t), flyby.seen_from_sun(t));
            let (r, v) = (
                near_sun.0.km - near_planet.0.km,
                near_sun.1.km_s - near_planet.1.km_s,
            );
            // One rounding of a sum each.
            let slack = 1e-15 * (near_sun.0.km.length() + near_planet.0.km.length());
            assert!(
                (r - DVec3::Y * speed * t).length() <= slack,
                "{:?}",
                flyby.encounter
            );
            let slack = 1e-15 * (near_sun.1.speed() + near_planet.1.speed());
            assert!(
                (v - DVec3::Y * speed).length() <= slack,
                "{:?}",
                flyby.encounter
            );
        }
    }
}
