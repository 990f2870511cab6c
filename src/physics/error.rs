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
    /// All inputs are allowed one by one, but together they leave the range of the numbers that a computer holds.
    OutOfNumbers {
        /// What is too large to compute with.
        what: &'static str,
        /// The planet's gravitational parameter, km³/s².
        gm_km3_s2: f64,
        /// The planet's orbit radius, km.
        orbit_km: f64,
        /// The periapsis distance asked for, km.
        periapsis_km: f64,
    },
}
