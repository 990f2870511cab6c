//! The answer to a wish in sentences.

use super::aiming::Aiming;
use super::quantity::{Pass, Quantity};
use super::sentence::{FAR, Number, RADII, Sentence};
use super::value::{Style, Value};
use crate::physics::units::{DEGREES_PER_RADIAN, KM_PER_AU};
use crate::physics::{Free, Goal};
use crate::scenario::Field;

/// A change of speed, km/s, that is shown as none.
const NOTHING: f64 = 0.005;
/// Heights below this share of the radius count as grazing.
const GRAZING: f64 = 1e-3;

const AIM_ANGLE: Number = (Quantity::AIM_ANGLE, Style::Degrees);
const APPROACH_ANGLE: Number = (Quantity::APPROACH_ANGLE, Style::Degrees);
const HEIGHT: Number = (Quantity::HEIGHT, Style::Kilometres);

/// The pass to choose and how sure it is; or why there is none, what comes nearest, and what would help.
pub fn aim_sentences(aiming: &Aiming) -> Vec<Sentence> {
    let words = Words {
        aiming,
        pass: Pass {
            flyby: &aiming.flyby,
            probe_mass_kg: 1.0,
        },
    };
    if aiming.met {
        words.met()
    } else {
        words.out_of_reach()
    }
}

struct Words<'a> {
    aiming: &'a Aiming,
    pass: Pass<'a>,
}

