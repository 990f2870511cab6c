//! An orbit round the Sun through the planet's place, as far as its distances go: all that a map of many orbits needs.

use super::frame::{SunFrame, Velocity};
use super::units::GM_SUN;

/// Nearest and farthest distance of an orbit round the Sun. No vector products and no angles: a few multiplications and
/// one square root.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SunPath {
    orbit_km: f64,
    /// p/R: the semi-latus rectum in units of the planet's distance.
    breadth: f64,
    /// R/a: positive if bound.
    hold: f64,
    /// Length of the eccentricity vector.
    eccentricity: f64,
}

impl SunPath {
    /// The orbit of a probe that stands at the planet's place, `orbit_km` = R from the Sun along +x, with velocity `v`.
    ///
    /// With v outward u and across w: p/R = R w²/μ, R/a = 2 − R (u² + w²)/μ, and the eccentricity vector's components along
    /// and across the radius are p/R − 1 and R u w/μ. Danby, *Fundamentals of Celestial Mechanics*, 2nd ed., chapter 6
    /// (from memory).
    #[inline]
    pub fn through_planet(orbit_km: f64, v: Velocity<SunFrame>) -> Self {
        let unit = orbit_km / GM_SUN;
        let v = v.km_s;
        let breadth = unit * (v.y * v.y + v.z * v.z);
        let outward = unit * (v.x * v.x);
        let along = breadth - 1.0;
        Self {
            orbit_km,
            breadth,
            hold: 2.0 - (breadth + outward),
            eccentricity: (along * along + outward * breadth).sqrt(),
        }
    }

    /// 1/a, 1/km: positive if bound, 0 for a parabola, negative if unbound.
    pub fn inverse_semi_major_axis(&self) -> f64 {
        self.hold / self.orbit_km
    }

    /// Whether the probe stays with the Sun.
    pub fn is_bound(&self) -> bool {
        self.hold > 0.0
    }

    /// Nearest distance to the Sun, km.
    #[inline]
    pub fn perihelion_km(&self) -> f64 {
        self.orbit_km * (self.breadth / (1.0 + self.eccentricity))
    }

    /// Farthest distance from the Sun, km; `None` if unbound.
    pub fn aphelion_km(&self) -> Option<f64> {
        self.is_bound()
            .then(|| 2.0 * self.orbit_km / self.hold - self.perihelion_km())
    }

    /// 1 / farthest distance, 1/km: (1/a)/(1 + e), which goes smoothly through 0 at the parabola and is negative where the
    /// probe leaves.
    #[inline]
    pub fn inverse_aphelion(&self) -> f64 {
        self.hold / ((1.0 + self.eccentricity) * self.orbit_km)
    }
}
