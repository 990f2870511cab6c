//! The probe's orbit round the Sun before or after the pass, as a patched conic sees it.

use glam::DVec3;

use super::frame::{SunFrame, Velocity};
use super::units::GM_SUN;

/// An orbit round the Sun through the planet's place, with the planet's own pull left out. What does not exist is
/// `None`: the aphelion of an escape, the inclination of a path straight through the Sun.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SunOrbit {
    /// Semi-major axis, km; negative if unbound, `None` for a parabola.
    pub semi_major_axis_km: Option<f64>,
    /// Eccentricity.
    pub eccentricity: f64,
    /// Nearest distance to the Sun, km.
    pub perihelion_km: f64,
    /// Farthest distance from the Sun, km, if bound.
    pub aphelion_km: Option<f64>,
    /// Period, s, if bound.
    pub period_s: Option<f64>,
    /// Angle between this orbit and the planet's, 0..π rad (more than π/2: it runs backwards).
    pub inclination_rad: Option<f64>,
    /// Speed left over far from the Sun, km/s, if unbound.
    pub speed_at_infinity_km_s: Option<f64>,
    /// Energy per unit mass, km²/s²; negative if bound.
    pub energy_km2_s2: f64,
}

impl SunOrbit {
    /// The orbit of a probe that stands at the planet's place, `orbit_km` from the Sun along +x, with velocity `v`.
    ///
    /// Two-body relations: Danby, *Fundamentals of Celestial Mechanics*, 2nd ed., chapter 6 (from memory).
    pub fn through_planet(orbit_km: f64, v: Velocity<SunFrame>) -> Self {
        let r = DVec3::X * orbit_km;
        let v = v.km_s;
        let momentum = r.cross(v);
        let alpha = 2.0 / orbit_km - v.length_squared() / GM_SUN;
        let eccentricity_vector = v.cross(momentum) / GM_SUN - DVec3::X;
        let perihelion_km =
            momentum.length_squared() / GM_SUN / (1.0 + eccentricity_vector.length());
        let bound = alpha > 0.0;
        let semi_major_axis_km = (alpha != 0.0).then(|| 1.0 / alpha);
        let sideways = momentum.truncate().length();
        Self {
            semi_major_axis_km,
            // From the perihelion, not from the vector's length: it falls on the same side of 1 as the energy.
            eccentricity: (1.0 - alpha * perihelion_km).max(0.0),
            perihelion_km,
            aphelion_km: semi_major_axis_km
                .filter(|_| bound)
                .map(|a| 2.0 * a - perihelion_km),
            period_s: semi_major_axis_km
                .filter(|_| bound)
                .map(|a| std::f64::consts::TAU * a * (a / GM_SUN).sqrt()),
            inclination_rad: (momentum != DVec3::ZERO).then(|| libm::atan2(sideways, momentum.z)),
            speed_at_infinity_km_s: (!bound).then(|| (-alpha * GM_SUN).max(0.0).sqrt()),
            energy_km2_s2: -0.5 * alpha * GM_SUN,
        }
    }

    /// Whether the probe stays with the Sun.
    pub fn is_bound(&self) -> bool {
        self.energy_km2_s2 < 0.0
    }
}
