//! Why settings that are each allowed have no flyby together, in a sentence.

use crate::decimal::shortest;
use crate::physics::FlybyError;

/// The refusal in words: the value, the rule and what to try.
pub fn refusal(error: &FlybyError) -> String {
    let (what, value, unit, rule) = match *error {
        FlybyError::NotPositive { what, value, unit } => (
            what,
            value,
            unit,
            "it has to be a finite number above 0: try a positive one.",
        ),
        FlybyError::NotAnAngle { what, value } => (
            what,
            value,
            "",
            "it has to be a finite angle: try one from -180° to 180°.",
        ),
        FlybyError::OutOfNumbers { what, value, unit } => (
            what,
            value,
            unit,
            "only sizes from 1e-60 to 1e60 can be computed: try a planet nearer to a real one.",
        ),
    };
    let space = if unit.is_empty() { "" } else { " " };
    let value = number(value);
    ["The ", what, " is ", &value, space, unit, ", and ", rule].concat()
}

/// A number as it was given, or in words where it is none.
fn number(value: f64) -> String {
    if value.is_finite() {
        shortest(value)
    } else {
        "not a finite number".into()
    }
}
