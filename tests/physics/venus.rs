//! The Venus flyby of a textbook, on the dark side and on the sunlit one, with the ellipse that leads there.
//!
//! Source for all of it, unless stated: Curtis, *Orbital Mechanics for Engineering Students*, 2nd ed., Example 8.6,
//! pp. 462-468. Inputs read in two transcriptions, S; outputs quoted from memory, M.

use two_frames::physics::units::{DEGREES_PER_RADIAN, RADIANS_PER_DEGREE};
use two_frames::physics::{Conic, Elements, Encounter, Flyby, Planet};

use crate::common::{encounter, near, printed, solve};
use crate::worked::{heading, planet};

/// What leads to the pass.
struct Venus {
    planet: Planet,
    before: Elements,
    v_infinity: f64,
    approach_deg: f64,
}

const CURTIS_SUN: f64 = 1.3271e11;
const VENUS_ORBIT: f64 = 108.2e6;

fn venus() -> Venus {
    let earth_orbit = 149.6e6;
    let nu = -30.0 * RADIANS_PER_DEGREE;
    let e = (earth_orbit - VENUS_ORBIT) / (earth_orbit + VENUS_ORBIT * nu.cos());
    let before = Elements {
        periapsis_km: earth_orbit * (1.0 - e) / (1.0 + e),
        eccentricity: e,
        inclination: 0.0,
        node: 0.0,
        argument: 0.0,
        true_anomaly: nu,
    };
    let (orbit, _) = Conic::from_elements(CURTIS_SUN, &before);
    let state = orbit.state_at_true_anomaly(nu);
    let radial = state.r.normalize();
    let outward = state.v.dot(radial);
    let transverse = radial.cross(state.v).length();
    let speed = (CURTIS_SUN / VENUS_ORBIT).sqrt();
    printed("e of the ellipse before", e, "0.1702", 0.0);
    let h = state.r.cross(state.v).length();
    printed("h of the ellipse before", h, "4.059e9", 0.0);
    printed("distance", state.r.length(), "108.2e6", 0.0);
    printed("transverse speed", transverse, "37.51", 0.0);
    printed("radial speed", outward, "-2.782", 0.0);
    let flight_path = outward.atan2(transverse) * DEGREES_PER_RADIAN;
    printed("flight path angle", flight_path, "-4.241", 0.0);
    printed("speed in", state.v.length(), "37.62", 0.0);
    printed("Venus's speed", speed, "35.02", 0.0);
    Venus {
        planet: planet(324_900.0, 6_052.0, speed),
        before,
        v_infinity: outward.hypot(transverse - speed),
        approach_deg: outward.atan2(transverse - speed) * DEGREES_PER_RADIAN,
    }
}

impl Venus {
    /// 300 km above the surface, on the dark side (aim angle 0) or the sunlit one (180°).
    fn pass(&self, aim_rad: f64) -> Flyby {
        let altitude = encounter(self.planet, self.v_infinity, self.approach_deg, 6_352.0);
        solve(&Encounter {
            aim_rad,
            ..altitude
        })
    }
}

