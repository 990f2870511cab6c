//! The aim plane's closed forms: against the solver, against rotations by the turn angle, and their symmetries.

use std::f64::consts::PI;

use glam::DVec3;
use two_frames::physics::units::GM_SUN;
use two_frames::physics::{Aimed, Encounter, Flyby, Measure, Side};

use crate::common::{Worst, logarithmic, relative, relative_vector, solve};
use crate::second_route::{Route, any_angle, any_pass, approach};

/// Every number of a solved pass that the aim plane's map can show, beside the map's.
fn pairs(flyby: &Flyby, pass: &Aimed<'_>) -> Vec<(&'static str, f64, f64)> {
    let after = &flyby.orbit_after;
    let mut all = vec![
        (
            "speed change",
            Measure::SpeedChange.of(pass),
            flyby.speed_change_km_s(),
        ),
        (
            "energy change",
            Measure::EnergyChange.of(pass),
            flyby.energy_change_km2_s2,
        ),
        (
            "perihelion",
            Measure::Perihelion.of(pass),
            after.perihelion_km,
        ),
        (
            "aphelion",
            Measure::Aphelion.of(pass),
            after.aphelion_km.unwrap_or(f64::INFINITY),
        ),
        (
            "inclination",
            Measure::Inclination.of(pass),
            after.inclination_rad.expect("not straight through the Sun"),
        ),
        ("energy", pass.energy_km2_s2(), after.energy_km2_s2),
        (
            "speed",
            pass.sun_speed_km_s(),
            flyby.sun_velocity_out.speed(),
        ),
    ];
    let vectors = [
        (pass.sun_velocity_out().km_s, flyby.sun_velocity_out.km_s),
        (pass.velocity_out().km_s, flyby.velocity_out.km_s),
        (pass.velocity_change(), flyby.velocity_change),
        (pass.periapsis_direction(), flyby.periapsis_direction),
    ];
    for (got, want) in vectors {
        all.extend([
            ("x of a vector", got.x, want.x),
            ("y of a vector", got.y, want.y),
            ("z of a vector", got.z, want.z),
        ]);
    }
    all
}

#[test]
fn the_map_has_the_solvers_bits() {
    let mut rng = fastrand::Rng::with_seed(301);
    let (mut turn, mut periapsis) = (Worst::default(), Worst::default());
    for _ in 0..10_000 {
        let mut encounter = any_pass(&mut rng);
        // Below the surface too: the map goes on inside the strike circle.
        encounter.periapsis_km *= logarithmic(&mut rng, 1e-3, 1.0);
        let (flyby, plane) = (solve(&encounter), approach(&encounter));
        let pass = plane.aimed(flyby.aim_point_km);
        assert_eq!(pass.side(), flyby.side, "{encounter:?}");
        for (what, got, want) in pairs(&flyby, &pass) {
            assert_eq!(
                got.to_bits(),
                want.to_bits(),
                "{what}: {got:e} and {want:e} for {encounter:?}"
            );
        }
        // Another route: from the miss instead of the periapsis.
        turn.note(relative(pass.turn_rad(), flyby.turn_rad), || {
            format!("{encounter:?}")
        });
        periapsis.note(
            relative(pass.periapsis_km(), encounter.periapsis_km),
            || format!("{encounter:?}"),
        );
    }
    turn.within("turn from the aim point", 1e-12);
    periapsis.within("periapsis from the aim point", 1e-12);
}

