//! What the lines of the page's tables are called. They stand in its `index.html`, so that they are no part of the core's
//! download; here they are for whoever has no page, and for the test that holds the two together.

/// The words of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LineWords {
    /// What it is; `@` stands for the planet's name.
    pub label: &'static str,
    /// One line more for those who do not know the word; empty where there is nothing to explain.
    pub meaning: &'static str,
    /// Unit; empty where the values carry their own.
    pub unit: &'static str,
}

/// The lines of the before / after / change table.
pub const ROW_WORDS: [LineWords; 10] = [
    line(
        "Speed relative to @, far away",
        "v-infinity: the speed before the planet's pull is felt and after it has faded.",
        "km/s",
    ),
    line(
        "Direction of that motion, and turn",
        "Angle from the planet's own motion, + outward, − sunward. The turn is the angle between before and after.",
        "",
    ),
    line(
        "Speed round the Sun",
        "Seen from the Sun, at the planet's distance, with the planet's own pull left out.",
        "km/s",
    ),
    line(
        "Nearest to the Sun",
        "Perihelion of the orbit round the Sun. 1 AU is the Earth's distance.",
        "AU",
    ),
    line(
        "Farthest from the Sun",
        "Aphelion of the orbit round the Sun; an orbit that leaves the Sun has none.",
        "AU",
    ),
    line(
        "Time round the Sun",
        "Period of the orbit round the Sun, in years of 365.25 days.",
        "years",
    ),
    line(
        "Speed left far from the Sun",
        "What remains of the speed once the Sun's pull has faded; an orbit that stays has none.",
        "km/s",
    ),
    line(
        "Tilt of the orbit",
        "Inclination: angle between the probe's orbit and the planet's. Over 90° it runs backwards.",
        "°",
    ),
    line(
        "Energy round the Sun, per kg",
        "Motion plus height in the Sun's pull, for each kilogram of probe. Below zero the Sun keeps it.",
        "MJ",
    ),
    line(
        "Speed of @ itself",
        "What the probe gains the planet loses, with a mass so large that nobody could measure it.",
        "km/s",
    ),
];

/// The facts of a pass.
pub const FACT_WORDS: [LineWords; 6] = [
    line(
        "Closest distance from the centre",
        "Periapsis, the point of the path nearest to the planet.",
        "km",
    ),
    line(
        "Height above the surface there",
        "Below zero: the path would lead into the planet.",
        "km",
    ),
    line(
        "Speed there, relative to the planet",
        "The planet's pull has sped the probe up, and takes all of it back on the way out.",
        "km/s",
    ),
    line(
        "Aim distance",
        "Impact parameter b: how far from the centre it would pass if the planet did not pull.",
        "km",
    ),
    line(
        "Change of velocity",
        "Delta-v: length of the difference between the arrows before and after; the same in both frames.",
        "km/s",
    ),
    line(
        "Eccentricity",
        "Shape of the hyperbola: just over 1 turns the path right round, far over 1 hardly bends it.",
        "",
    ),
];

/// The numbers of the present moment.
pub const NOW_WORDS: [LineWords; 4] = [
    line("Now", "", ""),
    line("From the planet's centre", "", "km"),
    line("Relative to the planet", "", "km/s"),
    line("Round the Sun", "", "km/s"),
];

const fn line(label: &'static str, meaning: &'static str, unit: &'static str) -> LineWords {
    LineWords {
        label,
        meaning,
        unit,
    }
}
