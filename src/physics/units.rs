//! Constants and unit ratios, each derived from another or cited.

use std::f64::consts::PI;

/// Kilometres in one astronomical unit, exact. Source: IAU 2012 Resolution B2 (149 597 870 700 m).
pub const KM_PER_AU: f64 = 149_597_870.7;
/// Gravitational parameter of the Sun, km³/s². Source: DE440 (Park, Folkner, Williams & Boggs 2021, AJ 161:105).
pub const GM_SUN: f64 = 132_712_440_041.279;
/// Newton's constant, km³/(kg s²), used only to turn a planet's GM into kilograms. Source: CODATA 2018
/// (6.674 30e-11 m³/(kg s²)), from memory.
pub const NEWTON_G: f64 = 6.674_30e-20;
/// Seconds in a day, by definition.
pub const SECONDS_PER_DAY: f64 = 86_400.0;
/// Seconds in an hour, by definition.
pub const SECONDS_PER_HOUR: f64 = 3_600.0;
/// Days in a year as this project counts years (Julian).
pub const DAYS_PER_YEAR: f64 = 365.25;
/// Seconds in that year.
pub const SECONDS_PER_YEAR: f64 = DAYS_PER_YEAR * SECONDS_PER_DAY;
/// Radians in one degree.
pub const RADIANS_PER_DEGREE: f64 = PI / 180.0;
/// Degrees in one radian.
pub const DEGREES_PER_RADIAN: f64 = 180.0 / PI;
