//! The pass in plain sentences: one a frame, one for the reason, and cautions.

use super::number::{short, span};
use super::quantity::{Pass, Quantity};
use super::sentence::Sentence;
use super::value::{Style, Value};
use crate::physics::units::DEGREES_PER_RADIAN;
use crate::physics::{Flyby, Outcome, Side, ZoneKind};

/// A change of speed smaller than this, km/s, is shown as none.
const NO_CHANGE: f64 = 0.005;

/// "Relative to Jupiter: 9.00 km/s in, 9.00 km/s out."
pub fn planet_sentence(pass: &Pass<'_>) -> Sentence {
    let name = pass.solution.planet.name;
    let start =
        Sentence::of(format!("Relative to {name}: ")).number(speed(Quantity::V_INFINITY, pass));
    if pass.flyby.strikes() {
        return start
            .words(format!(" km/s in; it strikes {name} at "))
            .number(speed(Quantity::STRIKE_SPEED, pass))
            .words(" km/s and does not come out.");
    }
    start
        .words(" km/s in, ")
        .number(speed(Quantity::RELATIVE_OUT, pass))
        .words(" km/s out.")
}

/// "Round the Sun: 10.18 km/s in, 21.08 km/s out."
pub fn sun_sentence(pass: &Pass<'_>) -> Sentence {
    let start = Sentence::of("Round the Sun: ").number(speed(Quantity::SUN_SPEED_IN, pass));
    if pass.flyby.strikes() {
        return start.words(" km/s in; nothing comes out.");
    }
    start
        .words(" km/s in, ")
        .number(speed(Quantity::SUN_SPEED_OUT, pass))
        .words(" km/s out.")
}

fn speed(quantity: Quantity, pass: &Pass<'_>) -> Value {
    Value::of(quantity, pass, Style::Hundredths, "")
}

/// How the planet itself moves in the Sun frame: "Jupiter moves at 13.06 km/s".
pub fn motion_note(pass: &Pass<'_>) -> Sentence {
    let words = format!("{} moves at ", sentence_start(pass.solution.planet.name));
    Sentence::of(words)
        .number(speed(Quantity::PLANET_SPEED, pass))
        .words(" km/s")
}

/// The reason, from where periapsis lies: gain behind, loss ahead, nothing on the flank; or what a strike means.
pub fn why_sentence(pass: &Pass<'_>) -> Sentence {
    if pass.flyby.strikes() {
        return strike_sentence(pass);
    }
    let name = pass.solution.planet.name;
    let hardly = pass.flyby.speed_change_km_s().abs() < NO_CHANGE;
    let (start, middle, end) = match pass.flyby.side {
        Side::Neither => (
            format!(
                "{} pulls it sideways only, so the path turns by ",
                sentence_start(name)
            ),
            " and the speed round the Sun stays (",
            " km/s).".to_owned(),
        ),
        _ if hardly => (
            "The path turns by ".to_owned(),
            ", and its speed round the Sun hardly changes (",
            format!(" km/s): the pull adds almost nothing along the motion of {name}."),
        ),
        Side::Behind => {
            return drag_sentence(
                pass,
                "behind",
                "drags it along",
                &format!("paid for by {name}"),
            );
        }
        Side::Ahead => {
            return drag_sentence(
                pass,
                "ahead of",
                "holds it back",
                &format!("handed to {name}"),
            );
        }
    };
    Sentence::of(start)
        .number(Value::of(Quantity::TURN, pass, Style::Degrees, ""))
        .words(middle)
        .number(Value::change(
            Quantity::SUN_SPEED_CHANGE,
            pass,
            Style::Hundredths,
            "",
        ))
        .words(end)
}

/// "It passes behind Jupiter, and the pull drags it along: +10.90 km/s round the Sun, paid for by Jupiter."
fn drag_sentence(pass: &Pass<'_>, place: &str, effect: &str, account: &str) -> Sentence {
    Sentence::of(format!(
        "It passes {place} {}, and the pull {effect}: ",
        pass.solution.planet.name
    ))
    .number(Value::change(
        Quantity::SUN_SPEED_CHANGE,
        pass,
        Style::Hundredths,
        "",
    ))
    .words(format!(" km/s round the Sun, {account}."))
}

fn strike_sentence(pass: &Pass<'_>) -> Sentence {
    Sentence::of("The path would come within ")
        .number(Value::of(Quantity::PERIAPSIS_RADII, pass, Style::Chosen, ""))
        .words(format!(
            " planet radii of the centre of {}, which is below its surface: aim farther out, with a periapsis over 1, to \
             pass.",
            pass.solution.planet.name
        ))
}

/// What a real probe would meet, and how far the straight planet path is from the real one in the time shown, s. Empty
/// when there is nothing to say.
pub fn cautions(pass: &Pass<'_>, shown_s: f64) -> Vec<Sentence> {
    let mut cautions = match pass.flyby.outcome {
        Outcome::Strikes(strike) => {
            let mut time = Value::of(Quantity::STRIKE_TIME, pass, Style::Hundredths, "");
            time.text = span(strike.time_s);
            let start = Sentence::of(format!("The probe strikes {} ", pass.solution.planet.name));
            vec![
                start
                    .number(time)
                    .words(" before it would have been closest."),
            ]
        }
        Outcome::Passes => zone_cautions(pass.flyby),
    };
    cautions.extend(bend_caution(pass.flyby, shown_s));
    cautions
}

/// A name with a capital first letter, for the start of a sentence.
fn sentence_start(name: &str) -> String {
    let mut characters = name.chars();
    // Every planet's name is plain ASCII; full Unicode case tables would weigh 6 kB.
    let first = characters.next().map(|first| first.to_ascii_uppercase());
    first.into_iter().chain(characters).collect()
}

fn zone_cautions(flyby: &Flyby) -> Vec<Sentence> {
    let name = flyby.encounter.planet.name;
    let caution = |kind| match kind {
        ZoneKind::Atmosphere => {
            format!(
                "This close, a real probe would meet the atmosphere of {name}; the model has no air."
            )
        }
        ZoneKind::Rings => {
            format!(
                "The closest point is as near as the rings of {name}; a real pass would have to miss them."
            )
        }
        ZoneKind::RadiationBelt => {
            format!(
                "The closest point lies in the radiation belts of {name}; a real probe would need shielding."
            )
        }
    };
    let zones = flyby
        .encounter
        .planet
        .zones_at(flyby.encounter.periapsis_km);
    zones.map(|zone| Sentence::of(caution(zone.kind))).collect()
}

/// The planet's path is drawn straight; this says by how much the real one would bend, where that is over a degree.
fn bend_caution(flyby: &Flyby, shown_s: f64) -> Option<Sentence> {
    let bend = flyby.encounter.planet.mean_motion() * shown_s * DEGREES_PER_RADIAN;
    let name = flyby.encounter.planet.name;
    (bend > 1.0).then(|| {
        Sentence::of(format!(
            "In the time shown, the real path of {name} would bend by "
        ))
        .number(Value::of_page(
            "planet_bend_deg",
            bend,
            format!("{}°", short(bend, 2)),
        ))
        .words(" round the Sun; here it is drawn straight.")
    })
}