#[test]
fn any_aim_point_solves_to_what_the_map_says() {
    let mut rng = fastrand::Rng::with_seed(302);
    let mut worst: [Worst; 4] = std::array::from_fn(|_| Worst::default());
    for _ in 0..10_000 {
        let start = any_pass(&mut rng);
        let plane = approach(&start);
        let b = plane.semi_major_axis_km * logarithmic(&mut rng, 1e-3, 1e3);
        let (sin, cos) = any_angle(&mut rng).sin_cos();
        let point = [b * cos, b * sin];
        let (pass, flyby) = (plane.aimed(point), solve(&plane.encounter(point)));
        let place = || format!("{point:?} of {start:?}");
        let (v, planet) = (start.v_infinity_km_s, start.planet.orbit_speed());
        let off = flyby.sun_velocity_out.km_s - pass.sun_velocity_out().km_s;
        worst[0].note(off.length() / (v + planet), place);
        let off = flyby.aim_point_km[0] - point[0];
        worst[1].note(
            (off / b).abs() + ((flyby.aim_point_km[1] - point[1]) / b).abs(),
            place,
        );
        worst[2].note(relative(flyby.turn_rad, pass.turn_rad()), place);
        let change = relative_vector(flyby.velocity_change, pass.velocity_change());
        worst[3].note(change, place);
    }
    // The aim point comes back through a square root, an arctangent of up to π and a sine: some ten roundings of 1.1e-16. The
    // velocity after moves with the aim point over a by a factor of at most 2 times 1/2.
    for (worst, what) in worst
        .into_iter()
        .zip(["velocity", "point", "turn", "change"])
    {
        worst.within(what, 2e-15);
    }
}

#[test]
fn the_closed_forms_are_a_rotation_by_the_turn() {
    let mut rng = fastrand::Rng::with_seed(303);
    let mut worst: [Worst; 8] = std::array::from_fn(|_| Worst::default());
    let mut bound = 0;
    for _ in 0..10_000 {
        let start = any_pass(&mut rng);
        let plane = approach(&start);
        let b = plane.semi_major_axis_km * logarithmic(&mut rng, 1e-6, 1e4);
        let aim = any_angle(&mut rng);
        let pass = plane.aimed([b * aim.cos(), b * aim.sin()]);
        let other = Route::of(&start, b, aim);
        let place = || format!("b {b:e}, aim {aim}, {start:?}");
        let planet = start.planet.orbit_speed();
        let scale = start.v_infinity_km_s + planet;
        let orbit = start.planet.orbit_km;
        let square = (scale / planet).powi(2);
        let path = pass.sun_path();
        let eccentricity = other.eccentricity().length();
        let after = pass.sun_velocity_out().km_s;
        let energy = pass.energy_change_km2_s2();
        let kinetic = 0.5 * (other.after.length_squared() - other.before.length_squared());
        let across = other.after.y.hypot(other.after.z) / scale;
        let errors = [
            (after - other.after).length() / scale,
            (pass.periapsis_direction() - other.periapsis).length(),
            relative(pass.turn_rad(), other.turn),
            (energy - kinetic).abs() / scale.powi(2),
            (pass.speed_change_km_s() - other.speed_change()).abs() / scale,
            // The eccentricity near 0 is the root of a rounding's worth, so the distances inherit 1e-16/e.
            (path.perihelion_km() - other.perihelion()).abs()
                / (orbit * square * (1.0 + 1.0 / eccentricity)),
            (path.inverse_aphelion() - other.inverse_aphelion()).abs() * orbit
                / (square * (1.0 + 1.0 / eccentricity)),
            // A tilt is the ratio of two speeds.
            (pass.inclination_rad() - other.inclination()).abs() * across,
        ];
        for (worst, error) in worst.iter_mut().zip(errors) {
            worst.note(error, place);
        }
        assert_eq!(path.is_bound(), path.aphelion_km().is_some());
        if let Some(far) = path.aphelion_km() {
            bound += 1;
            // Energy: 2a = q + Q.
            let sum = -2.0 * GM_SUN / other.twice_energy();
            let lost = square * orbit / sum.abs() * (sum / orbit).powi(2);
            let off = (far + path.perihelion_km() - sum).abs() / orbit;
            assert!(off <= 1e-13 * (1.0 + lost), "{off:e} at {}", place());
        }
    }
    assert!((2_000..9_000).contains(&bound), "{bound} bound");
    // Some ten roundings of numbers as large as the scale, and the test's own rotation as many.
    for (i, worst) in worst.into_iter().enumerate() {
        worst.within(&format!("closed form {i}"), 5e-15);
    }
}

