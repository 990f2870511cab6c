//! A scenario with all that follows from it; computed once, read at every moment.

use crate::figure::{Scene, Track};
use crate::physics::{Flyby, FlybyError};
use crate::report::Pass;
use crate::scenario::Scenario;

/// A solved scenario.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// All answers of the physics.
    pub flyby: Flyby,
    /// The pass sampled for drawing.
    pub track: Track,
    probe_mass_kg: f64,
}

impl Solved {
    /// Solves a scenario.
    ///
    /// # Errors
    /// [`FlybyError`] when the settings have no flyby together.
    pub fn new(scenario: &Scenario) -> Result<Self, FlybyError> {
        let flyby = Flyby::solve(&scenario.encounter()?)?;
        Ok(Self {
            flyby,
            track: Track::of(&flyby),
            probe_mass_kg: scenario.probe_mass_kg(),
        })
    }

    /// The pass, ready to be put into words and numbers.
    pub fn pass(&self) -> Pass<'_> {
        Pass {
            flyby: &self.flyby,
            probe_mass_kg: self.probe_mass_kg,
        }
    }

    /// The pass at one moment, ready to be drawn.
    pub fn scene(&self, time_s: f64) -> Scene<'_> {
        Scene {
            flyby: &self.flyby,
            track: &self.track,
            time_s,
        }
    }
}
