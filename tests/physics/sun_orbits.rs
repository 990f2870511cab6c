//! The orbits round the Sun before and after: against conservation laws worked out a second way, Hohmann transfers,
//! and the awkward paths (parabola, straight through the Sun, standing still).

use glam::{DVec3, dvec3};
use two_frames::physics::units::{GM_SUN, KM_PER_AU, SECONDS_PER_DAY, SECONDS_PER_YEAR};
use two_frames::physics::{Body, Planet, SunFrame, SunOrbit, Velocity};

use crate::common::{BODIES, Worst, close, encounter, near, printed, relative, solve};

fn orbit(radius_km: f64, v: DVec3) -> SunOrbit {
    SunOrbit::through_planet(radius_km, Velocity::<SunFrame>::new(v))
}

/// Speeds of the planet and of the probe on a Hohmann ellipse between the Earth's orbit and the planet's (vis-viva).
fn hohmann(planet: &Planet) -> (f64, f64) {
    let (earth, there) = (Planet::of(Body::Earth).orbit_km, planet.orbit_km);
    let probe = (2.0 * GM_SUN * earth / (there * (earth + there))).sqrt();
    (planet.orbit_speed(), probe)
}

#[test]
fn a_hohmann_arrival_touches_the_earths_orbit() {
    // Source: own recomputation with numpy: v∞ at the planet, km/s. Times: common textbook values, from memory. M
    let rows = [
        (Body::Mercury, "9.611", "105.5", SECONDS_PER_DAY),
        (Body::Venus, "2.707", "146.1", SECONDS_PER_DAY),
        (Body::Mars, "2.649", "258.9", SECONDS_PER_DAY),
        (Body::Jupiter, "5.643", "2.73", SECONDS_PER_YEAR),
        (Body::Saturn, "5.443", "6.05", SECONDS_PER_YEAR),
        (Body::Uranus, "4.659", "16", SECONDS_PER_YEAR),
        (Body::Neptune, "4.054", "30.6", SECONDS_PER_YEAR),
    ];
    let earth = Planet::of(Body::Earth).orbit_km;
    for (body, v_text, time_text, unit) in rows {
        let planet = Planet::of(body);
        let (planet_speed, probe_speed) = hohmann(&planet);
        let v_infinity = (probe_speed - planet_speed).abs();
        printed(planet.name, v_infinity, v_text, 0.0);
        // Inwards the probe catches the planet up; outwards the planet comes from behind.
        let approach = if probe_speed > planet_speed {
            0.0
        } else {
            180.0
        };
        let before = solve(&encounter(planet, v_infinity, approach, 1e8)).orbit_before;
        let aphelion = before.aphelion_km.expect("a bound orbit");
        // A handful of roundings, magnified by the cancellation of two speeds that are at most 20 times their difference.
        close(
            planet.name,
            before.perihelion_km,
            earth.min(planet.orbit_km),
            1e-13,
        );
        close(planet.name, aphelion, earth.max(planet.orbit_km), 1e-13);
        let half_period = 0.5 * before.period_s.expect("a bound orbit");
        printed(planet.name, half_period / unit, time_text, 0.0);
        // Along the planet's path all the way, but for the sine of 180° in f64, and forward.
        near(
            "inclination",
            before.inclination_rad.expect("an orbit"),
            0.0,
            1e-15,
        );
    }
}

/// Nearest and farthest distance: where the radial speed vanishes, 2E r² + 2μ r − h² = 0, both roots without cancellation.
fn turning_points(radius: f64, v: DVec3) -> (f64, Option<f64>) {
    let h_squared = (DVec3::X * radius).cross(v).length_squared();
    let twice_energy = v.length_squared() - 2.0 * GM_SUN / radius;
    let root = (GM_SUN * GM_SUN + twice_energy * h_squared).max(0.0).sqrt();
    let nearest = h_squared / (GM_SUN + root);
    (
        nearest,
        (twice_energy < 0.0).then(|| (GM_SUN + root) / -twice_energy),
    )
}

#[test]
fn turning_points_period_and_leftover_speed_follow_from_energy_and_momentum() {
    let mut rng = fastrand::Rng::with_seed(12);
    let mut worst = [Worst::default(), Worst::default(), Worst::default()];
    let (mut bound, mut free) = (0, 0);
    for _ in 0..50_000 {
        let planet = Planet::of(BODIES[rng.usize(..8)]);
        let circular = planet.orbit_speed();
        let mut part = || (rng.f64() * 2.0 - 1.0) * 2.0 * circular;
        let v = dvec3(part(), part(), 0.3 * part());
        let place = || format!("{} {v}", planet.name);
        let got = orbit(planet.orbit_km, v);
        let (nearest, farthest) = turning_points(planet.orbit_km, v);
        let twice_energy = v.length_squared() - 2.0 * circular * circular;
        // Near escape the energy is a small difference of large numbers; its error is some 1e-16 of those.
        let lost = 2.0 * circular * circular / twice_energy.abs();
        // Near a circle so are the turning points: the root of the discriminant, e, has an error of 1e-16/e.
        let lost_e = 1.0 + 1.0 / got.eccentricity;
        worst[0].note(relative(got.perihelion_km, nearest) / lost_e, place);
        if let (Some(got_far), Some(far), Some(period)) = (got.aphelion_km, farthest, got.period_s)
        {
            bound += 1;
            worst[1].note(relative(got_far, far) / lost, place);
            // Kepler's third law from the two turning points.
            let a = 0.5 * (nearest + far);
            let third_law = std::f64::consts::TAU * (a * a * a / GM_SUN).sqrt();
            worst[2].note(relative(period, third_law) / lost, place);
            assert!(
                got.is_bound() && got.eccentricity < 1.0 && got.speed_at_infinity_km_s.is_none()
            );
        } else {
            free += 1;
            let left = got.speed_at_infinity_km_s.expect("unbound");
            worst[2].note(relative(left * left, twice_energy) / lost, place);
            assert!(!got.is_bound() && got.eccentricity >= 1.0 && got.aphelion_km.is_none());
        }
    }
    assert!(bound > 5_000 && free > 5_000, "{bound} bound, {free} free");
    let [near_sun, far, rest] = worst;
    near_sun.within("perihelion", 1e-14);
    far.within("aphelion", 1e-14);
    rest.within("period, speed left", 1e-14);
}

