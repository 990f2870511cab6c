//! A moment on the command line: a number and its unit, as in `-1.5d`.

use std::fmt;
use std::str::FromStr;

use crate::decimal::{exponent, parse, round_significant, shortest};

/// A unit of time.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Unit {
    /// As it stands after the number.
    name: &'static str,
    /// Its length, s.
    seconds: f64,
}

const UNITS: [Unit; 4] = [
    unit("min", 60.0),
    unit("s", 1.0),
    unit("h", 3_600.0),
    unit("d", 86_400.0),
];

const fn unit(name: &'static str, seconds: f64) -> Unit {
    Unit { name, seconds }
}

/// A time after periapsis; before it when negative. It keeps its unit and prints as it was given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moment {
    number: f64,
    unit: Unit,
}

impl Moment {
    /// The time after periapsis, s.
    pub fn seconds(self) -> f64 {
        self.number * self.unit.seconds
    }

    /// The last round moment, in the same unit, that does not come after a time, s.
    pub(crate) fn up_to(self, seconds: f64) -> Self {
        let value = seconds / self.unit.seconds;
        // The place of the third digit: rounding down there keeps the moment within the bound.
        let place = 10_f64.powi(exponent(value).saturating_sub(2));
        let rounded = round_significant((value / place).floor() * place, 3);
        let number = if rounded.is_finite() { rounded } else { 0.0 };
        Self { number, ..self }
    }

    /// The first round moment, in the same unit, that does not come before a time, s.
    pub(crate) fn from(self, seconds: f64) -> Self {
        let mirrored = self.up_to(-seconds);
        Self {
            number: -mirrored.number,
            ..self
        }
    }
}

impl FromStr for Moment {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let read = |unit: Unit| {
            let number = parse(text.strip_suffix(unit.name)?)?;
            Some(Self { number, unit })
        };
        UNITS
            .into_iter()
            .find_map(read)
            .filter(|moment| moment.seconds().is_finite())
            .ok_or_else(|| "a time is a number with its unit s, min, h or d; try 1.5d".to_owned())
    }
}

impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}{}", shortest(self.number), self.unit.name)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn moment(text: &str) -> Moment {
        text.parse().expect(text)
    }

    #[test]
    fn each_unit_has_its_length() {
        let cases = [
            ("90s", 90.0),
            ("1.5min", 90.0),
            ("-2h", -7_200.0),
            ("1.5d", 129_600.0),
            ("0d", 0.0),
        ];
        for (text, seconds) in cases {
            assert_eq!(
                moment(text).seconds().to_bits(),
                f64::to_bits(seconds),
                "{text}"
            );
            assert_eq!(moment(text).to_string(), text);
        }
    }

    #[test]
    fn anything_else_is_refused_with_the_rule() {
        for text in [
            "",
            "d",
            "1.5",
            "1.5 weeks",
            "1.5 d",
            "infd",
            "NaNs",
            "1e308d",
            "1,5d",
        ] {
            let rule = text.parse::<Moment>().expect_err(text);
            assert!(rule.contains("try 1.5d"), "{rule}");
        }
    }

    #[test]
    fn round_moments_stay_within_their_bound() {
        let cases = [
            ("5d", 199_987.6, "2.31d", "2.32d"),
            ("5h", -36_000.0, "-10h", "-10h"),
            ("5h", -35_999.0, "-10h", "-9.99h"),
            ("5min", 0.0, "0min", "0min"),
            ("5s", 5e-324, "0s", "0s"),
        ];
        for (asked, bound, before, after) in cases {
            let asked = moment(asked);
            assert_eq!(asked.up_to(bound).to_string(), before);
            assert_eq!(
                asked.from(bound).to_string().trim_start_matches("-0"),
                after.trim_start_matches('0')
            );
        }
    }
}
