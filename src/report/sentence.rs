//! A sentence whose numbers know what they are, so that a page can mark each with its path and unrounded value.

use std::fmt;

use super::value::Value;

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

    pub(super) fn of(words: impl Into<String>) -> Self {
        Self::default().words(words)
    }

    pub(super) fn words(mut self, words: impl Into<String>) -> Self {
        self.0.push(Piece::Words(words.into()));
        self
    }

    pub(super) fn number(mut self, value: Value) -> Self {
        self.0.push(Piece::Number(value));
        self
    }
}

impl fmt::Display for Sentence {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|piece| match piece {
            Piece::Words(words) => f.write_str(words),
            Piece::Number(value) => f.write_str(&value.text),
        })
    }
}
