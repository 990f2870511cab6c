//! Aim point to closest distance and aim angle, and back; and what strikes. T

use two_frames::physics::{Encounter, Flyby, FlybyError};

use crate::common::{Worst, close, logarithmic, near, relative, solve};
use crate::second_route::{any_angle, any_pass, approach};

/// Sizes of an aim point, in units of a: from a trillionth to a trillion.
fn any_ratio(rng: &mut fastrand::Rng) -> f64 {
    logarithmic(rng, 1e-12, 1e12)
}

#[test]
fn aim_point_and_closest_distance_follow_from_one_another() {
    let mut rng = fastrand::Rng::with_seed(311);
    let mut worst: [Worst; 6] = std::array::from_fn(|_| Worst::default());
    for _ in 0..20_000 {
        let start = any_pass(&mut rng);
        let plane = approach(&start);
        let a = plane.semi_major_axis_km;
        let (b, aim) = (a * any_ratio(&mut rng), any_angle(&mut rng));
        let point = [b * aim.cos(), b * aim.sin()];
        let place = || format!("b/a {:e}, aim {aim}, {start:?}", b / a);

        let periapsis = plane.periapsis_km(b);
        worst[0].note(relative(plane.impact_parameter_km(periapsis), b), place);
        // b² = r² + 2 a r, the theorem itself.
        let squared = periapsis * periapsis + 2.0 * a * periapsis;
        worst[1].note(relative(squared.sqrt(), b), place);
        worst[2].note(
            relative(plane.aimed(point).periapsis_km(), periapsis),
            place,
        );
        let turn = 2.0 * a.atan2(b);
        worst[3].note(relative(plane.aimed(point).turn_rad(), turn), place);

        let encounter = plane.encounter(point);
        worst[4].note((encounter.aim_rad - aim).abs(), place);
        let back = plane.aim_point_km(encounter.periapsis_km, encounter.aim_rad);
        let off = (back[0] - point[0]).hypot(back[1] - point[1]);
        worst[5].note(off / b, place);
    }
    // A few roundings of 1.1e-16 each; an angle of up to π has those of numbers up to 4.
    for (i, worst) in worst.into_iter().enumerate() {
        worst.within(&format!("round trip {i}"), 2e-15);
    }
}

#[test]
fn closest_distance_and_angle_survive_the_aim_point() {
    let mut rng = fastrand::Rng::with_seed(312);
    let (mut size, mut angle) = (Worst::default(), Worst::default());
    for _ in 0..20_000 {
        let mut start = any_pass(&mut rng);
        let plane = approach(&start);
        start.periapsis_km = plane.semi_major_axis_km * logarithmic(&mut rng, 1e-24, 1e12);
        let point = plane.aim_point_km(start.periapsis_km, start.aim_rad);
        let back = plane.encounter(point);
        size.note(relative(back.periapsis_km, start.periapsis_km), || {
            format!("{start:?}")
        });
        angle.note((back.aim_rad - start.aim_rad).abs(), || {
            format!("{start:?}")
        });
        assert_eq!(
            Encounter {
                periapsis_km: start.periapsis_km,
                aim_rad: start.aim_rad,
                ..back
            },
            start,
            "all else stays"
        );
    }
    // Near the axis r goes with b², so b's roundings count twice.
    size.within("closest distance there and back", 2e-15);
    angle.within("aim angle there and back", 1e-15);
}

#[test]
fn straight_at_the_centre_there_is_a_strike_and_no_flyby() {
    let mut rng = fastrand::Rng::with_seed(313);
    for _ in 0..1_000 {
        let start = any_pass(&mut rng);
        let plane = approach(&start);
        assert_eq!(plane.periapsis_km(0.0).to_bits(), 0);
        for zero in [[0.0, 0.0], [-0.0, 0.0], [0.0, -0.0]] {
            let encounter = plane.encounter(zero);
            assert_eq!(encounter.periapsis_km.to_bits(), 0);
            // No hyperbola goes through the centre: refused in words. The map counts it as a strike all the same.
            assert!(matches!(
                Flyby::solve(&encounter),
                Err(FlybyError::NotPositive {
                    what: "periapsis",
                    value: 0.0,
                    ..
                })
            ));
        }
        assert!(plane.strike_radius_km() > 0.0);
        // The nearest aim that has a hyperbola strikes.
        let tiny = plane.encounter([1e-6 * plane.strike_radius_km(), 0.0]);
        assert!(
            tiny.periapsis_km > 0.0 && solve(&tiny).strikes(),
            "{tiny:?}"
        );
    }
}

#[test]
fn the_strike_radius_divides_passes_from_strikes() {
    let mut rng = fastrand::Rng::with_seed(314);
    for _ in 0..10_000 {
        let start = any_pass(&mut rng);
        let plane = approach(&start);
        let (strike, radius) = (plane.strike_radius_km(), start.planet.radius_km);
        close("grazing", plane.periapsis_km(strike), radius, 1e-15);
        // v∞ b = r v at periapsis (angular momentum) and v² = v∞² + 2μ/r (energy).
        let v = start.v_infinity_km_s;
        let fastest = v.hypot(start.planet.escape_speed(radius));
        close("momentum", v * strike, radius * fastest, 2e-15);
        let (sin, cos) = start.aim_rad.sin_cos();
        let at = |b: f64| solve(&plane.encounter([b * cos, b * sin])).strikes();
        // Four roundings on the way to the closest distance.
        assert!(!at(strike * (1.0 + 2e-15)), "just outside: {start:?}");
        assert!(at(strike * (1.0 - 2e-15)), "just inside: {start:?}");
    }
}

#[test]
fn the_axes_of_the_aim_plane_carry_the_aim_point() {
    let mut rng = fastrand::Rng::with_seed(315);
    for _ in 0..1_000 {
        let start = any_pass(&mut rng);
        let plane = approach(&start);
        let flyby = solve(&start);
        let [t, r] = flyby.aim_point_km;
        // The incoming asymptote passes the centre at B: far out, the path's offset across S is the aim point. T
        let time = flyby.time_at_distance(1e9 * (plane.semi_major_axis_km + start.periapsis_km));
        let (far, _) = flyby.seen_from_planet(-time.expect("far out"));
        let b = flyby.impact_parameter_km;
        // The path closes in on its asymptote as a/distance, and a large distance times 1e-16 is lost.
        let lost = b * 1e-5 + far.km.length() * 1e-14;
        near("B·T", far.km.dot(plane.aim_plane.t), t, lost);
        near("B·R", far.km.dot(plane.aim_plane.r), r, lost);
    }
}
