//! The pictures in words, from the same numbers, for those who do not see them.

use super::chart_reading::ChartReading;
use super::number::{fixed, moment};
use super::quantity::{Instant, Pass, Quantity};
use super::sentence::{AFTER, BEFORE, FAR, PLANET, RADII, Sentence, TOP, TURN};
use super::value::Style;

/// The picture of one frame: what moves, how it comes and goes, and where the probe is now. `look` says from where it is
/// seen; nothing when that is from north.
pub fn describe_stage(
    pass: &Pass<'_>,
    instant: &Instant,
    seen_from_sun: bool,
    look: &str,
) -> String {
    let (frame, moves, speed) = match (seen_from_sun, look.is_empty()) {
        (true, true) => {
            let moves = ": @ moves straight up at # km/s, the Sun is to the left";
            ("Sun frame", moves, instant.sun_speed_km_s)
        }
        (true, false) => ("Sun frame", ": @ moves at # km/s", instant.sun_speed_km_s),
        (false, _) => (
            "Planet frame",
            ": @ stands still",
            instant.planet_speed_km_s,
        ),
    };
    let comma = if look.is_empty() { "" } else { ", " };
    let words = [frame, comma, look, moves].concat();
    let frame = Sentence::of(&words, pass, &[PLANET]);
    let path = if pass.flyby.strikes() {
        let words = "; the path ends at the surface; it was aimed # planet radii from the centre. ";
        Sentence::of(words, pass, &[RADII])
    } else if seen_from_sun {
        let words = "; the probe comes in at # km/s and leaves at # km/s. ";
        Sentence::of(words, pass, &[BEFORE, AFTER])
    } else {
        let words = "; the path turns by # and comes within # planet radii of the centre. ";
        Sentence::of(words, pass, &[TURN, RADII])
    };
    let (now, speed) = (moment(instant.time_s), fixed(speed, 2));
    [
        &frame.text(),
        &path.text(),
        "Now, ",
        &now,
        ", the probe moves at ",
        &speed,
        " km/s in this frame.",
    ]
    .concat()
}

/// The velocity diagram: the planet's velocity plus the relative velocity is the velocity round the Sun.
pub fn describe_diagram(pass: &Pass<'_>) -> String {
    let words = if pass.flyby.strikes() {
        "Velocity diagram: the planet's velocity, # km/s upwards, plus the velocity relative to the planet, # km/s, makes \
         # km/s round the Sun before the pass; after that the probe has struck the planet."
    } else {
        "Velocity diagram: the planet's velocity, # km/s upwards, plus the velocity relative to the planet, # km/s, makes \
         # km/s round the Sun before the pass; after the turn of # it makes # km/s. Both end points lie on the circle of \
         radius # km/s."
    };
    Sentence::of(words, pass, &[PLANET, FAR, BEFORE, TURN, AFTER, FAR]).text()
}

/// The speed record: two curves against time.
pub fn describe_record(pass: &Pass<'_>) -> String {
    let (words, speeds): (_, &[_]) = if pass.flyby.strikes() {
        (
            "Speed against time: relative to @ from # km/s, round the Sun from # km/s, up to the impact.",
            &[FAR, BEFORE],
        )
    } else {
        (
            "Speed against time: relative to @, a hump from # up to # at periapsis and back to # km/s; round the Sun, \
             from # to # km/s, which does not come back.",
            &[FAR, TOP, FAR, BEFORE, AFTER],
        )
    };
    Sentence::of(words, pass, speeds).text()
}

/// The aim plane: how far from the planet's centre the probe is aimed, and how near it may be aimed.
pub fn describe_aim_plane(pass: &Pass<'_>) -> String {
    let words = "Aim plane, seen along the incoming direction: aimed # km from the centre of @ at an aim angle of #. Aimed \
                 nearer than # km the probe strikes.";
    let numbers = [
        (Quantity::IMPACT_PARAMETER, Style::Kilometres),
        (Quantity::AIM_ANGLE, Style::Degrees),
        (Quantity::STRIKE_RADIUS, Style::Kilometres),
    ];
    Sentence::of(words, pass, &numbers).text()
}

/// The chart of an outcome: what against what, where the pass stands, and what there is to find.
pub fn describe_chart(pass: &Pass<'_>, chart: &ChartReading) -> String {
    let course = &chart.course;
    let now = match chart.now {
        None => "it strikes".into(),
        Some(value) if value.is_infinite() => "it leaves the Sun".into(),
        Some(value) => chart.outcome_text(value),
    };
    let [from, to, at] =
        [course.range.low, course.range.high, course.now()].map(|x| chart.place_text(x));
    let (outcome, setting) = (course.words().label, course.against.spec().label);
    [
        "Chart: ",
        outcome,
        " against ",
        setting,
        ", from ",
        &from,
        " to ",
        &to,
        ". Now, at ",
        &at,
        ": ",
        &now,
        ". ",
        &chart.sentence(pass).text(),
    ]
    .concat()
}
