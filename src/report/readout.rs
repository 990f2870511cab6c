//! The tables of the page: before, after and change, a few facts of the pass, and the numbers of the present moment.

use super::number::moment;
use super::quantity::{Instant, Pass, Quantity};
use super::sentence::with_name;
use super::value::{Style, Value};
use crate::physics::units::SECONDS_PER_DAY;

/// One line of the before / after / change table.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// What it is, in words.
    pub label: String,
    /// One line more for those who do not know the word.
    pub meaning: &'static str,
    /// Unit of all three cells; empty where the cells carry their own.
    pub unit: &'static str,
    /// Before the pass, after it, and the change.
    pub cells: [Value; 3],
}

/// A labelled value that has no before and after.
#[derive(Clone, Debug, PartialEq)]
pub struct Fact {
    /// What it is, in words.
    pub label: &'static str,
    /// One line more for those who do not know the word.
    pub meaning: &'static str,
    /// Unit.
    pub unit: &'static str,
    /// The value.
    pub value: Value,
}

/// What stands where there is no value.
const NONE: &str = "—";

/// A line of the table before a pass fills it in.
struct RowSpec {
    /// `@` stands for the planet's name.
    label: &'static str,
    meaning: &'static str,
    unit: &'static str,
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
        label: "Speed relative to @, far away",
        meaning: "v-infinity: the speed before the planet's pull is felt and after it has faded.",
        unit: "km/s",
        before: Quantity::V_INFINITY,
        after: Quantity::RELATIVE_OUT,
        change: Some(Quantity::RELATIVE_CHANGE),
        style: Style::Hundredths,
        change_style: Style::Hundredths,
        instead: NONE,
    },
    RowSpec {
        label: "Direction of that motion, and turn",
        meaning: "Angle from the planet's own motion, + outward, − sunward. The turn is the angle between before and after.",
        unit: "",
        before: Quantity::DIRECTION_IN,
        after: Quantity::DIRECTION_OUT,
        change: Some(Quantity::TURN),
        style: Style::Degrees,
        change_style: Style::Degrees,
        instead: NONE,
    },
    RowSpec {
        label: "Speed round the Sun",
        meaning: "Seen from the Sun, at the planet's distance, with the planet's own pull left out.",
        unit: "km/s",
        before: Quantity::SUN_SPEED_IN,
        after: Quantity::SUN_SPEED_OUT,
        change: Some(Quantity::SUN_SPEED_CHANGE),
        style: Style::Hundredths,
        change_style: Style::Hundredths,
        instead: NONE,
    },
    RowSpec {
        label: "Nearest to the Sun",
        meaning: "Perihelion of the orbit round the Sun. 1 AU is the Earth's distance.",
        unit: "AU",
        before: Quantity::PERIHELION_BEFORE,
        after: Quantity::PERIHELION_AFTER,
        change: None,
        style: Style::Wide,
        change_style: Style::Wide,
        instead: NONE,
    },
    RowSpec {
        label: "Farthest from the Sun",
        meaning: "Aphelion of the orbit round the Sun; an orbit that leaves the Sun has none.",
        unit: "AU",
        before: Quantity::APHELION_BEFORE,
        after: Quantity::APHELION_AFTER,
        change: None,
        style: Style::Wide,
        change_style: Style::Wide,
        instead: "leaves",
    },
    RowSpec {
        label: "Time round the Sun",
        meaning: "Period of the orbit round the Sun, in years of 365.25 days.",
        unit: "years",
        before: Quantity::PERIOD_BEFORE,
        after: Quantity::PERIOD_AFTER,
        change: None,
        style: Style::Wide,
        change_style: Style::Wide,
        instead: "leaves",
    },
    RowSpec {
        label: "Speed left far from the Sun",
        meaning: "What remains of the speed once the Sun's pull has faded; an orbit that stays has none.",
        unit: "km/s",
        before: Quantity::LEFT_BEFORE,
        after: Quantity::LEFT_AFTER,
        change: None,
        style: Style::Hundredths,
        change_style: Style::Hundredths,
        instead: "stays",
    },
    RowSpec {
        label: "Tilt of the orbit",
        meaning: "Inclination: angle between the probe's orbit and the planet's. Over 90° it runs backwards.",
        unit: "°",
        before: Quantity::INCLINATION_BEFORE,
        after: Quantity::INCLINATION_AFTER,
        change: None,
        style: Style::Hundredths,
        change_style: Style::Hundredths,
        instead: NONE,
    },
    RowSpec {
        label: "Energy round the Sun, per kg",
        meaning: "Motion plus height in the Sun's pull, for each kilogram of probe. Below zero the Sun keeps it.",
        unit: "MJ",
        before: Quantity::ENERGY_BEFORE,
        after: Quantity::ENERGY_AFTER,
        change: Some(Quantity::ENERGY_CHANGE),
        style: Style::Tenths,
        change_style: Style::Tenths,
        instead: NONE,
    },
    RowSpec {
        label: "Speed of @ itself",
        meaning: "What the probe gains the planet loses, with a mass so large that nobody could measure it.",
        unit: "km/s",
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
            label: with_name(self.label, pass.flyby.encounter.planet.name),
            meaning: self.meaning,
            unit: self.unit,
            cells: [
                Value::of(self.before, pass, self.style, self.instead),
                Value::of(self.after, pass, self.style, after),
                change,
            ],
        }
    }
}

