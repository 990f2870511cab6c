//! A scenario with all that follows from it; computed once, read at every moment.

use crate::figure::Track;
use crate::physics::{Flyby, FlybyError};
use crate::report::Solution;
use crate::scenario::Scenario;

/// A solved scenario.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// All answers of the physics.
    pub flyby: Flyby,
    /// The same as labelled values.
    pub solution: Solution,
    /// The pass sampled for drawing.
    pub track: Track,
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
            solution: Solution::new(scenario, &flyby),
            track: Track::of(&flyby),
        })
    }
}