impl Words<'_> {
    fn met(&self) -> Vec<Sentence> {
        let goal = self.aiming.search.goal;
        let change = self.aiming.flyby.speed_change_km_s();
        let words = match goal {
            Goal::MostGain if change < NOTHING => {
                "Nothing to gain: no aim point turns the path farther towards the motion of @ than it comes in."
            }
            Goal::MostLoss if change > -NOTHING => {
                "Nothing to lose: no aim point turns the path farther against the motion of @ than it comes in."
            }
            _ => return [self.result(), self.place(), self.doubt()].into(),
        };
        vec![Sentence::of(words, &self.pass, &[])]
    }

    /// What the answer comes to.
    fn result(&self) -> Sentence {
        let words = match self.aiming.search.goal {
            Goal::Aphelion(_) => "The farthest distance from the Sun becomes #.",
            Goal::Perihelion(_) => "The nearest distance to the Sun becomes #.",
            Goal::Leave(_) => "It leaves the Sun with # to spare.",
            Goal::Turn(_) => "The path turns by #.",
            Goal::SpeedChange(_) => "The speed round the Sun changes by #.",
            Goal::MostGain => "The most that it can gain round the Sun is #.",
            Goal::MostLoss => "The most that it can lose round the Sun is #.",
            Goal::MostInclination => "The most that the orbit can be tilted is #.",
        };
        Sentence::new(words, &self.pass, vec![self.achieved()])
    }

    /// How to aim.
    fn place(&self) -> Sentence {
        if self.aiming.search.free == Free::Approach {
            let words = "Aim for a periapsis of # planet radii with an approach angle of # and an aim angle of #: # km \
                         above the surface.";
            let numbers = [RADII, APPROACH_ANGLE, AIM_ANGLE, HEIGHT];
            return Sentence::of(words, &self.pass, &numbers);
        }
        let words =
            "Aim for a periapsis of # planet radii at an aim angle of #: # km above the surface.";
        Sentence::of(words, &self.pass, &[RADII, AIM_ANGLE, HEIGHT])
    }

    /// How much depends on the aim.
    fn doubt(&self) -> Sentence {
        let aiming = self.aiming;
        let grazes = aiming.height_km() < GRAZING * aiming.flyby.encounter.planet.radius_km;
        let Some(change) = aiming.change_per_100_km() else {
            let words = "A little beside it the probe leaves the Sun, or stays.";
            return Sentence::of(words, &self.pass, &[]);
        };
        let unit = match aiming.search.goal {
            Goal::Leave(_) => " km/s of speed round the Sun",
            Goal::Turn(_) | Goal::MostInclination => "°",
            _ => aiming.style().1,
        };
        let text = Style::Rough.text(change) + unit;
        let value = Value::of_page("page.aim.change_per_100_km", change, text);
        let words = if aiming.search.goal.is_most() && !grazes {
            "It is the best there is: closer turns the path too far and gives less. 100 km beside it changes that by #."
        } else if grazes {
            "It grazes the surface, so a real pass has to stay farther out and gets less. 100 km of aim change that by #."
        } else {
            "100 km of aim change that by up to #."
        };
        Sentence::new(words, &self.pass, vec![value])
    }

    fn out_of_reach(&self) -> Vec<Sentence> {
        let help = match self.aiming.more {
            Some(Free::Approach) => "With the approach angle free too it can be done.",
            Some(_) => "With the aim angle free too it can be done.",
            None => "Another speed or another planet may do it.",
        };
        [
            self.reason(),
            self.nearest(),
            Sentence::of(help, &self.pass, &[]),
        ]
        .into()
    }

    /// Why it cannot be done.
    fn reason(&self) -> Sentence {
        let encounter = &self.aiming.flyby.encounter;
        let orbit_km = encounter.planet.orbit_km;
        let here = orbit_km / KM_PER_AU;
        let here = Value::of_page(
            "planet.orbit_radius_au",
            here,
            Style::Wide.text(here) + " AU",
        );
        let words = match self.aiming.search.goal {
            Goal::Aphelion(km) if km < orbit_km => {
                "The pass happens # from the Sun, so the farthest distance afterwards cannot be less than that."
            }
            Goal::Perihelion(km) if km > orbit_km => {
                "The pass happens # from the Sun, so the nearest distance afterwards cannot be more than that."
            }
            _ if self.excess() > 0.0 => {
                let farthest = Field::Periapsis.spec().max;
                let text = Style::Chosen.text(farthest);
                let farthest = Value::of_page("page.aim.farthest_radii", farthest, text);
                let words = "Every pass out to # planet radii goes beyond that.";
                return Sentence::new(words, &self.pass, vec![farthest]);
            }
            _ => return self.too_little_turn(),
        };
        Sentence::new(words, &self.pass, vec![here])
    }

    fn too_little_turn(&self) -> Sentence {
        let approach = self.aiming.approach();
        let most = 2.0 * libm::atan2(approach.semi_major_axis_km, approach.strike_radius_km());
        let most = most * DEGREES_PER_RADIAN;
        let most = Value::of_page("page.aim.most_turn_deg", most, Style::Degrees.text(most));
        let far = Value::of(FAR.0, &self.pass, FAR.1, "");
        let words = match self.aiming.search.free {
            Free::Periapsis => {
                "@ at # km/s cannot turn the path by more than #, and no periapsis on this line does it."
            }
            _ => "@ at # km/s cannot turn the path by more than #, and no aim point does it.",
        };
        Sentence::new(words, &self.pass, vec![far, most])
    }

    /// What comes nearest.
    fn nearest(&self) -> Sentence {
        let aiming = self.aiming;
        let (words, numbers) = match (aiming.achieved(), aiming.search.goal) {
            (None, Goal::Leave(_)) => ("Even the best pass stays with the Sun.", vec![]),
            (None, _) => ("Every pass leaves the Sun.", vec![]),
            _ if self.excess() < 0.0 => ("The most is #.", vec![self.achieved()]),
            _ => ("The least is #.", vec![self.achieved()]),
        };
        Sentence::new(words, &self.pass, numbers)
    }

    /// How far the answer is above what is wished.
    fn excess(&self) -> f64 {
        let approach = self.aiming.approach();
        let pass = approach.aimed(self.aiming.flyby.aim_point_km);
        self.aiming.search.goal.excess(&pass)
    }

    fn achieved(&self) -> Value {
        let (style, unit) = self.aiming.style();
        let value = self.aiming.achieved();
        let text = value.map(|value| style.text(value) + unit);
        Value {
            text: text.unwrap_or_default(),
            path: "page.aim.value".into(),
            value,
        }
    }
}
