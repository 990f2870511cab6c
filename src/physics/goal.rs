//! What a pass is wanted for.

use std::f64::consts::PI;

use glam::DVec3;

use super::aimed::Aimed;
use super::angle::sincos;
use super::approach::Approach;
use super::frame::Velocity;
use super::sun_path::SunPath;

/// A wish for the orbit after the pass, or for the pass itself. Lengths in km, speeds in km/s, angles in rad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Goal {
    /// The farthest distance from the Sun afterwards.
    Aphelion(f64),
    /// The nearest distance to the Sun afterwards.
    Perihelion(f64),
    /// Leave the Sun, with this speed left over far away; 0 just leaves.
    Leave(f64),
    /// The turn angle of the path round the planet.
    Turn(f64),
    /// The change of the speed round the Sun, positive for a gain.
    SpeedChange(f64),
    /// The greatest gain of speed round the Sun.
    MostGain,
    /// The greatest loss of speed round the Sun.
    MostLoss,
    /// The greatest tilt of the orbit afterwards against the planet's.
    MostInclination,
}

/// What may be changed to reach a goal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd)]
pub enum Free {
    /// The closest distance alone; the aim angle stays.
    Periapsis,
    /// The aim point: closest distance and aim angle.
    AimPoint,
    /// The aim point and the approach angle.
    Approach,
}

impl Goal {
    /// Whether the goal is the most of something, not a value to be met.
    pub fn is_most(self) -> bool {
        matches!(
            self,
            Self::MostGain | Self::MostLoss | Self::MostInclination
        )
    }

    /// How far a pass is above the goal (positive), on it (0) or below it: smooth in the aim point, also where the orbit
    /// becomes unbound. For the most of something it is that thing itself, to be made as large as possible.
    pub fn excess(self, pass: &Aimed<'_>) -> f64 {
        match self {
            Self::Aphelion(km) => 1.0 - km * pass.sun_path().inverse_aphelion(),
            Self::Perihelion(km) => pass.sun_path().perihelion_km() / km - 1.0,
            Self::Leave(_) | Self::SpeedChange(_) => {
                let wanted = // Losing more speed than there is lies below everything.
                    self.forward_part(pass.approach()).unwrap_or(-2.0);
                pass.forward_part() - wanted
            }
            Self::Turn(rad) => {
                // Beyond half a turn the sine would come down again.
                let wanted = if rad < PI { sincos(0.5 * rad).0 } else { rad };
                pass.velocity_change_km_s() / pass.approach().v_infinity_km_s - 2.0 * wanted
            }
            Self::MostGain => pass.speed_change_km_s(),
            Self::MostLoss => -pass.speed_change_km_s(),
            Self::MostInclination => pass.inclination_rad(),
        }
    }

    /// How far a pass is from the goal, to be compared between approaches: a change of speed in km/s, because the same part
    /// along the planet's motion is another change on another approach.
    pub(super) fn miss(self, pass: &Aimed<'_>) -> f64 {
        match self {
            Self::SpeedChange(change) => (pass.speed_change_km_s() - change).abs(),
            _ => self.excess(pass).abs(),
        }
    }

    /// For a goal that depends on the speed round the Sun alone: the part of the outgoing unit vector along the planet's
    /// motion that meets it, S'·y = (v'² − V² − v∞²)/(2 V v∞). Beyond ±1 no turn whatever meets it. `None` for the other
    /// goals, and for a speed below zero.
    pub fn forward_part(self, approach: &Approach) -> Option<f64> {
        let (v, planet) = (approach.v_infinity_km_s, approach.motion.velocity().km_s.y);
        match self {
            // Escape speed is √2 V at the planet's distance.
            Self::Leave(left) => {
                Some(((planet - v) * (planet + v) + left * left) / (2.0 * planet * v))
            }
            Self::SpeedChange(change) => {
                let before = approach.sun_velocity_in().speed();
                let more = change * (2.0 * before + change) / (2.0 * planet * v);
                (before + change >= 0.0).then_some(approach.aim_plane.s.y + more)
            }
            _ => None,
        }
    }

    /// Whether no direction of the outgoing velocity whatever meets it: too slow even along the planet's motion, or too
    /// fast even against it.
    pub fn is_beyond_all(self, approach: &Approach) -> bool {
        if let Some(part) = self.forward_part(approach) {
            return part.abs() > 1.0;
        }
        let (v, planet) = (approach.v_infinity_km_s, approach.motion.velocity().km_s.y);
        let straight = |speed: f64| {
            let velocity = Velocity::new(DVec3::Y * speed);
            SunPath::through_planet(approach.planet.orbit_km, velocity)
        };
        match self {
            Self::Aphelion(km) => {
                km < approach.planet.orbit_km || km * straight(planet + v).inverse_aphelion() > 1.0
            }
            // Faster than the planet it can stand still round the Sun, and fall into it.
            Self::Perihelion(km) => {
                km > approach.planet.orbit_km
                    || (v < planet && km < straight(planet - v).perihelion_km())
            }
            _ => false,
        }
    }
}
