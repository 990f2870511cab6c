//! The numbers that a person can set: key, name, unit, range and default of each, in one place for every door.

use super::notice::Notice;
use crate::decimal::{parse, round_significant, within};

/// A number of a scenario. The order is that of the scenario text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each field is described in its Spec")]
pub enum Field {
    Gm,
    Radius,
    Orbit,
    VInfinity,
    Approach,
    Crank,
    Periapsis,
    Aim,
    ProbeMass,
}

/// How a slider spreads its range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Scale {
    /// Equal steps.
    Linear,
    /// Equal ratios.
    Logarithmic,
}

/// All that is known of a field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spec {
    /// Key in the scenario text.
    pub key: &'static str,
    /// Name on the page.
    pub label: &'static str,
    /// Unit as it is written after the number.
    pub unit: &'static str,
    /// Smallest value allowed.
    pub min: f64,
    /// Largest value allowed.
    pub max: f64,
    /// The value when none is given; `None` for a custom planet's numbers, which have to be given.
    pub default: Option<f64>,
    /// The part of the range that the slider covers.
    pub slider: (f64, f64),
    /// How the slider spreads it.
    pub scale: Scale,
    /// What the − and + buttons change: a difference on a linear scale, a ratio on a logarithmic one.
    pub step: f64,
}

impl Field {
    /// Every field, in the order of the scenario text.
    pub const ALL: [Self; 9] = [
        Self::Gm,
        Self::Radius,
        Self::Orbit,
        Self::VInfinity,
        Self::Approach,
        Self::Crank,
        Self::Periapsis,
        Self::Aim,
        Self::ProbeMass,
    ];

    /// The field's description.
    pub fn spec(self) -> &'static Spec {
        match self {
            Self::Gm => &GM,
            Self::Radius => &RADIUS,
            Self::Orbit => &ORBIT,
            Self::VInfinity => &V_INFINITY,
            Self::Approach => &APPROACH,
            Self::Crank => &CRANK,
            Self::Periapsis => &PERIAPSIS,
            Self::Aim => &AIM,
            Self::ProbeMass => &PROBE_MASS,
        }
    }

    /// The field with this key.
    pub fn from_key(key: &str) -> Option<Self> {
        let mut fields = Self::ALL.iter().copied();
        fields.find(|field| field.spec().key == key)
    }

    /// Whether the field describes a custom planet.
    pub fn is_of_custom_planet(self) -> bool {
        self.spec().default.is_none()
    }

    /// The value that a text stands for, if the field may have it.
    ///
    /// # Errors
    /// A [`Notice`] that repeats the text as it was given.
    pub fn read(self, text: &str) -> Result<f64, Notice> {
        let number: Option<f64> = parse(text);
        match number {
            None => Err(Notice::NotANumber(self, text.into())),
            Some(number) => self
                .check(number)
                .map_err(|_| Notice::OutOfRange(self, text.into())),
        }
    }

    /// The value itself if the field may have it.
    ///
    /// # Errors
    /// A [`Notice`] naming key, value and rule.
    pub fn check(self, value: f64) -> Result<f64, Notice> {
        let spec = self.spec();
        let allowed = value.is_finite() && value >= spec.min && value <= spec.max;
        if allowed {
            // A zero loses its sign: "-0" would be another text for the same pass.
            Ok(value + 0.0)
        } else {
            Err(Notice::OutOfRange(self, super::print_number(value)))
        }
    }
}

impl Spec {
    /// What a range control needs: lowest and highest position and the step between. On a linear scale positions are
    /// values; on a logarithmic one they count thousandths of the way.
    pub fn slider_range(&self) -> (f64, f64, f64) {
        match self.scale {
            Scale::Linear => (self.slider.0, self.slider.1, self.step),
            Scale::Logarithmic => (0.0, THOUSANDTHS, 1.0),
        }
    }

    /// The slider's position for a value; beyond the slider's ends it stays at the end.
    pub fn slider_position(&self, value: f64) -> f64 {
        let (low, high) = self.slider;
        match self.scale {
            Scale::Linear => within(value, low, high),
            Scale::Logarithmic => {
                let part = logarithm(value / low) / logarithm(high / low);
                THOUSANDTHS * within(part, 0.0, 1.0)
            }
        }
    }

