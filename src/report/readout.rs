//! The tables of the page: before, after and change, a few facts of the pass, and the numbers of the present moment.

use super::number::moment;
use super::quantity::{Instant, Pass, Quantity};
use super::value::{Style, Value};
use crate::physics::units::SECONDS_PER_DAY;

/// One line of the before / after / change table; its words are in [`super::ROW_WORDS`].
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Before the pass, after it, and the change.
    pub cells: [Value; 3],
}

/// A value that has no before and after; its words are in [`super::FACT_WORDS`] or [`super::NOW_WORDS`].
#[derive(Clone, Debug, PartialEq)]
pub struct Fact {
    /// The value.
    pub value: Value,
}

/// What stands where there is no value.
const NONE: &str = "—";

/// A line of the table before a pass fills it in.
struct RowSpec {
    before: Quantity,
    after: Quantity,
    /// The change where it is a quantity of its own; otherwise it is the difference.
    change: Option<Quantity>,
    style: Style,
    /// How the change is rounded.
    change_style: Style,
    /// What an orbit without this number does instead.
    instead: &'static str,
}

const ROWS: [RowSpec; 10] = [
    RowSpec {
        before: Quantity::V_INFINITY,
        after: Quantity::RELATIVE_OUT,
        change: Some(Quantity::RELATIVE_CHANGE),
        style: Style::Hundredths,
        change_style: Style::Hundredths,
        instead: NONE,
    },
    RowSpec {
        before: Quantity::DIRECTION_IN,
        after: Quantity::DIRECTION_OUT,
        change: Some(Quantity::TURN),
        style: Style::Degrees,
        change_style: Style::Degrees,
        instead: NONE,
    },
    RowSpec {
        before: Quantity::SUN_SPEED_IN,
        after: Quantity::SUN_SPEED_OUT,
        change: Some(Quantity::SUN_SPEED_CHANGE),
        style: Style::Hundredths,
        change_style: Style::Hundredths,
        instead: NONE,
    },
    RowSpec {
        before: Quantity::PERIHELION_BEFORE,
        after: Quantity::PERIHELION_AFTER,
        change: None,
        style: Style::Wide,
        change_style: Style::Wide,
        instead: NONE,
    },
    RowSpec {
        before: Quantity::APHELION_BEFORE,
        after: Quantity::APHELION_AFTER,
        change: None,
        style: Style::Wide,
        change_style: Style::Wide,
        instead: "leaves",
    },
    RowSpec {
        before: Quantity::PERIOD_BEFORE,
        after: Quantity::PERIOD_AFTER,
        change: None,
        style: Style::Wide,
        change_style: Style::Wide,
        instead: "leaves",
    },
    RowSpec {
        before: Quantity::LEFT_BEFORE,
        after: Quantity::LEFT_AFTER,
        change: None,
        style: Style::Hundredths,
        change_style: Style::Hundredths,
        instead: "stays",
    },
    RowSpec {
        before: Quantity::INCLINATION_BEFORE,
        after: Quantity::INCLINATION_AFTER,
        change: None,
        style: Style::Hundredths,
        change_style: Style::Hundredths,
        instead: NONE,
    },
    RowSpec {
        before: Quantity::ENERGY_BEFORE,
        after: Quantity::ENERGY_AFTER,
        change: Some(Quantity::ENERGY_CHANGE),
        style: Style::Tenths,
        change_style: Style::Tenths,
        instead: NONE,
    },
    RowSpec {
        before: Quantity::PLANET_SPEED,
        after: Quantity::PLANET_SPEED_AFTER,
        change: Some(Quantity::PLANET_SPEED_CHANGE),
        style: Style::Hundredths,
        change_style: Style::Rough,
        instead: NONE,
    },
];

/// The before / after / change table for both frames and the orbits round the Sun.
pub fn readouts(pass: &Pass<'_>) -> Vec<Row> {
    ROWS.iter().map(|spec| spec.fill(pass)).collect()
}

impl RowSpec {
    fn fill(&self, pass: &Pass<'_>) -> Row {
        let after = if pass.flyby.strikes() {
            NONE
        } else {
            self.instead
        };
        // A turn has no sign: it is an angle between two directions.
        let turn = self.change_style == Style::Degrees;
        let change = match self.change {
            Some(quantity) if turn => Value::of(quantity, pass, self.change_style, NONE),
            Some(quantity) => Value::change(quantity, pass, self.change_style, NONE),
            None => Value::difference(self.before, self.after, pass, self.change_style, NONE),
        };
        Row {
            cells: [
                Value::of(self.before, pass, self.style, self.instead),
                Value::of(self.after, pass, self.style, after),
                change,
            ],
        }
    }
}

/// The facts before a pass fills them in.
const FACTS: [(Quantity, Style); 6] = [
    (Quantity::PERIAPSIS, Style::Kilometres),
    (Quantity::HEIGHT, Style::Kilometres),
    (Quantity::PERIAPSIS_SPEED, Style::Hundredths),
    (Quantity::IMPACT_PARAMETER, Style::Kilometres),
    (Quantity::VELOCITY_CHANGE, Style::Hundredths),
    (Quantity::ECCENTRICITY, Style::Wide),
];

/// A few facts of the pass.
pub fn facts(pass: &Pass<'_>) -> Vec<Fact> {
    let fill = |&(quantity, style): &(Quantity, Style)| Fact {
        value: Value::of(quantity, pass, style, NONE),
    };
    FACTS.iter().map(fill).collect()
}

/// The numbers of the present moment.
pub fn now(instant: &Instant) -> Vec<Fact> {
    let fact = |path, number, text| Fact {
        value: Value::of_page(path, number, text),
    };
    let styled = |path, number, style: Style| fact(path, number, style.text(number));
    vec![
        fact(
            "page.now.time_d",
            instant.time_s / SECONDS_PER_DAY,
            moment(instant.time_s),
        ),
        styled(
            "page.now.distance_km",
            instant.distance_km,
            Style::Kilometres,
        ),
        styled(
            "page.now.planet_speed_km_s",
            instant.planet_speed_km_s,
            Style::Hundredths,
        ),
        styled(
            "page.now.sun_speed_km_s",
            instant.sun_speed_km_s,
            Style::Hundredths,
        ),
    ]
}