#[test]
fn inclination_is_the_tilt_of_the_velocity_at_the_node() {
    let planet = Planet::of(Body::Earth);
    for degrees in [0.0, 1e-6, 1.0, 45.0, 90.0, 135.0, 179.999, 180.0_f64] {
        let tilt = degrees.to_radians();
        for radial in [-7.0, 0.0, 20.0] {
            let v = dvec3(radial, 25.0 * tilt.cos(), 25.0 * tilt.sin());
            let got = orbit(planet.orbit_km, v).inclination_rad.expect("an orbit");
            near("inclination", got, tilt, 1e-15);
        }
    }
}

#[test]
fn the_edge_between_bound_and_free_is_a_parabola() {
    // v² = 2 GM/r in numbers that hold it exactly.
    let radius = 2.0 * GM_SUN / 1024.0;
    let parabola = orbit(radius, dvec3(0.0, 32.0, 0.0));
    assert!(parabola.semi_major_axis_km.is_none() && parabola.period_s.is_none());
    assert!(parabola.aphelion_km.is_none() && !parabola.is_bound());
    near("energy", parabola.energy_km2_s2, 0.0, 0.0);
    near(
        "speed left",
        parabola.speed_at_infinity_km_s.expect("unbound"),
        0.0,
        0.0,
    );
    near("eccentricity", parabola.eccentricity, 1.0, 0.0);
    close("perihelion", parabola.perihelion_km, radius, 1e-15);
    // One unit in the last place either way: what is said stays finite and on the right side of 1.
    for speed in [32.0_f64.next_down(), 32.0_f64.next_up()] {
        let got = orbit(radius, dvec3(0.0, speed, 0.0));
        assert_eq!(got.is_bound(), speed < 32.0, "{got:?}");
        assert_eq!(got.aphelion_km.is_some(), got.is_bound());
        assert!(
            got.aphelion_km.is_none_or(f64::is_finite) && got.period_s.is_none_or(f64::is_finite)
        );
        close("eccentricity", got.eccentricity, 1.0, 1e-15);
    }
}

#[test]
fn a_path_straight_through_the_sun_and_a_probe_standing_still() {
    let radius = 5.2 * KM_PER_AU;
    let escape = (2.0 * GM_SUN / radius).sqrt();
    for radial in [-1.5, -0.5, 0.0, 0.5, 1.5] {
        let got = orbit(radius, DVec3::X * radial * escape);
        near("perihelion", got.perihelion_km, 0.0, 0.0);
        near("eccentricity", got.eccentricity, 1.0, 0.0);
        assert!(got.inclination_rad.is_none(), "{got:?}");
        if radial.abs() < 1.0 {
            // Rises until its speed is used up: r / (1 − (v/escape)²).
            let top = radius / (1.0 - radial * radial);
            close("aphelion", got.aphelion_km.expect("bound"), top, 1e-15);
            close(
                "period",
                got.period_s.expect("bound"),
                std::f64::consts::TAU * (top / 2.0) * (top / 2.0 / GM_SUN).sqrt(),
                1e-15,
            );
        } else {
            let left = escape * (radial * radial - 1.0).sqrt();
            close(
                "speed left",
                got.speed_at_infinity_km_s.expect("free"),
                left,
                1e-15,
            );
        }
    }
}

#[test]
fn a_probe_left_standing_falls_into_the_sun() {
    // v∞ equal to the planet's speed, and coming from straight ahead: round the Sun the probe stands still.
    let planet = Planet::of(Body::Jupiter);
    let flyby = solve(&encounter(
        planet,
        planet.orbit_speed(),
        180.0,
        8.0 * planet.radius_km,
    ));
    // The sine of π in f64 leaves 1e-16 of the planet's speed.
    assert!(
        flyby.sun_velocity_in.speed() < 1e-14,
        "{:?}",
        flyby.sun_velocity_in
    );
    assert!(flyby.orbit_before.perihelion_km < 1e-15);
    close(
        "aphelion",
        flyby.orbit_before.aphelion_km.expect("bound"),
        planet.orbit_km,
        1e-15,
    );
    // It leaves with what it was given.
    close(
        "speed after",
        flyby.sun_velocity_out.speed(),
        flyby.velocity_change.length(),
        1e-14,
    );
}
