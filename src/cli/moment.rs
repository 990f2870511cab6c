//! A moment on the command line: a number and its unit, as in `-1.5d`.

use std::str::FromStr;

/// The units, each with its length in seconds.
const UNITS: [(&str, f64); 4] = [("min", 60.0), ("s", 1.0), ("h", 3_600.0), ("d", 86_400.0)];

/// A time after periapsis; before it when negative.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moment {
    /// The time, s.
    pub seconds: f64,
}

impl FromStr for Moment {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let unit = UNITS
            .iter()
            .find_map(|(name, length)| Some((text.strip_suffix(name)?, length)));
        let seconds = unit.and_then(|(number, length)| Some(number.parse::<f64>().ok()? * length));
        let rule = "a time is a number with its unit s, min, h or d; try 1.5d";
        seconds
            .filter(|seconds| seconds.is_finite())
            .map(|seconds| Self { seconds })
            .ok_or_else(|| rule.to_owned())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

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
            assert_eq!(text.parse(), Ok(Moment { seconds }), "{text}");
        }
    }

    #[test]
    fn anything_else_is_refused_with_the_rule() {
        for text in [
            "",
            "d",
            "1.5",
            "1.5 weeks",
            "infd",
            "NaNs",
            "1e308d",
            "1,5d",
        ] {
            let rule = text.parse::<Moment>().expect_err(text);
            assert!(rule.contains("try 1.5d"), "{rule}");
        }
    }
}
