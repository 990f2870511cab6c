//! The probe's orbit round the Sun before or after the pass, as a patched conic sees it.

use glam::DVec3;

use super::frame::{SunFrame, Velocity};
use super::sun_path::SunPath;
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
    pub fn through_planet(orbit_km: f64, v: Velocity<SunFrame>) -> Self {
        let path = SunPath::through_planet(orbit_km, v);
        let alpha = path.inverse_semi_major_axis();
        let perihelion_km = path.perihelion_km();
        let semi_major_axis_km = (alpha != 0.0).then(|| 1.0 / alpha);
        let DVec3 { y, z, .. } = v.km_s;
        Self {
            semi_major_axis_km,
            // From the perihelion, not from the vector's length: it falls on the same side of 1 as the energy.
            eccentricity: (1.0 - alpha * perihelion_km).max(0.0),
            perihelion_km,
            aphelion_km: path.aphelion_km(),
            period_s: semi_major_axis_km
                .filter(|_| path.is_bound())
                .map(|a| std::f64::consts::TAU * a * (a / GM_SUN).sqrt()),
            // Only what is across the line to the Sun tilts an orbit; a path straight through the Sun has no plane.
            inclination_rad: (y != 0.0 || z != 0.0).then(|| libm::atan2(z.abs(), y)),
            speed_at_infinity_km_s: (!path.is_bound()).then(|| (-alpha * GM_SUN).max(0.0).sqrt()),
            energy_km2_s2: -0.5 * alpha * GM_SUN,
        }
    }

    /// Whether the probe stays with the Sun.
    pub fn is_bound(&self) -> bool {
        self.energy_km2_s2 < 0.0
    }
}
