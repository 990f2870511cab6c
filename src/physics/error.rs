//! Each way that an encounter is not a flyby, with the numbers.

/// Why a set of inputs has no flyby. The report turns it into a sentence.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FlybyError {
    /// An input that has to be a positive, finite number is not.
    NotPositive {
        /// The input's name in words.
        what: &'static str,
        /// The value given.
        value: f64,
        /// The unit of the value.
        unit: &'static str,
    },
    /// An angle is not a finite number.
    NotAnAngle {
        /// The angle's name in words.
        what: &'static str,
        /// The value given, radians.
        value: f64,
    },
    /// A size that is allowed by itself is so large or so small that the answers could leave the range of f64.
    OutOfNumbers {
        /// The size's name in words.
        what: &'static str,
        /// The size given.
        value: f64,
        /// The unit of the value.
        unit: &'static str,
    },
}
