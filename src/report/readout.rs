//! The tables of the page: before, after and change, a few facts of the pass, and the numbers of the present moment.

use super::number::{degrees, fixed, moment, signed, significant};
use super::quantity::{Instant, Quantity};
use super::solution::Solution;
use crate::physics::Flyby;
use crate::physics::units::{DEGREES_PER_RADIAN, SECONDS_PER_DAY};

/// A number as shown, with what stands behind it.
#[derive(Clone, Debug, PartialEq)]
pub struct Value {
    /// The rounded number, or words where there is none.
    pub text: String,
    /// Path in the JSON of `two-frames solve`, a difference of two paths, or `page.…` for what only the page shows.
    pub path: String,
    /// The unrounded number, `None` where it does not exist.
    pub value: Option<f64>,
}

/// A cell of the before / after / change table; empty where there is nothing to say.
pub type Cell = Option<Value>;

/// One line of the table.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// What it is, in words.
    pub label: String,
    /// One line more for those who do not know the word.
    pub meaning: &'static str,
    /// Unit of all three cells; empty where the cells carry their own.
    pub unit: &'static str,
    /// Before the pass.
    pub before: Cell,
    /// After the pass.
    pub after: Cell,
    /// The change.
    pub change: Cell,
}

/// A labelled value that has no before and after.
#[derive(Clone, Debug, PartialEq)]
pub struct Fact {
    /// What it is, in words.
    pub label: String,
    /// One line more for those who do not know the word.
    pub meaning: &'static str,
    /// Unit.
    pub unit: &'static str,
    /// The value.
    pub value: Value,
}

/// What stands where a strike leaves no value.
const NONE_AFTER_IMPACT: &str = "—";

/// How a quantity is rounded.
pub(super) type Rounded = fn(f64) -> String;

pub(super) fn two(value: f64) -> String {
    fixed(value, 2)
}

fn signed_two(value: f64) -> String {
    signed(value, 2)
}

fn au(value: f64) -> String {
    if value.abs() < 0.1 {
        fixed(value, 4)
    } else {
        significant_or_long(value)
    }
}

fn significant_or_long(value: f64) -> String {
    if value.abs() < 1000.0 {
        fixed(value, 2)
    } else {
        significant(value, 4)
    }
}

fn signed_au(value: f64) -> String {
    let text = au(value);
    if value > 0.0 && text.bytes().any(|b| matches!(b, b'1'..=b'9')) {
        format!("+{text}")
    } else {
        text
    }
}

pub(super) fn value(
    quantity: Quantity,
    solution: &Solution,
    rounded: Rounded,
    absent: &str,
) -> Value {
    let number = (quantity.get)(solution);
    Value {
        text: number.map_or_else(|| absent.into(), rounded),
        path: quantity.path.into(),
        value: number,
    }
}

/// The change between two quantities that have no change of their own in the JSON: its path is their difference.
fn difference(
    before: Quantity,
    after: Quantity,
    solution: &Solution,
    rounded: Rounded,
    absent: &str,
) -> Value {
    let number = (after.get)(solution)
        .zip((before.get)(solution))
        .map(|(after, before)| after - before);
    Value {
        text: number.map_or_else(|| absent.into(), rounded),
        path: format!("{}-{}", after.path, before.path),
        value: number,
    }
}

/// A number that only the page shows.
pub(super) fn of_page(path: &str, number: Option<f64>, text: String) -> Value {
    Value {
        text,
        path: format!("page.{path}"),
        value: number,
    }
}

/// The before / after / change table for both frames and the orbits round the Sun.
pub fn readouts(solution: &Solution, flyby: &Flyby) -> Vec<Row> {
    let mut rows = vec![
        relative_speed(solution),
        direction(solution, flyby),
        sun_speed(solution),
    ];
    rows.extend(orbit_rows(solution));
    rows.push(energy(solution, flyby));
    rows.push(planet_itself(solution, flyby));
    rows
}

fn relative_speed(solution: &Solution) -> Row {
    let far = |absent| value(Quantity::V_INFINITY, solution, two, absent);
    let after = if solution.strikes() {
        of_page("speed_relative_after_km_s", None, NONE_AFTER_IMPACT.into())
    } else {
        far("")
    };
    let change = (!solution.strikes()).then(|| {
        difference(
            Quantity::V_INFINITY,
            Quantity::V_INFINITY,
            solution,
            signed_two,
            "",
        )
    });
    Row {
        label: format!("Speed relative to {}, far away", solution.planet.name),
        meaning: "v-infinity: the speed before the planet's pull is felt and after it has faded.",
        unit: "km/s",
        before: Some(far("")),
        after: Some(after),
        change,
    }
}

