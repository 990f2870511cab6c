//! A sentence whose numbers know what they are, so that a page can mark each with its path and unrounded value.

use std::fmt;

use super::quantity::{Pass, Quantity};
use super::value::{Style, Value};

/// A number of a sentence before a pass fills it in: what it is and how it is rounded.
pub(super) type Number = (Quantity, Style);

pub(super) const FAR: Number = (Quantity::V_INFINITY, Style::Hundredths);
pub(super) const FAR_AFTER: Number = (Quantity::RELATIVE_OUT, Style::Hundredths);
pub(super) const TOP: Number = (Quantity::PERIAPSIS_SPEED, Style::Hundredths);
pub(super) const STRIKE: Number = (Quantity::STRIKE_SPEED, Style::Hundredths);
pub(super) const BEFORE: Number = (Quantity::SUN_SPEED_IN, Style::Hundredths);
pub(super) const AFTER: Number = (Quantity::SUN_SPEED_OUT, Style::Hundredths);
pub(super) const CHANGE: Number = (Quantity::SUN_SPEED_CHANGE, Style::Change);
pub(super) const PLANET: Number = (Quantity::PLANET_SPEED, Style::Hundredths);
pub(super) const TURN: Number = (Quantity::TURN, Style::Degrees);
pub(super) const RADII: Number = (Quantity::PERIAPSIS_RADII, Style::Chosen);

/// A piece of a sentence.
#[derive(Clone, Debug, PartialEq)]
pub enum Piece {
    /// Words as they are.
    Words(String),
    /// A number as shown, with what stands behind it.
    Number(Value),
}

/// A sentence in pieces; as text it is their join.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sentence(Vec<Piece>);

impl Sentence {
    /// The pieces in order.
    pub fn pieces(&self) -> &[Piece] {
        &self.0
    }

    /// The sentence as plain text.
    pub fn text(&self) -> String {
        let mut text = String::new();
        for piece in &self.0 {
            text += match piece {
                Piece::Words(words) => words,
                Piece::Number(value) => &value.text,
            };
        }
        text
    }

    /// A sentence from words in which `@` stands for the planet's name, and `#` for one number after the other.
    pub(super) fn new(words: &str, pass: &Pass<'_>, numbers: Vec<Value>) -> Self {
        let words = with_name(words, pass.flyby.encounter.planet.name);
        let mut numbers = numbers.into_iter().map(Piece::Number);
        let mut pieces = Vec::new();
        for words in words.split('#') {
            if !pieces.is_empty()
                && let Some(number) = numbers.next()
            {
                pieces.push(number);
            }
            pieces.push(Piece::Words(words.into()));
        }
        Self(pieces)
    }

    /// A sentence whose numbers are quantities of the pass, each in its style.
    pub(super) fn of(words: &str, pass: &Pass<'_>, numbers: &[Number]) -> Self {
        let mut values = Vec::new();
        for (quantity, style) in numbers {
            values.push(Value::of(*quantity, pass, *style, ""));
        }
        Self::new(words, pass, values)
    }
}

/// Words with the planet's name for each `@`, with a capital letter at the very start.
pub(super) fn with_name(words: &str, name: &str) -> String {
    let mut text = words.replace('@', name);
    // Every planet's name is plain ASCII; full Unicode case tables would weigh 6 kB.
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    text
}

impl fmt::Display for Sentence {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text())
    }
}
