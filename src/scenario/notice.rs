//! What is wrong with a scenario text, in sentences that name the key, the value and the rule.

use std::fmt;

use super::choice::PlanetChoice;
use super::field::Field;
use super::text::print_number;

/// One thing in a scenario text that could not be used.
#[derive(Clone, Debug, PartialEq)]
pub enum Notice {
    /// A piece between two `&` that is not `key=value`.
    NotAPair(String),
    /// A key that no version knows.
    UnknownKey(String),
    /// A key that stands in the text a second time, with its second value.
    Twice(String, String),
    /// A version of the text that this program does not read.
    UnknownVersion(String),
    /// A planet that is not one of the keys.
    UnknownPlanet(String),
    /// A value that is not a number.
    NotANumber(Field, String),
    /// A number outside the field's range.
    OutOfRange(Field, String),
    /// A number of a custom planet that is needed and not there.
    Missing(Field),
    /// A number of a custom planet, given for one of the eight planets.
    NotCustom(Field, String),
}

impl fmt::Display for Notice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text())
    }
}

impl Notice {
    /// The notice in words: what it is about, the rule, and what to try.
    pub fn text(&self) -> String {
        let (key, value) = self.subject();
        let (key, value) = (clip(key), clip(value));
        let subject = match self {
            Self::NotAPair(_) => ["“", &key, "”"].concat(),
            _ if value.is_empty() => key,
            _ => [&*key, "=", &value].concat(),
        };
        [&*subject, ": ", &self.rule()].concat()
    }

    /// The key and the value that this is about; the value may be empty.
    fn subject(&self) -> (&str, &str) {
        match self {
            Self::NotAPair(text) | Self::UnknownKey(text) => (text, ""),
            Self::Twice(key, value) => (key, value),
            Self::UnknownVersion(value) => ("v", value),
            Self::UnknownPlanet(value) => ("planet", value),
            Self::Missing(field) => (field.spec().key, ""),
            Self::NotANumber(field, value)
            | Self::OutOfRange(field, value)
            | Self::NotCustom(field, value) => (field.spec().key, value),
        }
    }

    /// The rule that is broken, and what to try.
    fn rule(&self) -> String {
        match self {
            Self::NotAPair(_) => "each part has to be key=value; try periapsis=8.".into(),
            Self::UnknownKey(_) => {
                let keys = keys(|_| true);
                ["there is no such key; try one of v, planet, ", &keys, "."].concat()
            }
            Self::Twice(..) => {
                "each key may be given once, and its first value counts; try leaving this one out."
                    .into()
            }
            Self::UnknownVersion(_) => "this program reads version 1 of the text; try v=1.".into(),
            Self::UnknownPlanet(_) => {
                let keys = PlanetChoice::KNOWN.map(|(key, _)| key).join(", ");
                ["the planet has to be ", &keys, " or custom; try jupiter."].concat()
            }
            Self::NotANumber(field, _) => {
                String::from("the value has to be a number") + &try_default(*field)
            }
            Self::OutOfRange(field, _) => range(*field) + &try_default(*field),
            Self::Missing(field) => {
                let (key, keys) = (field.spec().key, keys(Field::is_of_custom_planet));
                ["a custom planet needs ", &keys, "; try adding ", key, "=…."].concat()
            }
            Self::NotCustom(field, _) => {
                let key = field.spec().key;
                [
                    "only planet=custom has a ",
                    key,
                    " of its own; try planet=custom.",
                ]
                .concat()
            }
        }
    }
}

/// The field's range as a rule: "the value has to be from 0.01 to 10000 planet radii".
fn range(field: Field) -> String {
    let spec = field.spec();
    if field.is_of_custom_planet() {
        [
            "the value has to be a finite number above 0 (",
            spec.unit,
            ")",
        ]
        .concat()
    } else {
        String::from("the value has to be ") + &from_to(spec.min, spec.max, spec.unit)
    }
}

/// A range in words: "from 0.01 to 100 km/s".
pub(super) fn from_to(min: f64, max: f64, unit: &str) -> String {
    let (low, high) = (print_number(min), print_number(max));
    let space = if unit == "°" { "" } else { " " };
    ["from ", &low, " to ", &high, space, unit].concat()
}

fn try_default(field: Field) -> String {
    let value = print_number(field.spec().default.unwrap_or(1.0));
    ["; try ", &value, "."].concat()
}

/// The keys of some fields, as a list.
fn keys(wanted: fn(Field) -> bool) -> String {
    let mut keys = Vec::new();
    for &field in &Field::ALL {
        if wanted(field) {
            keys.push(field.spec().key);
        }
    }
    keys.join(", ")
}

/// A value as it was given, cut where it would fill the screen.
pub(super) fn clip(text: &str) -> String {
    const LONGEST: usize = 40;
    // `get`, because the message of a slice that fails would bring the standard library's character tables along.
    let end = text.char_indices().nth(LONGEST).map(|(end, _)| end);
    match end.and_then(|end| text.get(..end)) {
        Some(start) => start.to_owned() + "…",
        None => text.into(),
    }
}
