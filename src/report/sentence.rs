//! The pass in plain sentences: one a frame, one for the reason, and cautions.

use super::number::{fixed, signed, significant, span};
use super::readout::sentence_start;
use super::solution::Solution;
use crate::physics::units::DEGREES_PER_RADIAN;
use crate::physics::{Flyby, Outcome, Side, ZoneKind};

/// A change of speed smaller than this, km/s, is shown as none.
const NO_CHANGE: f64 = 0.005;

/// "Relative to Jupiter: 9.00 km/s in, 9.00 km/s out."
pub fn planet_sentence(solution: &Solution, flyby: &Flyby) -> String {
    let name = solution.planet.name;
    let speed = fixed(solution.planet_frame.v_infinity_km_s, 2);
    match flyby.outcome {
        Outcome::Passes => format!("Relative to {name}: {speed} km/s in, {speed} km/s out."),
        Outcome::Strikes(strike) => format!(
            "Relative to {name}: {speed} km/s in; it strikes {name} at {} km/s and does not come out.",
            fixed(strike.speed_km_s, 2)
        ),
    }
}

/// "Round the Sun: 10.18 km/s in, 21.08 km/s out."
pub fn sun_sentence(solution: &Solution) -> String {
    let speed_in = fixed(solution.sun_frame.speed_in_km_s, 2);
    match solution.sun_frame.speed_out_km_s {
        Some(out) => format!(
            "Round the Sun: {speed_in} km/s in, {} km/s out.",
            fixed(out, 2)
        ),
        None => format!("Round the Sun: {speed_in} km/s in; nothing comes out."),
    }
}

/// The reason, from where periapsis lies: gain behind, loss ahead, nothing on the flank; or what a strike means.
pub fn why_sentence(solution: &Solution, flyby: &Flyby) -> String {
    let name = solution.planet.name;
    let Some(change) = solution.sun_frame.speed_change_km_s else {
        let radii = flyby.encounter.periapsis_km / flyby.encounter.planet.radius_km;
        return format!(
            "The path would come within {} planet radii of the centre of {name}, which is below its surface: aim \
             farther out, with a periapsis over 1, to pass.",
            significant(radii, 3)
        );
    };
    let start = sentence_start(name);
    let amount = format!("{} km/s", signed(change, 2));
    let turn = fixed(flyby.turn_rad * DEGREES_PER_RADIAN, 1);
    match flyby.side {
        Side::Neither => format!(
            "{start} pulls it sideways only, neither along its own motion nor against it: the path turns by {turn}° and \
             the speed round the Sun stays ({amount})."
        ),
        _ if change.abs() < NO_CHANGE => format!(
            "The path turns by {turn}°, and its speed round the Sun hardly changes ({amount}): the pull adds almost nothing \
             along the motion of {name}."
        ),
        Side::Behind => format!(
            "It passes behind {name}, and the pull drags it along: {amount} round the Sun, paid for by {name}."
        ),
        Side::Ahead => format!(
            "It passes ahead of {name}, and the pull holds it back: {amount} round the Sun, handed to {name}."
        ),
    }
}

/// What a real probe would meet, and how far the straight planet path is from the real one. Empty when there is
/// nothing to say.
pub fn cautions(flyby: &Flyby, window_s: f64) -> Vec<String> {
    let planet = flyby.encounter.planet;
    let name = planet.name;
    let mut cautions = Vec::new();
    if let Outcome::Strikes(strike) = flyby.outcome {
        cautions.push(format!(
            "The probe strikes {name} {} before it would have been closest.",
            span(strike.time_s)
        ));
    } else {
        cautions.extend(planet.zones_at(flyby.encounter.periapsis_km).map(|zone| match zone.kind {
            ZoneKind::Atmosphere => format!("This close, a real probe would meet the atmosphere of {name}; the model has no air."),
            ZoneKind::Rings => format!("The closest point is as near as the rings of {name}; a real pass would have to miss them."),
            ZoneKind::RadiationBelt => format!("The closest point lies in the radiation belts of {name}; a real probe would need shielding."),
        }));
    }
    let bend = planet.mean_motion() * window_s * DEGREES_PER_RADIAN;
    if bend > 1.0 {
        cautions.push(format!(
            "In the time shown, the real path of {name} would bend by {}° round the Sun; here it is drawn straight.",
            significant(bend.min(1e6), 2)
        ));
    }
    cautions
}