/// The angle of the v-infinity from the planet's direction of motion, rad, whatever plane it lies in.
fn angle_from_forward(velocity: glam::DVec3) -> f64 {
    libm::atan2(libm::hypot(velocity.x, velocity.z), velocity.y)
}

fn direction(solution: &Solution, flyby: &Flyby) -> Row {
    let angle = |path: &str, velocity: glam::DVec3| {
        let angle = angle_from_forward(velocity);
        of_page(path, Some(angle * DEGREES_PER_RADIAN), degrees(angle, 1))
    };
    let turn = value(
        Quantity::TURN,
        solution,
        |deg| format!("{}° turn", fixed(deg, 1)),
        NONE_AFTER_IMPACT,
    );
    let after = if solution.strikes() {
        of_page("direction_out_deg", None, NONE_AFTER_IMPACT.into())
    } else {
        angle("direction_out_deg", flyby.velocity_out.km_s)
    };
    Row {
        label: "Direction of that motion".into(),
        meaning: "Angle from the planet's own motion: 0° is the same way, 180° is against it. The turn is the angle \
                  between before and after.",
        unit: "",
        before: Some(angle("direction_in_deg", flyby.velocity_in.km_s)),
        after: Some(after),
        change: Some(turn),
    }
}

fn sun_speed(solution: &Solution) -> Row {
    let cell = |quantity, rounded| Some(value(quantity, solution, rounded, NONE_AFTER_IMPACT));
    Row {
        label: "Speed round the Sun".into(),
        meaning: "Seen from the Sun, at the planet's distance, with the planet's own pull left out.",
        unit: "km/s",
        before: cell(Quantity::SUN_SPEED_IN, two),
        after: cell(Quantity::SUN_SPEED_OUT, two),
        change: cell(Quantity::SUN_SPEED_CHANGE, signed_two),
    }
}

/// A row of the orbits round the Sun; `open` stands where an open orbit has no such number.
fn orbit_row(
    solution: &Solution,
    label: &str,
    meaning: &'static str,
    unit: &'static str,
    pair: (Quantity, Quantity),
    open: &str,
) -> Row {
    let absent_after = if solution.strikes() {
        NONE_AFTER_IMPACT
    } else {
        open
    };
    let (rounded, signed_rounded): (Rounded, Rounded) = if unit == "°" {
        (two, signed_two)
    } else {
        (au, signed_au)
    };
    Row {
        label: label.into(),
        meaning,
        unit,
        before: Some(value(pair.0, solution, rounded, open)),
        after: Some(value(pair.1, solution, rounded, absent_after)),
        change: Some(difference(
            pair.0,
            pair.1,
            solution,
            signed_rounded,
            NONE_AFTER_IMPACT,
        )),
    }
}

fn orbit_rows(solution: &Solution) -> [Row; 5] {
    use Quantity as Q;
    let row =
        |label, meaning, unit, pair, open| orbit_row(solution, label, meaning, unit, pair, open);
    [
        row(
            "Nearest to the Sun",
            "Perihelion of the orbit round the Sun. 1 AU is the Earth's distance.",
            "AU",
            (Q::PERIHELION_BEFORE, Q::PERIHELION_AFTER),
            "none",
        ),
        row(
            "Farthest from the Sun",
            "Aphelion of the orbit round the Sun; an orbit that leaves the Sun has none.",
            "AU",
            (Q::APHELION_BEFORE, Q::APHELION_AFTER),
            "leaves",
        ),
        row(
            "Time round the Sun",
            "Period of the orbit round the Sun, in years of 365.25 days.",
            "years",
            (Q::PERIOD_BEFORE, Q::PERIOD_AFTER),
            "leaves",
        ),
        row(
            "Speed left far from the Sun",
            "What remains of the speed once the Sun's pull has faded; an orbit that stays has none.",
            "km/s",
            (Q::LEFT_BEFORE, Q::LEFT_AFTER),
            "stays",
        ),
        row(
            "Tilt of the orbit",
            "Inclination: angle between the probe's orbit and the planet's. Over 90° it runs backwards.",
            "°",
            (Q::INCLINATION_BEFORE, Q::INCLINATION_AFTER),
            "none",
        ),
    ]
}

fn energy(solution: &Solution, flyby: &Flyby) -> Row {
    let whole = |path: &str, energy: f64| of_page(path, Some(energy), fixed(energy, 1));
    let after = if solution.strikes() {
        of_page("energy_after_km2_s2", None, NONE_AFTER_IMPACT.into())
    } else {
        whole("energy_after_km2_s2", flyby.orbit_after.energy_km2_s2)
    };
    Row {
        label: "Energy round the Sun, per kg".into(),
        meaning: "Motion plus height in the Sun's pull, for each kilogram of probe. Below zero the Sun keeps it.",
        unit: "MJ",
        before: Some(whole(
            "energy_before_km2_s2",
            flyby.orbit_before.energy_km2_s2,
        )),
        after: Some(after),
        change: Some(value(
            Quantity::ENERGY_CHANGE,
            solution,
            |e| signed(e, 1),
            NONE_AFTER_IMPACT,
        )),
    }
}

