//! The answer to a wish as labelled values: what `two-frames aim` prints.

use serde::Serialize;

use super::aim_words::aim_sentences;
use super::aiming::Aiming;
use crate::physics::{Free, SpeedCircle};
use crate::scenario::{Field, Scenario};

/// Rays on which the aim points are listed: one a degree.
const RAYS: u32 = 360;

/// A wish, searched for. A value that does not exist is `None`, null in JSON.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[allow(missing_docs, reason = "each name says quantity and unit")]
pub struct AimSolution {
    /// The scenario to start from.
    pub scenario: Scenario,
    /// The wish's text form.
    pub goal: String,
    pub free: &'static str,
    /// Whether the answer does what is wished.
    pub met: bool,
    /// The pass to choose; when none does what is wished, the one that comes nearest.
    pub answer: AnswerPart,
    /// Every aim point that does it with the answer's approach, `[B·T, B·R]`, ray by ray; empty for the most of something.
    pub aim_points_km: Vec<[f64; 2]>,
    /// The circle that they lie on, where the speed round the Sun alone decides.
    pub circle: Option<CirclePart>,
    /// What more has to be free, when that helps.
    pub free_more: Option<&'static str>,
    /// The answer in words.
    pub sentences: Vec<String>,
}

/// The pass to choose.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[allow(missing_docs, reason = "each name says quantity and unit")]
pub struct AnswerPart {
    pub scenario: Scenario,
    /// What the wish is about, in its own unit.
    pub value: Option<f64>,
    /// How much that changes for 100 km of aim, in the same unit (for leave: of the speed round the Sun, km/s).
    pub change_per_100_km: Option<f64>,
    pub periapsis_km: f64,
    pub height_km: f64,
    pub approach_deg: Option<f64>,
    pub aim_deg: Option<f64>,
    pub b_t_km: f64,
    pub b_r_km: f64,
}

/// A circle in the aim plane.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[allow(missing_docs, reason = "each name says quantity and unit")]
pub struct CirclePart {
    pub centre_b_t_km: f64,
    pub centre_b_r_km: f64,
    pub radius_km: f64,
}

impl AimSolution {
    /// The labelled values of an answer that was searched for from a scenario.
    pub fn new(scenario: &Scenario, aiming: &Aiming) -> Self {
        let [b_t_km, b_r_km] = aiming.flyby.aim_point_km;
        let search = aiming.search_of_answer();
        let approach = aiming.approach();
        let part = search.goal.forward_part(&approach);
        let circle = part
            .and_then(|part| SpeedCircle::new(&approach, part))
            .and_then(|circle| circle.centre_and_radius_km());
        Self {
            scenario: *scenario,
            goal: aiming.wish.to_string(),
            free: word(aiming.search.free),
            met: aiming.met,
            answer: AnswerPart {
                scenario: aiming.answer,
                value: aiming.achieved(),
                change_per_100_km: aiming.change_per_100_km(),
                periapsis_km: aiming.flyby.encounter.periapsis_km,
                height_km: aiming.height_km(),
                approach_deg: aiming.answer.get(Field::Approach),
                aim_deg: aiming.answer.get(Field::Aim),
                b_t_km,
                b_r_km,
            },
            aim_points_km: search.aim_points_km(RAYS),
            circle: circle.map(|([centre_b_t_km, centre_b_r_km], radius_km)| CirclePart {
                centre_b_t_km,
                centre_b_r_km,
                radius_km,
            }),
            free_more: aiming.more.map(word),
            sentences: aim_sentences(aiming)
                .iter()
                .map(ToString::to_string)
                .collect(),
        }
    }
}

/// What is free, in the word that the command takes.
fn word(free: Free) -> &'static str {
    match free {
        Free::Periapsis => "periapsis",
        Free::AimPoint => "aim-point",
        Free::Approach => "approach",
    }
}
