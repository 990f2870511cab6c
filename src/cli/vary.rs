//! What a table varies, on the command line, as in `periapsis=1..50`.

use std::str::FromStr;

use crate::scenario::Field;

/// A field of the scenario with its first and last value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Vary {
    /// The field.
    pub field: Field,
    /// The first value, in the field's unit.
    pub from: f64,
    /// The last value, in the field's unit; it may be the lesser one.
    pub to: f64,
}

impl FromStr for Vary {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let (key, from, to) =
            parts(text).ok_or("what varies is a key with two values; try periapsis=1..50")?;
        let field = Field::from_key(key).ok_or_else(|| unknown(key))?;
        let read = |text| field.read(text).map_err(|notice| notice.to_string());
        Ok(Self {
            field,
            from: read(from)?,
            to: read(to)?,
        })
    }
}

fn parts(text: &str) -> Option<(&str, &str, &str)> {
    let (key, range) = text.split_once('=')?;
    let (from, to) = range.split_once("..")?;
    Some((key, from, to))
}

fn unknown(key: &str) -> String {
    let keys: Vec<_> = Field::ALL.iter().map(|field| field.spec().key).collect();
    format!(
        "{key} is no number of a scenario; try one of {}",
        keys.join(", ")
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_has_a_first_and_a_last_value() {
        let field = Field::from_key("periapsis").expect("a key of the scenario");
        assert_eq!(
            "periapsis=1..50".parse(),
            Ok(Vary {
                field,
                from: 1.0,
                to: 50.0
            })
        );
        assert_eq!(
            "periapsis=1.5..0.5".parse(),
            Ok(Vary {
                field,
                from: 1.5,
                to: 0.5
            })
        );
    }

    #[test]
    fn a_bad_range_is_refused_with_the_rule() {
        let cases = [
            ("periapsis", "try periapsis=1..50"),
            ("periapsis=1-50", "try periapsis=1..50"),
            ("planet=1..2", "try one of"),
            ("altitude=1..2", "altitude is no number"),
            ("periapsis=1..", "number"),
            ("periapsis=0..50", "periapsis=0"),
        ];
        for (text, words) in cases {
            let rule = text.parse::<Vary>().expect_err(text);
            assert!(rule.contains(words), "{text}: {rule}");
        }
    }
}
