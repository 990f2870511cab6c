//! A number as shown, with what stands behind it.

use super::number::{fixed, short, signed, significant};
use super::quantity::{Pass, Quantity};

/// A number as shown, with what stands behind it.
#[derive(Clone, Debug, PartialEq)]
pub struct Value {
    /// The rounded number, or words where there is none.
    pub text: String,
    /// Path in the JSON of `two-frames solve`, a difference of two paths joined by a minus sign, or `page.…` for what
    /// only the page shows.
    pub path: String,
    /// The unrounded number, `None` where it does not exist.
    pub value: Option<f64>,
}

/// How a number is rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Style {
    /// Two decimals: speeds in km/s, tilts.
    Hundredths,
    /// One decimal and a degree sign.
    Degrees,
    /// One decimal: energies.
    Tenths,
    /// Distances and times that run from thousandths to thousands.
    Wide,
    /// Lengths in km: to the km as far as six digits go.
    Kilometres,
    /// Two digits, whatever the size.
    Rough,
    /// A number that a person chose, without trailing zeros.
    Chosen,
    /// Two decimals and a sign: changes of speed. One that rounds to zero has no sign.
    Change,
}

impl Style {
    /// The number as text.
    pub fn text(self, value: f64) -> String {
        match self {
            Self::Hundredths => fixed(value, 2),
            Self::Degrees => fixed(value, 1) + "°",
            Self::Tenths => fixed(value, 1),
            Self::Wide if value.abs() < 0.1 => fixed(value, 4),
            Self::Wide if value.abs() < 1000.0 => fixed(value, 2),
            Self::Wide => significant(value, 4),
            Self::Kilometres => significant(value, 6),
            Self::Rough => significant(value, 2),
            Self::Chosen => short(value, 3),
            Self::Change => Self::Hundredths.signed_text(value),
        }
    }

    /// The number as text with its sign, for a change; one that rounds to zero has none.
    pub fn signed_text(self, value: f64) -> String {
        signed(self.text(value), value)
    }
}

impl Value {
    /// A quantity of a pass; `absent` stands where it does not exist.
    pub(super) fn of(quantity: Quantity, pass: &Pass<'_>, style: Style, absent: &str) -> Self {
        let value = (quantity.get)(pass);
        let text = value.map_or_else(|| absent.into(), |value| style.text(value));
        Self {
            text,
            path: quantity.path.into(),
            value,
        }
    }

    /// A quantity that is a change: with its sign.
    pub(super) fn change(quantity: Quantity, pass: &Pass<'_>, style: Style, absent: &str) -> Self {
        let mut shown = Self::of(quantity, pass, style, absent);
        if let Some(value) = shown.value {
            shown.text = style.signed_text(value);
        }
        shown
    }

    /// The change between two quantities; its path is their difference.
    pub(super) fn difference(
        before: Quantity,
        after: Quantity,
        pass: &Pass<'_>,
        style: Style,
        absent: &str,
    ) -> Self {
        let value = (after.get)(pass)
            .zip((before.get)(pass))
            .map(|(after, before)| after - before);
        Self {
            text: value.map_or_else(|| absent.into(), |value| style.signed_text(value)),
            path: [after.path, "-", before.path].concat(),
            value,
        }
    }

    /// A number that only the page shows.
    pub(super) fn of_page(path: &str, value: f64, text: String) -> Self {
        Self {
            text,
            path: path.into(),
            value: Some(value),
        }
    }
}
