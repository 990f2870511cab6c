//! A range of numbers spread along an axis.

use crate::decimal::within;

/// A range, spread in equal steps or in equal ratios.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// The number at the start.
    pub low: f64,
    /// The number at the end; above `low`.
    pub high: f64,
    /// Logarithm of their ratio on an axis of equal ratios.
    ratio: Option<f64>,
}

impl Spread {
    /// Equal steps.
    pub fn linear(low: f64, high: f64) -> Self {
        Self {
            low,
            high,
            ratio: None,
        }
    }

    /// Equal ratios; both ends above 0.
    pub fn logarithmic(low: f64, high: f64) -> Self {
        Self {
            low,
            high,
            ratio: Some(logarithm(high / low)),
        }
    }

    /// Whether the steps are equal ratios.
    pub fn is_logarithmic(&self) -> bool {
        self.ratio.is_some()
    }

    /// How much of the way from start to end a number is, kept from 0 to 1.
    pub fn part(&self, value: f64) -> f64 {
        let part = match self.ratio {
            Some(ratio) => logarithm(value.max(self.low) / self.low) / ratio,
            None => (value - self.low) / (self.high - self.low),
        };
        within(part, 0.0, 1.0)
    }

    /// The number at a part of the way.
    pub fn at(&self, part: f64) -> f64 {
        match self.ratio {
            Some(ratio) => self.low * (1.0 + libm::expm1(part * ratio)),
            None => self.low + (self.high - self.low) * part,
        }
    }
}

/// The natural logarithm of a number of at least 1, by `log1p` because the physics needs that one anyway.
fn logarithm(number: f64) -> f64 {
    libm::log1p(number - 1.0)
}