/// The planet pays for what the probe gains: too little to see, but it has to be there.
fn planet_itself(solution: &Solution, flyby: &Flyby) -> Row {
    let change = flyby
        .planet_velocity_change(solution.scenario.probe_mass_kg())
        .y;
    let speed = || Some(value(Quantity::PLANET_SPEED, solution, two, ""));
    let (after, change) = if solution.strikes() {
        (
            Some(of_page(
                "planet_speed_after_km_s",
                None,
                NONE_AFTER_IMPACT.into(),
            )),
            None,
        )
    } else {
        (
            speed(),
            Some(of_page(
                "planet_speed_change_km_s",
                Some(change),
                significant(change, 2),
            )),
        )
    };
    Row {
        label: format!("{}, round the Sun", sentence_start(solution.planet.name)),
        meaning: "What the probe gains the planet loses, shared out over a mass so large that nobody could measure it.",
        unit: "km/s",
        before: speed(),
        after,
        change,
    }
}

/// A few facts of the pass.
pub fn facts(solution: &Solution, flyby: &Flyby) -> Vec<Fact> {
    let planet = flyby.encounter.planet;
    let height = flyby.encounter.periapsis_km - planet.radius_km;
    let fact = |label: &str, meaning, unit, value| Fact {
        label: label.into(),
        meaning,
        unit,
        value,
    };
    vec![
        fact(
            "Closest distance from the centre",
            "Periapsis, the point of the path nearest to the planet.",
            "km",
            value(Quantity::PERIAPSIS, solution, |km| significant(km, 6), ""),
        ),
        fact(
            "Height above the surface there",
            "Below zero: the path would lead into the planet.",
            "km",
            of_page("height_km", Some(height), significant(height, 6)),
        ),
        fact(
            "Speed there, relative to the planet",
            "The planet's pull has sped the probe up, and takes all of it back on the way out.",
            "km/s",
            value(Quantity::PERIAPSIS_SPEED, solution, two, NONE_AFTER_IMPACT),
        ),
        fact(
            "Aim distance",
            "Impact parameter b: how far from the centre it would pass if the planet did not pull.",
            "km",
            value(
                Quantity::IMPACT_PARAMETER,
                solution,
                |km| significant(km, 6),
                "",
            ),
        ),
        fact(
            "Change of velocity",
            "Length of the difference between the arrows before and after; the same in both frames.",
            "km/s",
            value(Quantity::VELOCITY_CHANGE, solution, two, NONE_AFTER_IMPACT),
        ),
        fact(
            "Eccentricity",
            "Shape of the hyperbola: just over 1 turns the path right round, far over 1 hardly bends it.",
            "",
            value(Quantity::ECCENTRICITY, solution, |e| significant(e, 4), ""),
        ),
    ]
}

/// The numbers of the present moment.
pub fn now(instant: &Instant) -> Vec<Fact> {
    let fact = |label: &str, unit, value| Fact {
        label: label.into(),
        meaning: "",
        unit,
        value,
    };
    let of = |path: &str, number: f64, text: String| of_page(path, Some(number), text);
    vec![
        fact(
            "Now",
            "",
            of(
                "now.time_d",
                instant.time_s / SECONDS_PER_DAY,
                moment(instant.time_s),
            ),
        ),
        fact(
            "From the planet's centre",
            "km",
            of(
                "now.distance_km",
                instant.distance_km,
                significant(instant.distance_km, 4),
            ),
        ),
        fact(
            "Relative to the planet",
            "km/s",
            of(
                "now.planet_speed_km_s",
                instant.planet_speed_km_s,
                two(instant.planet_speed_km_s),
            ),
        ),
        fact(
            "Round the Sun",
            "km/s",
            of(
                "now.sun_speed_km_s",
                instant.sun_speed_km_s,
                two(instant.sun_speed_km_s),
            ),
        ),
    ]
}

/// A name with a capital first letter, for the start of a sentence or a label.
pub(super) fn sentence_start(name: &str) -> String {
    let mut characters = name.chars();
    // Every planet's name is plain ASCII; full Unicode case tables would weigh 6 kB.
    let first = characters.next().map(|first| first.to_ascii_uppercase());
    first.into_iter().chain(characters).collect()
}