    /// The value at a slider's position.
    pub fn value_at(&self, position: f64) -> f64 {
        let (low, high) = self.slider;
        match self.scale {
            Scale::Linear => self.rounded(within(position, low, high)),
            Scale::Logarithmic => {
                let part = within(position / THOUSANDTHS, 0.0, 1.0);
                self.rounded(low * power(high / low, part))
            }
        }
    }

    /// A value rounded to what a person can tell apart on the slider.
    pub fn rounded(&self, value: f64) -> f64 {
        let digits = if self.scale == Scale::Linear { 4 } else { 3 };
        within(round_significant(value, digits), self.min, self.max)
    }

    /// The value one press of − (`presses = -1`) or + away, kept within the range.
    pub fn stepped(&self, value: f64, presses: f64) -> f64 {
        let moved = match self.scale {
            Scale::Linear => ((value + self.step * presses) / self.step).round() * self.step,
            Scale::Logarithmic => round_significant(value * power(self.step, presses), 3),
        };
        // 12 digits drop the rounding of the step itself (0.30000000000000004).
        within(round_significant(moved, 12), self.min, self.max)
    }
}

/// `base` to the power of `exponent`, to more digits than a slider's value has.
fn power(base: f64, exponent: f64) -> f64 {
    1.0 + libm::expm1(exponent * logarithm(base))
}

/// The natural logarithm. By `log1p`, as [`power`] is by `expm1`, because the physics needs those two anyway.
fn logarithm(number: f64) -> f64 {
    libm::log1p(number - 1.0)
}

/// Positions of a logarithmic slider.
const THOUSANDTHS: f64 = 1000.0;

/// The largest number that can be given for a custom planet.
const LARGEST: f64 = f64::MAX;
/// The smallest: anything above 0.
const ABOVE_ZERO: f64 = f64::MIN_POSITIVE;

const GM: Spec = Spec {
    key: "gm",
    label: "Gravitational parameter, GM",
    unit: "km³/s²",
    min: ABOVE_ZERO,
    max: LARGEST,
    default: None,
    slider: (1e3, 1e9),
    scale: Scale::Logarithmic,
    step: 1.1,
};
const RADIUS: Spec = Spec {
    key: "radius",
    label: "Radius",
    unit: "km",
    min: ABOVE_ZERO,
    max: LARGEST,
    default: None,
    slider: (500.0, 200_000.0),
    scale: Scale::Logarithmic,
    step: 1.1,
};
const ORBIT: Spec = Spec {
    key: "orbit",
    label: "Orbit radius",
    unit: "AU",
    min: ABOVE_ZERO,
    max: LARGEST,
    default: None,
    slider: (0.1, 50.0),
    scale: Scale::Logarithmic,
    step: 1.1,
};
const V_INFINITY: Spec = Spec {
    key: "v-infinity",
    label: "Speed relative to the planet, v∞",
    unit: "km/s",
    min: 0.01,
    max: 100.0,
    default: Some(9.0),
    slider: (0.1, 40.0),
    scale: Scale::Linear,
    step: 0.1,
};
const APPROACH: Spec = Spec {
    key: "approach",
    label: "Approach angle",
    unit: "°",
    min: -180.0,
    max: 180.0,
    default: Some(129.0),
    slider: (-180.0, 180.0),
    scale: Scale::Linear,
    step: 1.0,
};
const CRANK: Spec = Spec {
    key: "crank",
    label: "Crank angle",
    unit: "°",
    min: -180.0,
    max: 180.0,
    default: Some(0.0),
    slider: (-180.0, 180.0),
    scale: Scale::Linear,
    step: 1.0,
};
const PERIAPSIS: Spec = Spec {
    key: "periapsis",
    label: "Periapsis",
    unit: "planet radii",
    min: 0.01,
    max: 10_000.0,
    default: Some(8.0),
    slider: (0.5, 200.0),
    scale: Scale::Logarithmic,
    step: 1.05,
};
const AIM: Spec = Spec {
    key: "aim",
    label: "Aim angle",
    unit: "°",
    min: -180.0,
    max: 180.0,
    default: Some(0.0),
    slider: (-180.0, 180.0),
    scale: Scale::Linear,
    step: 1.0,
};
const PROBE_MASS: Spec = Spec {
    key: "probe-mass",
    label: "Probe mass",
    unit: "kg",
    min: 1e-3,
    max: 1e9,
    default: Some(480.0),
    slider: (1.0, 1e6),
    scale: Scale::Logarithmic,
    step: 1.1,
};
