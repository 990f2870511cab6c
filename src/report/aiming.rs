//! Aiming for a wish: the pass to choose, whether it does what is wished, and what it is worth in display units.

use std::fmt;

use super::refusal::refusal;
use super::value::Style;
use crate::physics::units::{DEGREES_PER_RADIAN, KM_PER_AU};
use crate::physics::{Approach, Finding, Flyby, FlybyError, Free, Goal, Measure, Search};
use crate::scenario::{BadWish, Field, Scenario, Wish};

/// A wish, searched for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aiming {
    /// What is wished.
    pub wish: Wish,
    /// The search: the goal in core units, and what was free.
    pub search: Search,
    /// The pass to choose; when no pass does what is wished, the one that comes nearest.
    pub answer: Scenario,
    /// The answer, solved.
    pub flyby: Flyby,
    /// Whether it does what is wished.
    pub met: bool,
    /// What more would have to be free, if anything helps.
    pub more: Option<Free>,
}

/// Why nothing could be searched for.
#[derive(Clone, Debug, PartialEq)]
pub enum NoAim {
    /// Nothing is wished.
    NoWish,
    /// The wish makes no sense here.
    Wish(BadWish),
    /// The settings have no flyby.
    Flyby(FlybyError),
}

impl From<FlybyError> for NoAim {
    fn from(error: FlybyError) -> Self {
        Self::Flyby(error)
    }
}

impl NoAim {
    /// Why there is no answer, in words.
    pub fn text(&self) -> String {
        match self {
            Self::NoWish => "No goal is set: choose one.".into(),
            Self::Wish(bad) => bad.text(),
            Self::Flyby(error) => refusal(error),
        }
    }
}

impl fmt::Display for NoAim {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text())
    }
}

impl std::error::Error for NoAim {}

/// Heights below this share of the radius count as grazing.
const GRAZING: f64 = 1e-3;
/// The last part of the distances searched that counts as their end.
const END: f64 = 1e-3;
/// How far beside the answer its certainty is judged, km.
const OFF_KM: f64 = 100.0;

impl Aiming {
    /// Searches for a wish, starting from a scenario.
    ///
    /// # Errors
    /// [`NoAim`], in words by its `Display`.
    pub fn new(scenario: &Scenario, wish: Wish, free: Free, in_plane: bool) -> Result<Self, NoAim> {
        let encounter = scenario.encounter()?;
        let search = Search {
            encounter,
            goal: wish.goal(&encounter.planet).map_err(NoAim::Wish)?,
            free,
            in_plane,
            farthest_km: Field::Periapsis.spec().max * encounter.planet.radius_km,
        };
        let (best, met, more) = match search.run()? {
            Finding::Met(best) => (best, true, None),
            Finding::OutOfReach { best, more } => (best, false, more),
        };
        let answer = scenario.aimed(&best);
        Ok(Self {
            wish,
            search,
            answer,
            flyby: Flyby::solve(&answer.encounter()?)?,
            met,
            more,
        })
    }

    /// What the wish is about, as the answer has it; `None` where the answer has none.
    pub fn achieved(&self) -> Option<f64> {
        let orbit = &self.flyby.orbit_after;
        match self.search.goal {
            Goal::Aphelion(_) => orbit.aphelion_km.map(|km| km / KM_PER_AU),
            Goal::Perihelion(_) => Some(orbit.perihelion_km / KM_PER_AU),
            Goal::Leave(_) => orbit.speed_at_infinity_km_s,
            Goal::Turn(_) => Some(self.flyby.turn_rad * DEGREES_PER_RADIAN),
            Goal::SpeedChange(_) | Goal::MostGain | Goal::MostLoss => {
                Some(self.flyby.speed_change_km_s())
            }
            Goal::MostInclination => orbit.inclination_rad.map(|rad| rad * DEGREES_PER_RADIAN),
        }
    }

    /// How the wish's quantity is rounded, and its unit.
    pub(super) fn style(&self) -> (Style, &'static str) {
        match self.search.goal {
            Goal::Aphelion(_) | Goal::Perihelion(_) => (Style::Wide, " AU"),
            Goal::Leave(_) => (Style::Hundredths, " km/s"),
            Goal::Turn(_) | Goal::MostInclination => (Style::Degrees, ""),
            Goal::SpeedChange(_) | Goal::MostGain | Goal::MostLoss => (Style::Change, " km/s"),
        }
    }

    /// How much the outcome changes, in display units, for 100 km of aim in the worst direction; for leaving the Sun it is
    /// the speed round the Sun that is meant. On a peak, which has no slope, it is what it falls by. `None` where the
    /// outcome is infinite near by.
    pub fn change_per_100_km(&self) -> Option<f64> {
        let measure = Measure::of_goal(self.search.goal);
        let approach = self.flyby.approach();
        let point = self.flyby.aim_point_km;
        let unit = match measure {
            Measure::Aphelion | Measure::Perihelion => 1.0 / KM_PER_AU,
            Measure::Turn | Measure::Inclination => DEGREES_PER_RADIAN,
            _ => 1.0,
        };
        let change = if self.search.goal.is_most() && !self.grazes() {
            let at = |t: f64, r: f64| measure.of(&approach.aimed([point[0] + t, point[1] + r]));
            let beside = [
                at(OFF_KM, 0.0),
                at(-OFF_KM, 0.0),
                at(0.0, OFF_KM),
                at(0.0, -OFF_KM),
            ];
            let here = at(0.0, 0.0);
            Some(
                beside
                    .into_iter()
                    .fold(0.0, |most: f64, value| most.max((value - here).abs())),
            )
        } else {
            approach.slope(point, measure).map(|slope| OFF_KM * slope)
        };
        change.map(|change| change * unit)
    }

    /// Whether the answer passes so low that a real probe would have to stay farther out.
    pub fn grazes(&self) -> bool {
        self.height_km() < GRAZING * self.flyby.encounter.planet.radius_km
    }

    /// Whether the answer lies as far out as passes are searched for.
    pub fn is_farthest(&self) -> bool {
        self.flyby.encounter.periapsis_km > (1.0 - END) * self.search.farthest_km
    }

    /// Height of the answer's periapsis above the surface, km.
    pub fn height_km(&self) -> f64 {
        self.flyby.encounter.periapsis_km - self.flyby.encounter.planet.radius_km
    }

    /// The approach of the answer: its aim plane holds the answer's aim points.
    pub fn approach(&self) -> Approach {
        self.flyby.approach()
    }

    /// The search with the answer's own approach.
    pub(super) fn search_of_answer(&self) -> Search {
        Search {
            encounter: self.flyby.encounter,
            ..self.search
        }
    }
}