#[test]
fn venus_hyperbola_of_curtis_8_6() {
    let venus = venus();
    let flyby = venus.pass(0.0);
    // 37.51 and 35.02 are used to 0.005 each: √2 · 0.005 · (2.49 / 3.73) = 0.005 km/s in v∞ at the most.
    let carried = 0.005;
    printed("v∞", venus.v_infinity, "3.733", carried);
    // e − 1 grows as v∞², so 0.27 · 2 · 0.005 / 3.73 = 0.0007.
    printed("e of the hyperbola", flyby.eccentricity, "1.272", 0.0007);
    // h = r_p √(v∞² + 2μ/r_p): 6352 · 3.73 · 0.005 / 10.8 = 11 km²/s.
    let h = 6_352.0 * flyby.periapsis_speed_km_s;
    printed("h of the hyperbola", h, "68480", 11.0);
    // 0.0007 in e is worth 0.0007 · 2/(e √(e² − 1)) = 0.08°, and half of that for the asymptote.
    let turn = flyby.turn_rad * DEGREES_PER_RADIAN;
    printed("turn angle", turn, "103.6", 0.08);
    printed("asymptote's true anomaly", 90.0 + 0.5 * turn, "141.8", 0.04);
    // b = h / v∞: 18340 · (0.005 / 3.73) less h's own share, 22 km.
    printed("aiming radius", flyby.impact_parameter_km, "18340", 22.0);
    // φ1 = atan(2.782 / 2.49): 0.007 of 2.49 is 0.16 % of an angle whose sine times cosine is 0.5, so 0.08°.
    printed("φ1", -venus.approach_deg, "48.17", 0.08);
    // The core's own Sun orbit before the pass is the ellipse that the encounter was made from; rounding only.
    let share = venus.before.periapsis_km / VENUS_ORBIT;
    let orbit = flyby.orbit_before;
    near(
        "e before",
        orbit.eccentricity,
        venus.before.eccentricity,
        1e-14,
    );
    near(
        "perihelion",
        orbit.perihelion_km / venus.planet.orbit_km,
        share,
        1e-14,
    );
}

#[test]
fn venus_dark_and_sunlit_sides_of_curtis_8_6() {
    let venus = venus();
    let (dark, sunlit) = (venus.pass(0.0), venus.pass(std::f64::consts::PI));
    // Which side the probe is aimed at: the Sun lies towards −x.
    let aimed_outward = |flyby: &Flyby| flyby.aim_plane.t.x * flyby.aim_point_km[0] > 0.0;
    assert!(aimed_outward(&dark) && !aimed_outward(&sunlit));
    // φ counts towards the Sun. φ1 and the turn carry 0.08° each (see above).
    let phi = |flyby: &Flyby| -heading(flyby.velocity_out.km_s);
    printed("dark side φ2", phi(&dark), "151.8", 0.16);
    printed("sunlit side φ2", phi(&sunlit), "-55.44", 0.16);
    // 0.16° of v∞ = 3.73 is 0.0104 km/s across the outgoing velocity relative to Venus, of which sin(φ2) at most shows
    // in the speed: 0.005 for the dark side, 0.0086 for the sunlit one; v∞ itself adds up to 0.005 km/s.
    let speed = |flyby: &Flyby| flyby.sun_velocity_out.speed();
    printed("dark side speed out", speed(&dark), "31.78", 0.010);
    printed("sunlit side speed out", speed(&sunlit), "37.27", 0.014);
    // h = R · transverse speed, which moves no more than the speed does.
    let h = |flyby: &Flyby| VENUS_ORBIT * flyby.sun_velocity_out.km_s.y;
    printed("dark side h", h(&dark), "3.434e9", 0.010 * VENUS_ORBIT);
    printed("sunlit side h", h(&sunlit), "4.019e9", 0.014 * VENUS_ORBIT);
    // e = h²/(μ r_p) − 1-like: e changes by at most 2 δv/v with v the circular speed, 35: 0.0006 and 0.0008.
    let e = |flyby: &Flyby| flyby.orbit_after.eccentricity;
    printed("dark side e", e(&dark), "0.1847", 0.0006);
    printed("sunlit side e", e(&sunlit), "0.1556", 0.0008);
    // Source: own recomputation with numpy, no book: perihelion 7.498e7 and 1.053e8 km, speed change −5.835 and −0.349.
    let perihelion =
        |flyby: &Flyby| flyby.orbit_after.perihelion_km * VENUS_ORBIT / venus.planet.orbit_km;
    printed("dark side perihelion", perihelion(&dark), "7.498e7", 0.0);
    printed(
        "sunlit side perihelion",
        perihelion(&sunlit),
        "1.053e8",
        0.0,
    );
    printed("dark side change", dark.speed_change_km_s(), "-5.835", 0.0);
    printed(
        "sunlit side change",
        sunlit.speed_change_km_s(),
        "-0.349",
        0.0,
    );
}
