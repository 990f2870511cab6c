//! The pass in plain sentences: one a frame, one for the reason, and cautions.

use super::number::{fixed, short, signed, span};
use super::quantity::Quantity;
use super::readout::{of_page, sentence_start, two, value};
use super::sentence::Sentence;
use super::solution::Solution;
use crate::physics::units::{DEGREES_PER_RADIAN, SECONDS_PER_HOUR};
use crate::physics::{Flyby, Outcome, Side, ZoneKind};

/// A change of speed smaller than this, km/s, is shown as none.
const NO_CHANGE: f64 = 0.005;

/// "Relative to Jupiter: 9.00 km/s in, 9.00 km/s out."
pub fn planet_sentence(solution: &Solution, flyby: &Flyby) -> Sentence {
    let name = solution.planet.name;
    let far = || value(Quantity::V_INFINITY, solution, two, "");
    let start = Sentence::of(format!("Relative to {name}: ")).number(far());
    match flyby.outcome {
        Outcome::Passes => start.words(" km/s in, ").number(far()).words(" km/s out."),
        Outcome::Strikes(strike) => start
            .words(format!(" km/s in; it strikes {name} at "))
            .number(of_page(
                "strike_speed_km_s",
                Some(strike.speed_km_s),
                two(strike.speed_km_s),
            ))
            .words(" km/s and does not come out."),
    }
}

/// "Round the Sun: 10.18 km/s in, 21.08 km/s out."
pub fn sun_sentence(solution: &Solution) -> Sentence {
    let number = |quantity| value(quantity, solution, two, "");
    let start = Sentence::of("Round the Sun: ").number(number(Quantity::SUN_SPEED_IN));
    if solution.strikes() {
        return start.words(" km/s in; nothing comes out.");
    }
    start
        .words(" km/s in, ")
        .number(number(Quantity::SUN_SPEED_OUT))
        .words(" km/s out.")
}

/// How the planet itself moves in the Sun frame: "Jupiter moves at 13.06 km/s".
pub fn motion_note(solution: &Solution) -> Sentence {
    Sentence::of(format!(
        "{} moves at ",
        sentence_start(solution.planet.name)
    ))
    .number(value(Quantity::PLANET_SPEED, solution, two, ""))
    .words(" km/s")
}

/// The reason, from where periapsis lies: gain behind, loss ahead, nothing on the flank; or what a strike means.
pub fn why_sentence(solution: &Solution, flyby: &Flyby) -> Sentence {
    if solution.strikes() {
        return strike_sentence(solution, flyby);
    }
    let name = solution.planet.name;
    let change = || {
        value(
            Quantity::SUN_SPEED_CHANGE,
            solution,
            |change| signed(change, 2),
            "",
        )
    };
    let turn = || {
        value(
            Quantity::TURN,
            solution,
            |deg| format!("{}°", fixed(deg, 1)),
            "",
        )
    };
    let hardly = flyby.speed_change_km_s().abs() < NO_CHANGE;
    match flyby.side {
        Side::Neither => Sentence::of(format!(
            "{} pulls it sideways only, neither along its own motion nor against it: the path turns by ",
            sentence_start(name)
        ))
        .number(turn())
        .words(" and the speed round the Sun stays (")
        .number(change())
        .words(" km/s)."),
        _ if hardly => Sentence::of("The path turns by ")
            .number(turn())
            .words(", and its speed round the Sun hardly changes (")
            .number(change())
            .words(format!(" km/s): the pull adds almost nothing along the motion of {name}.")),
        Side::Behind => Sentence::of(format!("It passes behind {name}, and the pull drags it along: "))
            .number(change())
            .words(format!(" km/s round the Sun, paid for by {name}.")),
        Side::Ahead => Sentence::of(format!("It passes ahead of {name}, and the pull holds it back: "))
            .number(change())
            .words(format!(" km/s round the Sun, handed to {name}.")),
    }
}

fn strike_sentence(solution: &Solution, flyby: &Flyby) -> Sentence {
    let radii = flyby.encounter.periapsis_km / flyby.encounter.planet.radius_km;
    Sentence::of("The path would come within ")
        .number(of_page("periapsis_radii", Some(radii), short(radii, 3)))
        .words(format!(
            " planet radii of the centre of {}, which is below its surface: aim farther out, with a periapsis over 1, to \
             pass.",
            solution.planet.name
        ))
}

/// What a real probe would meet, and how far the straight planet path is from the real one in the time shown, s. Empty
/// when there is nothing to say.
pub fn cautions(flyby: &Flyby, shown_s: f64) -> Vec<Sentence> {
    let mut cautions = match flyby.outcome {
        Outcome::Strikes(_) => impact_caution(flyby).into_iter().collect(),
        Outcome::Passes => zone_cautions(flyby),
    };
    cautions.extend(bend_caution(flyby, shown_s));
    cautions
}

fn impact_caution(flyby: &Flyby) -> Option<Sentence> {
    let Outcome::Strikes(strike) = flyby.outcome else {
        return None;
    };
    let hours = strike.time_s / SECONDS_PER_HOUR;
    Some(
        Sentence::of(format!(
            "The probe strikes {} ",
            flyby.encounter.planet.name
        ))
        .number(of_page("strike_time_h", Some(hours), span(strike.time_s)))
        .words(" before it would have been closest."),
    )
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
        .number(of_page(
            "planet_bend_deg",
            Some(bend),
            format!("{}°", short(bend, 2)),
        ))
        .words(" round the Sun; here it is drawn straight.")
    })
}
