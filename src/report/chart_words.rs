//! A chart in a sentence.

use super::chart_reading::{Best, ChartReading, Place, Shape};
use super::number::signed;
use super::quantity::Pass;
use super::sentence::Sentence;
use super::value::{Style, Value};
use crate::physics::Measure;
use crate::scenario::Field;

/// What the chart of an outcome against the periapsis, the approach angle or v-infinity tells.
pub fn chart_sentence(pass: &Pass<'_>, measure: Measure, against: Field) -> Sentence {
    ChartReading::of(pass.flyby, measure, against).sentence(pass)
}

impl ChartReading {
    /// What the chart tells, in a sentence or two.
    pub fn sentence(&self, pass: &Pass<'_>) -> Sentence {
        let (words, numbers) = match (self.shape, self.best) {
            (Shape::Strikes, _) => ("Every pass of this chart strikes @.".into(), Vec::new()),
            (Shape::Leaves, _) => (
                "Every pass of this chart leaves the Sun.".into(),
                Vec::new(),
            ),
            (Shape::Flat { middle, within }, _) => self.flat(middle, within),
            (Shape::Curve, _) if self.course.is_change_with_speed() => self.turns_by_sixty(),
            (Shape::Curve, Some(best)) => self.best_words(&best),
            (Shape::Curve, None) => self.broken(),
        };
        Sentence::new(&words, pass, numbers)
    }

    /// An outcome with its unit.
    pub fn outcome_text(&self, value: f64) -> String {
        let text = self.with_unit(self.course.words().style, value);
        if self.course.measure == Measure::EnergyChange {
            signed(text, value)
        } else {
            text
        }
    }

    fn with_unit(&self, style: Style, value: f64) -> String {
        let unit = self.course.words().unit;
        let gap = if unit == "°" { "" } else { " " };
        [&style.text(value), gap, unit].concat()
    }

    /// A flat curve in a few words.
    pub fn flat_text(&self, middle: f64, within: f64) -> String {
        let middle = self.outcome_text(middle);
        if within > SAME {
            let within = self.with_unit(Style::Rough, within);
            ["hardly changes: within ", &within, " of ", &middle].concat()
        } else {
            String::from("the same everywhere: ") + &middle
        }
    }

    /// A value of the setting as it is written in a sentence or beside a point: "2.41 planet radii".
    pub fn place_text(&self, x: f64) -> String {
        match self.course.against {
            Field::Approach => Style::Degrees.text(x),
            Field::VInfinity => Style::Chosen.text(x) + " km/s",
            _ => match Style::Chosen.text(x) {
                text if text == "1" => text + " planet radius",
                text => text + " planet radii",
            },
        }
    }

    /// The best there is, in a few words.
    pub fn extreme(&self, is_loss: bool) -> &'static str {
        match self.course.measure {
            Measure::SpeedChange if is_loss => "most loss of speed round the Sun",
            Measure::SpeedChange => "most gain of speed round the Sun",
            Measure::EnergyChange if is_loss => "most loss of energy round the Sun",
            Measure::EnergyChange => "most gain of energy round the Sun",
            Measure::VelocityChange => "largest change of velocity",
            Measure::Aphelion => "farthest distance from the Sun",
            Measure::Perihelion => "nearest distance to the Sun",
            Measure::Inclination => "most tilt of the orbit",
            Measure::Turn => "largest turn",
        }
    }

    fn outcome(&self, path: &str, value: f64) -> Value {
        Value::of_page(path, value, self.outcome_text(value))
    }

    fn place(&self, path: &str, x: f64) -> Value {
        Value::of_page(path, x, self.place_text(x))
    }

    fn flat(&self, middle: f64, within: f64) -> (String, Vec<Value>) {
        let setting = match self.course.against {
            Field::Approach => "approach angle",
            Field::VInfinity => "speed",
            _ => "periapsis",
        };
        let text = self.with_unit(Style::Rough, within);
        let middle = self.outcome("page.chart.middle", middle);
        if within > SAME {
            let within = Value::of_page("page.chart.within", within, text);
            let words = [
                "Whatever the ",
                setting,
                ", it hardly changes: within # of #.",
            ];
            (words.concat(), vec![within, middle])
        } else {
            (
                ["It is #, whatever the ", setting, "."].concat(),
                vec![middle],
            )
        }
    }

    fn turns_by_sixty(&self) -> (String, Vec<Value>) {
        let circular = self.course.circular_speed();
        let value = |path| Value::of_page(path, circular, self.outcome_text(circular));
        let words = "At this periapsis the largest change of velocity is #, at v∞ = #, the circular speed there, where \
                     the path turns by 60°.";
        let numbers = vec![value("page.chart.best"), value("page.chart.best_at")];
        (words.into(), numbers)
    }

    fn best_words(&self, best: &Best) -> (String, Vec<Value>) {
        let at = match self.course.against {
            Field::Approach => " is # at an approach angle of #.",
            Field::VInfinity => " is # at v∞ = #.",
            _ => " is # at #.",
        };
        let (at, more) = match best.place {
            Place::Surface if self.closer_is_better(self.sign(best)) => {
                (" is #, grazing the surface.", " Closer is better here.")
            }
            Place::Surface => (" is #, grazing the surface.", ""),
            Place::End => (at, " That is the end of the chart."),
            Place::Inside => (at, self.why(best)),
        };
        let words = ["The ", self.extreme(best.is_loss), at, more].concat();
        let mut numbers = vec![self.outcome("page.chart.best", best.value)];
        if best.place != Place::Surface {
            numbers.push(self.place("page.chart.best_at", best.x));
        }
        (words, numbers)
    }

    /// Why a point between others is the best.
    fn why(&self, best: &Best) -> &'static str {
        let energy = matches!(
            self.course.measure,
            Measure::SpeedChange | Measure::EnergyChange
        );
        match (self.course.against, energy) {
            (Field::Periapsis, true) if best.is_loss => {
                " Closer turns the path too far and takes less."
            }
            (Field::Periapsis, true) if self.course.is_in_plane() => {
                " Closer turns the path past the motion of @ and gives less."
            }
            (Field::Periapsis, _) => " Closer turns the path too far.",
            (Field::VInfinity, _) => " Slower and faster are both worse.",
            _ => "",
        }
    }

    /// Where larger outcomes are better +1, otherwise −1.
    fn sign(&self, best: &Best) -> f64 {
        if best.is_loss || self.course.measure == Measure::Perihelion {
            -1.0
        } else {
            1.0
        }
    }

    /// A curve with a gap or a step.
    fn broken(&self) -> (String, Vec<Value>) {
        let [from, to] = match self.leaves[..] {
            [one] => one.map(|part| self.course.range.at(part)),
            [] => {
                let words = "Where the tilt is 180° it goes round the Sun backwards.";
                return (words.into(), Vec::new());
            }
            _ => {
                let words = "Where the curve has a gap the probe leaves the Sun.";
                return (words.into(), Vec::new());
            }
        };
        let numbers = vec![
            self.place("page.chart.leaves_from", from),
            self.place("page.chart.leaves_to", to),
        ];
        ("It leaves the Sun from # to #.".into(), numbers)
    }
}

/// A difference, display units, that is rounding only.
const SAME: f64 = 1e-9;
