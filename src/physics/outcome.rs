//! How a pass ends: by or into the planet, and on which side of it.

use glam::DVec3;

use super::conic::Conic;
use super::planet::Planet;

/// Closer to the flank than this, periapsis counts as neither ahead of the planet nor behind it.
const FLANK: f64 = 1e-12;

/// Whether the probe gets past the planet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Outcome {
    /// Periapsis lies above the surface.
    Passes,
    /// Periapsis would lie below the surface: the probe ends there.
    Strikes(Strike),
}

/// When and how fast a probe meets the surface.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strike {
    /// Time of impact, s; negative, because the periapsis it would have had counts as 0.
    pub time_s: f64,
    /// Speed relative to the planet at impact, km/s.
    pub speed_km_s: f64,
}

/// Where periapsis lies, compared with the planet's motion. It decides the sign of the energy change.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Periapsis behind the planet: the probe gains energy round the Sun.
    Behind,
    /// Periapsis ahead of the planet: the probe loses energy round the Sun.
    Ahead,
    /// Periapsis on the flank: no energy changes hands.
    Neither,
}

impl Outcome {
    /// The outcome of a pass with semi-major axis `a` (km, counted positive).
    pub(super) fn of(
        planet: &Planet,
        v_infinity: f64,
        a: f64,
        periapsis_km: f64,
        hyperbola: &Conic,
    ) -> Self {
        if periapsis_km >= planet.radius_km {
            return Self::Passes;
        }
        let x = hyperbola
            .scaled_anomaly_at_distance(planet.radius_km)
            .unwrap_or(0.0);
        Self::Strikes(Strike {
            time_s: -hyperbola.time_at_scaled_anomaly(x),
            speed_km_s: speed_at(planet.radius_km, v_infinity, a),
        })
    }
}

impl Side {
    /// From the unit vector from the planet to periapsis.
    pub(super) fn of(periapsis_direction: DVec3) -> Self {
        match periapsis_direction.y {
            y if y < -FLANK => Self::Behind,
            y if y > FLANK => Self::Ahead,
            _ => Self::Neither,
        }
    }
}

/// The speed relative to the planet, km/s, at a distance from its centre: v² = v∞² (1 + 2a/r).
pub(super) fn speed_at(distance_km: f64, v_infinity: f64, a: f64) -> f64 {
    v_infinity * (1.0 + 2.0 * a / distance_km).sqrt()
}
