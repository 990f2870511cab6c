//! What each outcome of a pass is called, and how its number is shown.

use super::value::Style;
use crate::physics::Measure;
use crate::physics::units::{DEGREES_PER_RADIAN, KM_PER_AU};

/// All that is said of an outcome.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasureWords {
    /// The outcome.
    pub measure: Measure,
    /// Its word on the command line and in the page's list.
    pub key: &'static str,
    /// Its name.
    pub label: &'static str,
    /// The unit that it is shown in.
    pub unit: &'static str,
    /// How many of that unit one core unit is.
    pub factor: f64,
    /// How it is rounded.
    pub style: Style,
}

impl MeasureWords {
    /// Every outcome, in the order of the page's list.
    pub const ALL: [Self; 7] = [
        words(
            Measure::SpeedChange,
            "speed-change",
            "Change of speed round the Sun",
            ("km/s", 1.0, Style::Change),
        ),
        words(
            Measure::EnergyChange,
            "energy-change",
            "Change of energy round the Sun",
            ("MJ per kg", 1.0, Style::Tenths),
        ),
        words(
            Measure::Aphelion,
            "aphelion",
            "Farthest from the Sun afterwards",
            ("AU", 1.0 / KM_PER_AU, Style::Wide),
        ),
        words(
            Measure::Perihelion,
            "perihelion",
            "Nearest to the Sun afterwards",
            ("AU", 1.0 / KM_PER_AU, Style::Wide),
        ),
        words(
            Measure::Inclination,
            "inclination",
            "Tilt of the orbit afterwards",
            ("°", DEGREES_PER_RADIAN, Style::Tenths),
        ),
        words(
            Measure::Turn,
            "turn",
            "Turn of the path round the planet",
            ("°", DEGREES_PER_RADIAN, Style::Tenths),
        ),
        words(
            Measure::VelocityChange,
            "velocity-change",
            "Change of velocity (delta-v)",
            ("km/s", 1.0, Style::Hundredths),
        ),
    ];

    /// The words of an outcome.
    pub fn of(measure: Measure) -> &'static Self {
        static ALL: [MeasureWords; 7] = MeasureWords::ALL;
        ALL.iter()
            .find(|words| words.measure == measure)
            .unwrap_or(&ALL[0])
    }

    /// The outcome with this key.
    pub fn from_key(key: &str) -> Option<Measure> {
        let mut words = Self::ALL.iter();
        words
            .find(|words| words.key == key)
            .map(|words| words.measure)
    }
}

const fn words(
    measure: Measure,
    key: &'static str,
    label: &'static str,
    (unit, factor, style): (&'static str, f64, Style),
) -> MeasureWords {
    MeasureWords {
        measure,
        key,
        label,
        unit,
        factor,
        style,
    }
}
