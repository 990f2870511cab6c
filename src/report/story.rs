//! The pass in plain sentences: one a frame, one for the reason, and cautions. In their words `@` is the planet's name
//! and `#` a number.

use super::number::{short, span};
use super::quantity::{Pass, Quantity};
use super::sentence::{
    AFTER, BEFORE, CHANGE, FAR, FAR_AFTER, PLANET, RADII, STRIKE, Sentence, TURN,
};
use super::value::{Style, Value};
use crate::physics::units::DEGREES_PER_RADIAN;
use crate::physics::{Outcome, Side, ZoneKind};

/// A change of speed smaller than this, km/s, is shown as none.
const NO_CHANGE: f64 = 0.005;

/// "Relative to Jupiter: 9.00 km/s in, 9.00 km/s out."
pub fn planet_sentence(pass: &Pass<'_>) -> Sentence {
    let (words, speeds) = if pass.flyby.strikes() {
        let words = "Relative to @: # km/s in; it strikes @ at # km/s and does not come out.";
        (words, &[FAR, STRIKE])
    } else {
        ("Relative to @: # km/s in, # km/s out.", &[FAR, FAR_AFTER])
    };
    Sentence::of(words, pass, speeds)
}

/// "Round the Sun: 10.18 km/s in, 21.08 km/s out."
pub fn sun_sentence(pass: &Pass<'_>) -> Sentence {
    let words = if pass.flyby.strikes() {
        "Round the Sun: # km/s in; nothing comes out."
    } else {
        "Round the Sun: # km/s in, # km/s out."
    };
    Sentence::of(words, pass, &[BEFORE, AFTER])
}

/// How the planet itself moves in the Sun frame: "Jupiter moves at 13.06 km/s".
pub fn motion_note(pass: &Pass<'_>) -> Sentence {
    Sentence::of("@ moves at # km/s", pass, &[PLANET])
}

/// The reason, from where periapsis lies: gain behind, loss ahead, nothing on the flank; or what a strike means.
pub fn why_sentence(pass: &Pass<'_>) -> Sentence {
    let hardly = pass.flyby.speed_change_km_s().abs() < NO_CHANGE;
    let (words, numbers): (_, &[_]) = match pass.flyby.side {
        _ if pass.flyby.strikes() => (
            "The path would come within # planet radii of the centre of @, which is below its surface: aim farther out, \
             with a periapsis over 1, to pass.",
            &[RADII],
        ),
        Side::Neither => (
            "@ pulls it sideways only, so the path seen from @ turns by # and the speed round the Sun is as before (change # km/s).",
            &[TURN, CHANGE],
        ),
        _ if hardly => (
            "The path seen from @ turns by #, and the speed round the Sun hardly changes (by # km/s): the pull adds almost \
             nothing along the motion of @.",
            &[TURN, CHANGE],
        ),
        Side::Behind => (
            "It passes behind @, and the pull drags it along: # km/s round the Sun, paid for by @.",
            &[CHANGE],
        ),
        Side::Ahead => (
            "It passes ahead of @, and the pull holds it back: # km/s round the Sun, handed to @.",
            &[CHANGE],
        ),
    };
    Sentence::of(words, pass, numbers)
}

/// What a real probe would meet, whether the planet or the Sun rules the pass, and how far the straight planet path is from the real one in the time shown, s. Empty
/// when there is nothing to say.
pub fn cautions(pass: &Pass<'_>, shown_s: f64) -> Vec<Sentence> {
    let mut cautions = Vec::new();
    if let Outcome::Strikes(strike) = pass.flyby.outcome {
        let mut time = Value::of(Quantity::STRIKE_TIME, pass, Style::Hundredths, "");
        time.text = span(strike.time_s);
        let words = "The probe strikes @ # before it would have been closest.";
        cautions.push(Sentence::new(words, pass, vec![time]));
    } else {
        let encounter = &pass.flyby.encounter;
        for zone in encounter.planet.zones_at(encounter.periapsis_km) {
            cautions.push(Sentence::of(zone_caution(zone.kind), pass, &[]));
        }
    }
    cautions.extend(far_caution(pass));
    cautions.push(bend_caution(pass, shown_s));
    cautions
}

fn zone_caution(kind: ZoneKind) -> &'static str {
    match kind {
        ZoneKind::Atmosphere => {
            "This close, a real probe would meet the atmosphere of @; the model has no air."
        }
        ZoneKind::Rings => {
            "The closest point is as near as the rings of @; a real pass would have to miss them."
        }
        ZoneKind::RadiationBelt => {
            "The closest point lies in the radiation belts of @; a real probe would need shielding."
        }
    }
}

/// A pass outside the planet's sphere of influence is none in truth. The periapsis is nearer than the aim point, so that the
/// aim point tells.
pub(super) fn far_caution(pass: &Pass<'_>) -> Option<Sentence> {
    let reach = pass.flyby.encounter.planet.sphere_of_influence_km()?;
    let words = "The probe is aimed past the edge of the sphere of influence of @, # km from its centre: so far out the Sun \
                 rules the path more than @, and these numbers describe no real pass.";
    let text = Style::Kilometres.text(reach);
    let value = Value::of_page("page.sphere_of_influence_km", reach, text);
    (pass.flyby.impact_parameter_km > reach).then(|| Sentence::new(words, pass, vec![value]))
}

/// The planet's path is drawn straight; this says by how much the real one would bend.
fn bend_caution(pass: &Pass<'_>, shown_s: f64) -> Sentence {
    let bend = pass.flyby.encounter.planet.mean_motion() * shown_s * DEGREES_PER_RADIAN;
    let words = "In the time shown, the real path of @ would bend by # round the Sun; here it is drawn straight.";
    let value = Value::of_page("page.planet_bend_deg", bend, short(bend, 2) + "°");
    Sentence::new(words, pass, vec![value])
}
