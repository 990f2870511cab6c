//! One setting varied over a range, as a table for a spreadsheet (RFC 4180, units in the header).

use std::fmt::Write as _;

use super::quantity::{Pass, Quantity};
use super::refusal::refusal;
use crate::physics::{Flyby, FlybyError};
use crate::scenario::{Field, Notice, Scale, Scenario, print_number};

/// Which field goes from where to where, in how many steps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sweep {
    /// The field that varies.
    pub field: Field,
    /// First value, in the field's unit.
    pub from: f64,
    /// Last value.
    pub to: f64,
    /// Number of steps, at least 1; the table has one row more.
    pub steps: u32,
}

/// Why a sweep has no table.
#[derive(Clone, Debug, PartialEq)]
pub enum SweepError {
    /// A value of the sweep is outside the field's range.
    Setting(Notice),
    /// A value of the sweep has no flyby.
    Flyby(FlybyError),
}

impl std::fmt::Display for SweepError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Setting(notice) => notice.fmt(f),
            Self::Flyby(error) => f.write_str(&refusal(error)),
        }
    }
}

impl std::error::Error for SweepError {}

/// The columns after the varied one and the outcome: header and quantity.
const COLUMNS: [(&str, Quantity); 12] = [
    ("turn [deg]", Quantity::TURN),
    ("impact parameter [km]", Quantity::IMPACT_PARAMETER),
    ("periapsis [km]", Quantity::PERIAPSIS),
    (
        "speed at periapsis, planet frame [km/s]",
        Quantity::PERIAPSIS_SPEED,
    ),
    ("speed in, Sun frame [km/s]", Quantity::SUN_SPEED_IN),
    ("speed out, Sun frame [km/s]", Quantity::SUN_SPEED_OUT),
    ("speed change, Sun frame [km/s]", Quantity::SUN_SPEED_CHANGE),
    (
        "energy change, Sun frame [km^2/s^2]",
        Quantity::ENERGY_CHANGE,
    ),
    ("perihelion after [AU]", Quantity::PERIHELION_AFTER),
    ("aphelion after [AU]", Quantity::APHELION_AFTER),
    ("inclination after [deg]", Quantity::INCLINATION_AFTER),
    ("speed left far from the Sun [km/s]", Quantity::LEFT_AFTER),
];

impl Sweep {
    /// The value at a step, evenly spread on the field's own scale. Both ends are exact.
    fn value(&self, step: u32) -> f64 {
        let fraction = f64::from(step) / f64::from(self.steps);
        match self.field.spec().scale {
            _ if step == 0 => self.from,
            _ if step == self.steps => self.to,
            Scale::Logarithmic if self.from > 0.0 => {
                self.from * libm::pow(self.to / self.from, fraction)
            }
            _ => self.from + (self.to - self.from) * fraction,
        }
    }
}

/// The table of a sweep. A value that does not exist leaves its cell empty.
///
/// # Errors
/// [`SweepError`] when a value of the sweep cannot be set or solved.
pub fn csv(scenario: &Scenario, sweep: &Sweep) -> Result<String, SweepError> {
    let mut table = header(sweep.field);
    for step in 0..=sweep.steps {
        let mut scenario = *scenario;
        let value = sweep.value(step);
        scenario
            .set(sweep.field, value)
            .map_err(SweepError::Setting)?;
        let encounter = scenario.encounter().map_err(SweepError::Flyby)?;
        let flyby = Flyby::solve(&encounter).map_err(SweepError::Flyby)?;
        let pass = Pass {
            flyby: &flyby,
            probe_mass_kg: scenario.probe_mass_kg(),
        };
        push_row(&mut table, value, &pass);
    }
    Ok(table)
}

fn header(field: Field) -> String {
    let spec = field.spec();
    let unit = if spec.unit == "°" { "deg" } else { spec.unit };
    let names = COLUMNS
        .iter()
        .map(|(name, _)| quoted(name))
        .collect::<Vec<_>>()
        .join(",");
    format!(
        "{},outcome,{names}\r\n",
        quoted(&format!("{} [{unit}]", spec.key))
    )
}

/// A text cell, quoted where it holds a comma.
fn quoted(text: &str) -> String {
    if text.contains(',') {
        format!("\"{text}\"")
    } else {
        text.into()
    }
}

fn push_row(table: &mut String, value: f64, pass: &Pass<'_>) {
    let outcome = if pass.flyby.strikes() {
        "strikes"
    } else {
        "passes"
    };
    let _ = write!(table, "{},{outcome}", print_number(value));
    for (_, quantity) in COLUMNS {
        table.push(',');
        if let Some(number) = (quantity.get)(pass) {
            table.push_str(&print_number(number));
        }
    }
    table.push_str("\r\n");
}
