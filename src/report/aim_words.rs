//! The answer to a wish in sentences.

use super::aim_failing::Failing;
use super::aiming::Aiming;
use super::quantity::{Pass, Quantity};
use super::sentence::{Number, RADII, Sentence};
use super::story::far_caution;
use super::value::{Style, Value};
use crate::decimal::round_significant;
use crate::physics::units::KM_PER_AU;
use crate::physics::{Free, Goal, Planet};
use crate::scenario::Wish;

/// A change of speed, km/s, that is shown as none.
const NOTHING: f64 = 0.005;
/// A tilt, degrees, that is shown as none.
const LEVEL: f64 = 0.05;
/// A tilt, degrees, that is as good as the most there can be.
const BACKWARDS: f64 = 179.9;
/// The part of the distance aimed at beside which an aim 100 km off is not a small one.
const SMALL: f64 = 0.1;

const AIM_ANGLE: Number = (Quantity::AIM_ANGLE, Style::Degrees);
const APPROACH_ANGLE: Number = (Quantity::APPROACH_ANGLE, Style::Degrees);
const HEIGHT: Number = (Quantity::HEIGHT, Style::Kilometres);

/// The pass to choose and how sure it is; or why there is none, what comes nearest, and what would help. A pass that is none
/// in truth has a caution.
pub fn aim_sentences(aiming: &Aiming) -> Vec<Sentence> {
    let pass = Pass {
        flyby: &aiming.flyby,
        probe_mass_kg: 1.0,
    };
    let words = Words { aiming, pass };
    let mut sentences = if !aiming.met || words.is_nothing() {
        Failing { aiming, pass }.sentences()
    } else {
        words.met()
    };
    if let Some(caution) = far_caution(&pass) {
        sentences.push(caution);
    }
    sentences
}

struct Words<'a> {
    aiming: &'a Aiming,
    pass: Pass<'a>,
}

impl Words<'_> {
    /// Whether the most of something is nothing to speak of.
    fn is_nothing(&self) -> bool {
        let value = self.aiming.achieved().unwrap_or(0.0);
        match self.aiming.search.goal {
            Goal::MostGain => value < NOTHING,
            Goal::MostLoss => value > -NOTHING,
            Goal::MostInclination => value < LEVEL,
            _ => false,
        }
    }

    fn met(&self) -> Vec<Sentence> {
        let mut sentences = vec![self.result(), self.place()];
        if let Some(words) = self.limit() {
            sentences.push(Sentence::of(words, &self.pass, &[]));
        }
        if let Some(doubt) = self.doubt() {
            sentences.push(doubt);
        }
        sentences
    }

    /// What the answer comes to.
    fn result(&self) -> Sentence {
        let value = self.aiming.achieved().unwrap_or(0.0);
        let words = match self.aiming.search.goal {
            Goal::Aphelion(_) => "the farthest distance from the Sun becomes #.",
            Goal::Perihelion(_) => "the nearest distance to the Sun becomes #.",
            Goal::Leave(_) if value < NOTHING => {
                return Sentence::of("It just leaves the Sun.", &self.pass, &[]);
            }
            Goal::Leave(_) => "it leaves the Sun, with # to spare.",
            Goal::Turn(_) => "the path turns by #.",
            Goal::SpeedChange(0.0) => "the speed round the Sun stays as it was (change #).",
            Goal::SpeedChange(_) => "the speed round the Sun changes by #.",
            Goal::MostGain => "the most that there is to gain round the Sun: #.",
            Goal::MostLoss => "the most that there is to lose round the Sun: #.",
            Goal::MostInclination if value > 90.0 => {
                "the most that the orbit can be tilted against that of @: #, which is over 90°, so that it is run through backwards."
            }
            Goal::MostInclination => "the most that the orbit can be tilted against that of @: #.",
        };
        let start = match self.aiming.wish {
            Wish::Reach(body) => {
                ["It just reaches the orbit of ", Planet::of(body).name, ": "].concat()
            }
            Wish::Most(_) if self.aiming.search.free == Free::Periapsis => {
                "With the aim angle as it is, ".into()
            }
            _ => String::new(),
        };
        Sentence::new(&(start + words), &self.pass, vec![achieved(self.aiming)])
    }

    /// How to aim.
    fn place(&self) -> Sentence {
        let any_approach = self.aiming.search.free == Free::Approach;
        let (words, numbers): (_, &[_]) = match (self.aiming.grazes(), any_approach) {
            (true, true) => (
                "Graze the surface with an approach angle of # and an aim angle of #.",
                &[APPROACH_ANGLE, AIM_ANGLE],
            ),
            (true, false) => ("Graze the surface at an aim angle of #.", &[AIM_ANGLE]),
            (false, true) => (
                "Aim for a periapsis of # planet radii, # km above the surface, with an approach angle of # and an aim \
                 angle of #.",
                &[RADII, HEIGHT, APPROACH_ANGLE, AIM_ANGLE],
            ),
            (false, false) => (
                "Aim for a periapsis of # planet radii, # km above the surface, at an aim angle of #.",
                &[RADII, HEIGHT, AIM_ANGLE],
            ),
        };
        Sentence::of(words, &self.pass, numbers)
    }

    /// Why no other pass is better.
    fn limit(&self) -> Option<&'static str> {
        let aiming = self.aiming;
        let most = aiming.search.goal.is_most();
        let tilt = aiming.achieved().unwrap_or(0.0);
        if aiming.grazes() {
            return Some(if most {
                "A real pass has to stay farther out, and gets less."
            } else {
                "A real pass has to stay farther out."
            });
        }
        match aiming.search.goal {
            Goal::MostInclination if tilt > BACKWARDS => None,
            _ if !most => None,
            _ if aiming.is_farthest() => {
                Some("The search ends there; farther out there may be more.")
            }
            _ => Some("It is the best there is: closer turns the path too far and gives less."),
        }
    }

    /// How much depends on the aim; nothing about a planet that is hardly larger than the doubt.
    fn doubt(&self) -> Option<Sentence> {
        let aiming = self.aiming;
        let Some(change) = aiming.change_per_100_km() else {
            let words = "A little to one side of it, the probe leaves the Sun for good.";
            return Some(Sentence::of(words, &self.pass, &[]));
        };
        let (unit, words) = match aiming.search.goal {
            Goal::Leave(_) => (
                " km/s",
                "An aim 100 km off changes the speed round the Sun by #.",
            ),
            Goal::Turn(_) | Goal::MostInclination => ("°", "An aim 100 km off changes that by #."),
            _ => (aiming.style().1, "An aim 100 km off changes that by #."),
        };
        // Small parts of an AU say little, kilometres do.
        let text = match unit {
            " AU" => {
                let km = round_significant(change * KM_PER_AU, 2);
                ["up to ", &Style::Rough.text(km), " km"].concat()
            }
            _ if change < 1e-3 => ["less than 0.001", unit].concat(),
            _ => ["up to ", &Style::Rough.text(change), unit].concat(),
        };
        let value = Value::of_page("page.aim.change_per_100_km", change, text);
        (SMALL * aiming.flyby.impact_parameter_km > 100.0)
            .then(|| Sentence::new(words, &self.pass, vec![value]))
    }
}

/// What the wish is about, as the answer has it.
pub(super) fn achieved(aiming: &Aiming) -> Value {
    let (style, unit) = aiming.style();
    let value = aiming.achieved();
    let text = value.map(|value| style.text(value) + unit);
    Value {
        text: text.unwrap_or_default(),
        path: "page.aim.value".into(),
        value,
    }
}
