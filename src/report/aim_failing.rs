//! Why a wish cannot be met, in sentences.

use super::aim_words::achieved;
use super::aiming::Aiming;
use super::number::fixed;
use super::quantity::{Pass, Quantity};
use super::sentence::{BEFORE, FAR, Sentence};
use super::value::{Style, Value};
use crate::physics::units::{DEGREES_PER_RADIAN, KM_PER_AU};
use crate::physics::{Flyby, Free, Goal};
use crate::scenario::Field;

/// The smallest change of speed, km/s, that is not rounded to none.
const SHOWN_KM_S: f64 = 0.005;
/// An excess over a goal that is only rounding.
const ROUNDING: f64 = 1e-9;
/// A speed out of the plane, km/s, that is only rounding.
const LEVEL_KM_S: f64 = 1e-9;

/// A wish that no pass meets, with the one that comes nearest; or the most of something, where that is next to nothing.
#[derive(Clone, Copy)]
pub(super) struct Failing<'a> {
    pub(super) aiming: &'a Aiming,
    pub(super) pass: Pass<'a>,
}

impl Failing<'_> {
    /// Why, what comes nearest, and what would help.
    pub(super) fn sentences(&self) -> Vec<Sentence> {
        if self.goal().is_most() {
            return vec![self.nothing(), self.reason()];
        }
        let mut sentences = vec![self.reason()];
        // For a turn the reason has said it already.
        if !matches!(self.goal(), Goal::Turn(_)) {
            sentences.push(self.nearest());
        }
        sentences.push(self.help());
        sentences
    }

    fn goal(&self) -> Goal {
        self.aiming.search.goal
    }

    /// How far the answer is above what is wished.
    fn excess(&self) -> f64 {
        let approach = self.aiming.approach();
        let pass = approach.aimed(self.aiming.flyby.aim_point_km);
        self.goal().excess(&pass)
    }

    /// Why it cannot be done.
    fn reason(&self) -> Sentence {
        let orbit_km = self.aiming.flyby.encounter.planet.orbit_km;
        let before = self.aiming.flyby.sun_velocity_in.speed();
        match self.goal() {
            Goal::Aphelion(km) if km < orbit_km => self.on_the_orbit(
                "The pass happens # from the Sun, so the farthest distance afterwards cannot be less than that.",
            ),
            Goal::Perihelion(km) if km > orbit_km => self.on_the_orbit(
                "The pass happens # from the Sun, so the nearest distance afterwards cannot be more than that.",
            ),
            Goal::SpeedChange(km_s) if before + km_s < 0.0 => {
                let words = "Before the pass its speed round the Sun is # km/s, and it cannot lose more than all of that.";
                Sentence::of(words, &self.pass, &[BEFORE])
            }
            Goal::MostInclination if self.aiming.flyby.sun_velocity_out.km_s.z.abs() < LEVEL_KM_S => {
                let words = "With this aim angle, every path stays in the plane of the orbit of @.";
                Sentence::of(words, &self.pass, &[])
            }
            _ if self.goal().is_beyond_all(&self.aiming.approach()) => self.too_slow_or_fast(),
            _ if self.aiming.grazes() => self.too_little_turn(),
            _ if self.aiming.is_farthest() && self.turning_spoils_it() => self.too_much_turn(),
            _ => Sentence::of(self.no_direction(), &self.pass, &[FAR]),
        }
    }

    /// Whether a path that is not turned at all lies on the other side of what is wished than the answer.
    fn turning_spoils_it(&self) -> bool {
        let approach = self.aiming.approach();
        let straight = approach.aimed([1e15 * approach.semi_major_axis_km, 0.0]);
        let unturned = self.goal().excess(&straight);
        unturned.abs() < ROUNDING || unturned * self.excess() < 0.0
    }

    /// The planet's speed and the probe's relative to it, km/s.
    fn speeds(&self) -> (f64, f64) {
        let motion = self.aiming.flyby.motion();
        (
            motion.velocity().speed(),
            self.aiming.flyby.encounter.v_infinity_km_s,
        )
    }

    fn too_slow_or_fast(&self) -> Sentence {
        let (planet, relative) = self.speeds();
        let (speed, words) = if self.excess() < 0.0 {
            (
                planet + relative,
                "However far the path turns, it cannot leave @ faster than # km/s round the Sun, which is too slow.",
            )
        } else {
            (
                (planet - relative).abs(),
                "However far the path turns, it cannot leave @ slower than # km/s round the Sun, which is too fast.",
            )
        };
        let speed = Value::of_page("page.aim.limit_km_s", speed, Style::Hundredths.text(speed));
        Sentence::new(words, &self.pass, vec![speed])
    }

    fn on_the_orbit(&self, words: &str) -> Sentence {
        let here = self.aiming.flyby.encounter.planet.orbit_km / KM_PER_AU;
        let text = Style::Wide.text(here) + " AU";
        let here = Value::of_page("planet.orbit_radius_au", here, text);
        Sentence::new(words, &self.pass, vec![here])
    }

    /// The path would have to turn more than it can.
    fn too_little_turn(&self) -> Sentence {
        let words = match self.aiming.search.free {
            _ if matches!(self.goal(), Goal::Turn(_)) => {
                "At # km/s @ cannot turn the path by more than #."
            }
            Free::Periapsis => {
                "At # km/s @ cannot turn the path by more than #, and with this aim angle no periapsis does it."
            }
            _ if self.aiming.search.in_plane => {
                "At # km/s @ cannot turn the path by more than #, and no aim point in the orbit plane does it."
            }
            _ => "At # km/s @ cannot turn the path by more than #, and no aim point does it.",
        };
        let speed = Value::of(FAR.0, &self.pass, FAR.1, "");
        Sentence::new(words, &self.pass, vec![speed, turn(&self.aiming.flyby)])
    }

    /// The path would have to turn less than it does anywhere.
    fn too_much_turn(&self) -> Sentence {
        let farthest = Field::Periapsis.spec().max;
        let text = Style::Chosen.text(farthest);
        let farthest = Value::of_page("page.aim.farthest_radii", farthest, text);
        let words = "Every pass out to # planet radii turns the path by # or more, which is too much already.";
        let numbers = vec![farthest, turn(&self.aiming.flyby)];
        Sentence::new(words, &self.pass, numbers)
    }

    /// It is not for want of turning.
    fn no_direction(&self) -> &'static str {
        match self.aiming.search.free {
            Free::Periapsis => {
                "@ can turn the path far enough, but with this aim angle no turn at # km/s does it."
            }
            _ if self.aiming.search.in_plane => {
                "@ can turn the path far enough, but at # km/s no direction in the orbit plane does it."
            }
            _ => "@ can turn the path far enough, but no direction at # km/s does it.",
        }
    }

    fn nothing(&self) -> Sentence {
        let words = match self.goal() {
            Goal::MostGain => {
                "There is nothing to gain here: the best pass changes the speed round the Sun by #."
            }
            Goal::MostLoss => {
                "There is nothing to lose here: the best pass changes the speed round the Sun by #."
            }
            _ => {
                "There is no tilt to be had here: the best pass tilts the orbit by # against that of @."
            }
        };
        Sentence::new(words, &self.pass, vec![self.value()])
    }

    /// What comes nearest.
    fn nearest(&self) -> Sentence {
        let more = self.excess() > 0.0;
        let words = match (self.aiming.achieved(), self.goal()) {
            (None, Goal::Leave(_)) if self.aiming.search.free == Free::Periapsis => {
                "With this aim angle even the best pass stays with the Sun."
            }
            (None, _) if self.aiming.search.free == Free::Periapsis => {
                "With this aim angle every pass leaves the Sun for good."
            }
            (None, Goal::Leave(_)) => "Even the best pass stays with the Sun.",
            (None, _) => "Every pass leaves the Sun for good.",
            (_, Goal::SpeedChange(_)) => {
                "The pass that comes nearest to it changes the speed by #."
            }
            (_, Goal::Leave(_)) if more => "Every pass leaves the Sun, with # or more to spare.",
            (_, Goal::Leave(_)) => "The most to spare is #.",
            _ if more => "The least is #.",
            _ => "The most is #.",
        };
        // Where the words have no place for it, the number stays out.
        Sentence::new(words, &self.pass, vec![self.value()])
    }

    fn help(&self) -> Sentence {
        let orbit_km = self.aiming.flyby.encounter.planet.orbit_km;
        let words = match (self.goal(), self.aiming.more) {
            (_, Some(Free::Approach)) => "With the approach angle free too it can be done.",
            (_, Some(_)) => "With the aim angle free too it can be done.",
            (Goal::Turn(_), _) if self.excess() < 0.0 => "A slower approach turns farther.",
            (Goal::Turn(_), _) => "A faster approach turns less.",
            (Goal::Aphelion(km), _) if km < orbit_km => "A planet nearer to the Sun may do it.",
            (Goal::Perihelion(km), _) if km > orbit_km => {
                "A planet farther from the Sun may do it."
            }
            _ => "Another speed or another planet may do it.",
        };
        Sentence::of(words, &self.pass, &[])
    }

    /// What comes nearest as a number; one that would round to none has two digits.
    fn value(&self) -> Value {
        let mut value = achieved(self.aiming);
        let is_change = matches!(
            self.goal(),
            Goal::SpeedChange(_) | Goal::MostGain | Goal::MostLoss
        );
        let small = |change: &f64| is_change && change.abs() < SHOWN_KM_S && *change != 0.0;
        if let Some(change) = value.value.filter(small) {
            value.text = Style::Rough.signed_text(change) + " km/s";
        }
        value
    }
}

/// The turn of the answer, in as many digits as tell it from none and from half a turn.
fn turn(flyby: &Flyby) -> Value {
    let turn = flyby.turn_rad * DEGREES_PER_RADIAN;
    let text = match turn {
        turn if turn < 0.05 => Style::Rough.text(turn) + "°",
        turn if turn > 179.9 => fixed(turn, 4) + "°",
        turn => Style::Degrees.text(turn),
    };
    Value {
        text,
        path: Quantity::TURN.path.into(),
        value: Some(turn),
    }
}
