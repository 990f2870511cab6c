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
        match self {
            Self::NotAPair(piece) => {
                write!(
                    f,
                    "“{}”: each part has to be key=value; try periapsis=8.",
                    clip(piece)
                )
            }
            Self::UnknownKey(key) => {
                write!(
                    f,
                    "{}: there is no such key; try one of v, planet, {}.",
                    clip(key),
                    keys(|_| true)
                )
            }
            Self::Twice(key, value) => {
                write!(
                    f,
                    "{key}={}: each key may be given once; the first value counts.",
                    clip(value)
                )
            }
            Self::UnknownVersion(value) => {
                write!(
                    f,
                    "v={}: this program reads version 1 of the text; try v=1.",
                    clip(value)
                )
            }
            Self::UnknownPlanet(value) => {
                let names: Vec<_> = PlanetChoice::KNOWN.iter().map(|(key, _)| *key).collect();
                write!(
                    f,
                    "planet={}: the planet has to be {} or custom; try jupiter.",
                    clip(value),
                    names.join(", ")
                )
            }
            Self::NotANumber(field, value) if value.is_empty() => {
                let key = field.spec().key;
                write!(
                    f,
                    "{key}: the value has to be a number{}",
                    try_default(*field)
                )
            }
            Self::NotANumber(field, value) => {
                write!(
                    f,
                    "{}={}: the value has to be a number{}",
                    field.spec().key,
                    clip(value),
                    try_default(*field)
                )
            }
            Self::OutOfRange(field, value) => {
                write!(
                    f,
                    "{}={}: {}{}",
                    field.spec().key,
                    clip(value),
                    range(*field),
                    try_default(*field)
                )
            }
            Self::Missing(field) => {
                let key = field.spec().key;
                write!(
                    f,
                    "{key}: a custom planet needs {}; try adding {key}=….",
                    keys(Field::is_of_custom_planet)
                )
            }
            Self::NotCustom(field, value) => {
                let key = field.spec().key;
                write!(
                    f,
                    "{key}={}: only planet=custom has a {key} of its own; try planet=custom.",
                    clip(value)
                )
            }
        }
    }
}

/// The field's range as a rule: "the periapsis has to be from 0.01 to 10000 planet radii".
fn range(field: Field) -> String {
    let spec = field.spec();
    if field.is_of_custom_planet() {
        return format!(
            "the value has to be a finite number above 0 ({})",
            spec.unit
        );
    }
    let (low, high) = (print_number(spec.min), print_number(spec.max));
    let space = if spec.unit == "°" { "" } else { " " };
    format!(
        "the value has to be from {low} to {high}{space}{}",
        spec.unit
    )
}

fn try_default(field: Field) -> String {
    field.spec().default.map_or_else(
        || "; try 1.".into(),
        |value| format!("; try {}.", print_number(value)),
    )
}

fn keys(wanted: impl Fn(Field) -> bool) -> String {
    let keys: Vec<_> = Field::ALL
        .into_iter()
        .filter(|f| wanted(*f))
        .map(|f| f.spec().key)
        .collect();
    keys.join(", ")
}

/// A value as it was given, cut where it would fill the screen.
fn clip(text: &str) -> String {
    const LONGEST: usize = 40;
    if text.chars().count() <= LONGEST {
        text.into()
    } else {
        text.chars().take(LONGEST).chain(['…']).collect()
    }
}
