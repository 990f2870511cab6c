//! What is chosen of a pass, and which choices can be computed.

use std::ops::RangeInclusive;

use super::error::FlybyError;
use super::planet::{Planet, check_positive};

/// The sizes, in the core's units, that a pass is computed for. Within these no product of them on the way to an answer
/// leaves the range of f64 (1e-308 to 1e308); every real planet lies well inside.
const COMPUTABLE: RangeInclusive<f64> = 1e-60..=1e60;

/// What is chosen: the planet, how the probe comes in and how close it is aimed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Encounter {
    /// The planet.
    pub planet: Planet,
    /// Speed relative to the planet, far away, km/s; above 0.
    pub v_infinity_km_s: f64,
    /// Approach angle from the planet's velocity to the incoming v-infinity, rad, positive outward.
    pub approach_rad: f64,
    /// Crank angle, rad, 0 in the planet's orbit plane.
    pub crank_rad: f64,
    /// Closest distance from the planet's centre, km; above 0. Below the planet's radius the probe strikes.
    pub periapsis_km: f64,
    /// Aim angle, rad, from T towards R.
    pub aim_rad: f64,
}

impl Encounter {
    /// Refuses inputs that are not numbers in their domain, and sizes too far apart.
    pub(super) fn check(&self) -> Result<(), FlybyError> {
        check_positive("speed relative to the planet", self.v_infinity_km_s, "km/s")?;
        check_positive("periapsis", self.periapsis_km, "km")?;
        let angles = [
            ("approach angle", self.approach_rad),
            ("crank angle", self.crank_rad),
            ("aim angle", self.aim_rad),
        ];
        match angles.into_iter().find(|(_, value)| !value.is_finite()) {
            Some((what, value)) => Err(FlybyError::NotAnAngle { what, value }),
            None => self.check_range(),
        }
    }

    /// Refuses sizes so far apart that an answer could be too large or too small to hold.
    fn check_range(&self) -> Result<(), FlybyError> {
        let Planet {
            gm,
            radius_km,
            orbit_km,
            ..
        } = self.planet;
        let sizes = [
            ("speed relative to the planet", self.v_infinity_km_s, "km/s"),
            ("GM", gm, "km³/s²"),
            ("radius", radius_km, "km"),
            ("orbit", orbit_km, "km"),
            ("periapsis", self.periapsis_km, "km"),
        ];
        let outside = sizes
            .into_iter()
            .find(|(_, size, _)| !COMPUTABLE.contains(size));
        match outside {
            Some((what, value, unit)) => Err(FlybyError::OutOfNumbers { what, value, unit }),
            None => Ok(()),
        }
    }
}
