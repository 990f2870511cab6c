//! Facts that everybody in the trade knows and nobody cites. Source: common practice, no source.

use two_frames::physics::units::DEGREES_PER_RADIAN;
use two_frames::physics::{Body, Planet};

use crate::common::{Worst, angle_between, close, encounter, random_encounter, relative, solve};

#[test]
fn a_probe_leaves_a_planet_as_fast_as_it_came() {
    // Source: common practice, no source. Speeds from positions and velocities on the path itself, at equal distances before
    // and after; 1e-14 leaves room for the roundings of a velocity's three parts.
    let flyby = solve(&encounter(
        Planet::of(Body::Jupiter),
        9.0,
        129.0,
        8.0 * 71_492.0,
    ));
    let mut worst = Worst::default();
    for radii in [8.0, 9.0, 20.0, 100.0, 1e4, 1e8] {
        let t = flyby
            .time_at_distance(radii * 71_492.0)
            .expect("outside periapsis");
        let (before, after) = (flyby.seen_from_planet(-t).1, flyby.seen_from_planet(t).1);
        worst.note(relative(after.speed(), before.speed()), || {
            format!("{radii} radii")
        });
    }
    worst.within("speed out against speed in", 1e-14);
    // Round the Sun it does not: the same pass gains km/s.
    assert!(flyby.speed_change_km_s() > 5.0);
}

#[test]
fn far_away_the_path_is_its_asymptote() {
    // Source: common practice, no source. At a distance of 1e10 a the speed exceeds v∞ by a/r = 1e-10 of it, and the
    // direction is off by about as much.
    let flyby = solve(&encounter(
        Planet::of(Body::Jupiter),
        9.0,
        129.0,
        8.0 * 71_492.0,
    ));
    let t = flyby
        .time_at_distance(1e10 * flyby.semi_major_axis_km)
        .expect("outside periapsis");
    for (time, want) in [(-t, flyby.velocity_in), (t, flyby.velocity_out)] {
        let (_, got) = flyby.seen_from_planet(time);
        assert!(
            (got.km_s - want.km_s).length() < 3e-10 * want.speed(),
            "{got:?} against {want:?}"
        );
    }
}

#[test]
fn a_pass_can_bend_the_path_by_a_right_angle() {
    // Source: common practice, no source. e = √2 bends by exactly 90°; at 9 km/s Jupiter does that from 9 radii, well clear
    // of its surface.
    let jupiter = Planet::of(Body::Jupiter);
    let periapsis = jupiter.gm / 81.0 * (2_f64.sqrt() - 1.0);
    let flyby = solve(&encounter(jupiter, 9.0, 129.0, periapsis));
    assert!(periapsis > 9.0 * jupiter.radius_km && !flyby.strikes());
    close("turn", flyby.turn_rad * DEGREES_PER_RADIAN, 90.0, 1e-14);
    let bend = angle_between(flyby.velocity_in.km_s, flyby.velocity_out.km_s);
    close("bend", bend * DEGREES_PER_RADIAN, 90.0, 1e-14);
}

#[test]
fn the_planet_hardly_notices() {
    // Source: common practice, no source; the mass of Jupiter, 1.898e27 kg, from memory. M
    let flyby = solve(&encounter(
        Planet::of(Body::Jupiter),
        9.0,
        129.0,
        8.0 * 71_492.0,
    ));
    let probe_kg = 480.0;
    let planet = flyby.planet_velocity_change(probe_kg);
    // Momentum: what the probe gains the planet loses. Mass and G are known to 1e-4 here.
    let momentum = planet * 1.898e27 + flyby.velocity_change * probe_kg;
    assert!(
        momentum.length() < 3e-4 * (flyby.velocity_change * probe_kg).length(),
        "{momentum}"
    );
    // Computed and bounded: 14 km/s · 480 kg / 1.9e27 kg = 3.5e-24 km/s, half a millimetre in the age of the
    // solar system.
    let metres_in_an_age = planet.length() * 1000.0 * 4.6e9 * 365.25 * 86_400.0;
    assert!(
        planet.length() < 1e-23 && metres_in_an_age < 1e-3,
        "{metres_in_an_age} m"
    );
}

#[test]
fn no_pass_gains_more_than_the_frames_allow() {
    // Source: common practice, no source: round the Sun the speed stays between |V − v∞| and V + v∞, and no pass changes it
    // by more than 2 v∞ or by more than twice the planet's speed. A share of 1e-14 for rounding.
    let mut rng = fastrand::Rng::with_seed(2);
    for _ in 0..20_000 {
        let encounter = random_encounter(&mut rng);
        let flyby = solve(&encounter);
        let (planet, v) = (encounter.planet.orbit_speed(), encounter.v_infinity_km_s);
        let slack = 1e-14 * (planet + v);
        let after = flyby.sun_velocity_out.speed();
        assert!(
            after >= (planet - v).abs() - slack && after <= planet + v + slack,
            "{flyby:?}"
        );
        let change = flyby.speed_change_km_s().abs();
        assert!(change <= 2.0 * v.min(planet) + slack, "{flyby:?}");
    }
}