/// A fact before a pass fills it in: label, meaning, unit, quantity, style.
type FactSpec = (&'static str, &'static str, &'static str, Quantity, Style);

const FACTS: [FactSpec; 6] = [
    (
        "Closest distance from the centre",
        "Periapsis, the point of the path nearest to the planet.",
        "km",
        Quantity::PERIAPSIS,
        Style::Kilometres,
    ),
    (
        "Height above the surface there",
        "Below zero: the path would lead into the planet.",
        "km",
        Quantity::HEIGHT,
        Style::Kilometres,
    ),
    (
        "Speed there, relative to the planet",
        "The planet's pull has sped the probe up, and takes all of it back on the way out.",
        "km/s",
        Quantity::PERIAPSIS_SPEED,
        Style::Hundredths,
    ),
    (
        "Aim distance",
        "Impact parameter b: how far from the centre it would pass if the planet did not pull.",
        "km",
        Quantity::IMPACT_PARAMETER,
        Style::Kilometres,
    ),
    (
        "Change of velocity",
        "Delta-v: length of the difference between the arrows before and after; the same in both frames.",
        "km/s",
        Quantity::VELOCITY_CHANGE,
        Style::Hundredths,
    ),
    (
        "Eccentricity",
        "Shape of the hyperbola: just over 1 turns the path right round, far over 1 hardly bends it.",
        "",
        Quantity::ECCENTRICITY,
        Style::Wide,
    ),
];

/// A few facts of the pass.
pub fn facts(pass: &Pass<'_>) -> Vec<Fact> {
    let fill = |&(label, meaning, unit, quantity, style): &FactSpec| Fact {
        label,
        meaning,
        unit,
        value: Value::of(quantity, pass, style, NONE),
    };
    FACTS.iter().map(fill).collect()
}

/// The numbers of the present moment.
pub fn now(instant: &Instant) -> Vec<Fact> {
    let fact = |label, unit, path: &str, number, style: Style| Fact {
        label,
        meaning: "",
        unit,
        value: Value::of_page(path, number, style.text(number)),
    };
    let days = instant.time_s / SECONDS_PER_DAY;
    let time = Value::of_page("page.now.time_d", days, moment(instant.time_s));
    vec![
        Fact {
            label: "Now",
            meaning: "",
            unit: "",
            value: time,
        },
        fact(
            "From the planet's centre",
            "km",
            "page.now.distance_km",
            instant.distance_km,
            Style::Kilometres,
        ),
        fact(
            "Relative to the planet",
            "km/s",
            "page.now.planet_speed_km_s",
            instant.planet_speed_km_s,
            Style::Hundredths,
        ),
        fact(
            "Round the Sun",
            "km/s",
            "page.now.sun_speed_km_s",
            instant.sun_speed_km_s,
            Style::Hundredths,
        ),
    ]
}
