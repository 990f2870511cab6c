//! Why settings that are each allowed have no flyby together, in a sentence.

use crate::decimal::shortest;
use crate::physics::FlybyError;

/// The refusal in words: the value, the rule and what to try.
pub fn refusal(error: &FlybyError) -> String {
    match *error {
        FlybyError::NotPositive { what, value, unit } => format!(
            "The {what} is {} {unit}, and it has to be a finite number above 0: try a positive one.",
            number(value)
        ),
        FlybyError::NotAnAngle { what, value } => {
            format!(
                "The {what} is {}, and it has to be a finite angle: try one from -180° to 180°.",
                number(value)
            )
        }
        FlybyError::OutOfNumbers { what, value, unit } => format!(
            "The {what} is {} {unit}, and only sizes from 1e-60 to 1e60 can be computed: try a planet nearer to a real one.",
            number(value)
        ),
    }
}

/// A number as it was given, or in words where it is none.
fn number(value: f64) -> String {
    if value.is_finite() {
        shortest(value)
    } else {
        "not a finite number".into()
    }
}
