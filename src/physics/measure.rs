//! What can be asked of a pass in one number: for maps, charts and sensitivities.

use super::aimed::Aimed;
use super::approach::Approach;
use super::goal::Goal;

/// An outcome of a pass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Change of the speed round the Sun, km/s.
    SpeedChange,
    /// Change of energy round the Sun per unit mass, km²/s².
    EnergyChange,
    /// Length of the change of velocity, km/s, the same in both frames.
    VelocityChange,
    /// Farthest distance from the Sun afterwards, km; infinite where the probe leaves.
    Aphelion,
    /// Nearest distance to the Sun afterwards, km.
    Perihelion,
    /// Inclination of the orbit afterwards, rad.
    Inclination,
    /// Turn angle of the path round the planet, rad.
    Turn,
}

impl Measure {
    /// The outcome of one pass; only the aphelion can be infinite.
    #[inline]
    pub fn of(self, pass: &Aimed<'_>) -> f64 {
        match self {
            Self::SpeedChange => pass.speed_change_km_s(),
            Self::EnergyChange => pass.energy_change_km2_s2(),
            Self::VelocityChange => pass.velocity_change_km_s(),
            Self::Aphelion => pass.sun_path().aphelion_km().unwrap_or(f64::INFINITY),
            Self::Perihelion => pass.sun_path().perihelion_km(),
            Self::Inclination => pass.inclination_rad(),
            Self::Turn => pass.turn_rad(),
        }
    }

    /// The outcome that tells how well a goal is met. For leaving the Sun it is the change of speed, because the speed left
    /// over rises infinitely steeply from 0.
    pub fn of_goal(goal: Goal) -> Self {
        match goal {
            Goal::Aphelion(_) => Self::Aphelion,
            Goal::Perihelion(_) => Self::Perihelion,
            Goal::Turn(_) => Self::Turn,
            Goal::MostInclination => Self::Inclination,
            Goal::Leave(_) | Goal::SpeedChange(_) | Goal::MostGain | Goal::MostLoss => {
                Self::SpeedChange
            }
        }
    }
}

/// Part of the impact parameter over which a slope is taken, at most.
const SHORT: f64 = 1e-4;

impl Approach {
    /// How fast an outcome changes with the aim point (B·T, B·R), km: the steepest slope, per km, by central differences.
    /// `None` where the outcome is infinite beside the point.
    pub fn slope(&self, [t, r]: [f64; 2], measure: Measure) -> Option<f64> {
        let step = SHORT * t.abs().max(r.abs());
        let along = |t_step: f64, r_step: f64| {
            let at = |sign: f64| measure.of(&self.aimed([t + sign * t_step, r + sign * r_step]));
            (at(1.0) - at(-1.0)) / (2.0 * step)
        };
        let (across, down) = (along(step, 0.0), along(0.0, step));
        Some((across * across + down * down).sqrt()).filter(|slope| slope.is_finite())
    }
}