#[test]
fn north_and_south_mirror_each_other_for_an_approach_in_the_plane() {
    let mut rng = fastrand::Rng::with_seed(304);
    for _ in 0..10_000 {
        let start = Encounter {
            crank_rad: 0.0,
            ..any_pass(&mut rng)
        };
        let plane = approach(&start);
        let [t, r] = plane.aim_point_km(start.periapsis_km, start.aim_rad);
        let (south, north) = (plane.aimed([t, r]), plane.aimed([t, -r]));
        for measure in [
            Measure::SpeedChange,
            Measure::EnergyChange,
            Measure::VelocityChange,
            Measure::Aphelion,
            Measure::Perihelion,
            Measure::Inclination,
            Measure::Turn,
        ] {
            // R is exactly south and T exactly level, so only a sign differs: the same bits.
            let (got, want) = (measure.of(&south), measure.of(&north));
            assert_eq!(got.to_bits(), want.to_bits(), "{measure:?} for {start:?}");
        }
        let (a, b) = (south.sun_velocity_out().km_s, north.sun_velocity_out().km_s);
        assert_eq!((a.x, a.y, a.z), (b.x, b.y, -b.z), "{start:?}");
        // Aimed south (R) it is bent north.
        assert_eq!(a.z > 0.0, r > 0.0, "{start:?}");
        // Solved from the angles, the same but for the sine's rounding.
        let mirrored = Encounter {
            aim_rad: -start.aim_rad,
            ..start
        };
        let (one, other) = (solve(&start), solve(&mirrored));
        assert_eq!(
            one.sun_velocity_out.speed().to_bits(),
            other.sun_velocity_out.speed().to_bits(),
            "{start:?}"
        );
    }
}

#[test]
fn speed_is_gained_exactly_where_periapsis_lies_behind_the_planet() {
    let mut rng = fastrand::Rng::with_seed(305);
    let mut sides = [0; 2];
    for _ in 0..10_000 {
        let start = any_pass(&mut rng);
        let plane = approach(&start);
        let b = plane.semi_major_axis_km * logarithmic(&mut rng, 1e-3, 1e3);
        let aim = any_angle(&mut rng);
        let pass = plane.aimed([b * aim.cos(), b * aim.sin()]);
        let behind = Route::of(&start, b, aim).periapsis.dot(DVec3::Y);
        // Closer to the flank than this the two routes' roundings decide.
        if behind.abs() < 1e-11 {
            continue;
        }
        let gains = behind < 0.0;
        let side = if gains { Side::Behind } else { Side::Ahead };
        assert_eq!(pass.side(), side, "{start:?}");
        for change in [pass.speed_change_km_s(), pass.energy_change_km2_s2()] {
            assert!(
                change != 0.0 && (change > 0.0) == gains,
                "{change} {start:?}"
            );
        }
        assert_eq!(pass.velocity_change().y > 0.0, gains, "{start:?}");
        sides[usize::from(gains)] += 1;
    }
    assert!(sides.into_iter().all(|count| count > 3_000), "{sides:?}");
}

#[test]
fn straight_at_the_centre_a_probe_turns_back() {
    let mut rng = fastrand::Rng::with_seed(306);
    for _ in 0..1_000 {
        let start = any_pass(&mut rng);
        let plane = approach(&start);
        let pass = plane.aimed([0.0, 0.0]);
        assert_eq!(pass.velocity_out().km_s, -plane.velocity_in().km_s);
        assert_eq!(
            (
                pass.turn_rad(),
                pass.periapsis_km(),
                pass.velocity_change_km_s()
            ),
            (PI, 0.0, 2.0 * start.v_infinity_km_s)
        );
        let off = pass.periapsis_direction() - plane.aim_plane.s;
        assert!(off.length() < 4e-16, "two roundings: {off} for {start:?}");
        for measure in [
            Measure::SpeedChange,
            Measure::Perihelion,
            Measure::Inclination,
        ] {
            assert!(measure.of(&pass).is_finite(), "{measure:?} for {start:?}");
        }
    }
}
