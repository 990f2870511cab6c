//! Each way that an encounter is not a flyby, with the numbers.

use std::fmt;

/// Why a set of inputs has no flyby. The message names the value, the rule and what to try.
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
        /// The quantity that came out too large to hold.
        what: &'static str,
        /// The planet's gravitational parameter, km³/s².
        gm_km3_s2: f64,
        /// The planet's orbit radius, km.
        orbit_km: f64,
        /// The periapsis distance asked for, km.
        periapsis_km: f64,
    },
}

impl fmt::Display for FlybyError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::NotPositive { what, value, unit } => {
                write!(
                    f,
                    "The {what} is {value} {unit}, and it has to be a finite number above 0: try a positive one."
                )
            }
            Self::NotAnAngle { what, value } => {
                write!(
                    f,
                    "The {what} is {value}, and it has to be a finite angle: try one from -180° to 180°."
                )
            }
            Self::OutOfNumbers {
                what,
                gm_km3_s2,
                orbit_km,
                periapsis_km,
            } => write!(
                f,
                "The {what} is too large to compute with GM {gm_km3_s2:e} km³/s², an orbit of {orbit_km:e} km and a \
                 periapsis of {periapsis_km:e} km: try a custom planet nearer to a real one."
            ),
        }
    }
}

impl std::error::Error for FlybyError {}
