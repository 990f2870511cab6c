//! The pictures in words, from the same numbers, for those who do not see them.

use super::number::{degrees, fixed, moment, significant};
use super::quantity::Instant;
use super::solution::Solution;
use crate::physics::Flyby;

/// The picture of one frame: what moves, how it comes and goes, and where the probe is now.
pub fn describe_stage(
    solution: &Solution,
    flyby: &Flyby,
    instant: &Instant,
    seen_from_sun: bool,
) -> String {
    let name = solution.planet.name;
    let radii = significant(
        flyby.encounter.periapsis_km / flyby.encounter.planet.radius_km,
        3,
    );
    let shape = match (flyby.strikes(), solution.planet_frame.turn_deg) {
        (false, Some(turn)) => format!(
            "the path turns by {}° and comes within {radii} planet radii of the centre",
            fixed(turn, 1)
        ),
        _ => format!(
            "the path ends at the surface; it was aimed {radii} planet radii from the centre"
        ),
    };
    let (frame, speed) = if seen_from_sun {
        let speed = fixed(solution.planet.orbit_speed_km_s, 2);
        (
            format!("Sun frame: {name} moves straight up at {speed} km/s, the Sun is to the left"),
            instant.sun_speed_km_s,
        )
    } else {
        (
            format!("Planet frame: {name} stands still"),
            instant.planet_speed_km_s,
        )
    };
    let now = moment(instant.time_s);
    format!(
        "{frame}; {shape}. Now, {now}, the probe moves at {} km/s in this frame.",
        fixed(speed, 2)
    )
}

/// The velocity diagram: the planet's velocity plus the relative velocity is the velocity round the Sun.
pub fn describe_diagram(solution: &Solution, flyby: &Flyby) -> String {
    let speed = fixed(solution.planet_frame.v_infinity_km_s, 2);
    let planet = fixed(solution.planet.orbit_speed_km_s, 2);
    let before = fixed(solution.sun_frame.speed_in_km_s, 2);
    let after = match solution.sun_frame.speed_out_km_s {
        Some(out) => format!(
            "after the turn of {} it makes {} km/s. Both end points lie on the circle of radius {speed} km/s",
            degrees(flyby.turn_rad, 1),
            fixed(out, 2)
        ),
        None => "after that the probe has struck the planet".into(),
    };
    format!(
        "Velocity diagram: the planet's velocity, {planet} km/s upwards, plus the velocity relative to the planet, {speed} \
         km/s, makes {before} km/s round the Sun before the pass; {after}."
    )
}

/// The speed record: two curves against time.
pub fn describe_record(solution: &Solution) -> String {
    let far = fixed(solution.planet_frame.v_infinity_km_s, 2);
    let sun_in = fixed(solution.sun_frame.speed_in_km_s, 2);
    match (
        solution.planet_frame.periapsis_speed_km_s,
        solution.sun_frame.speed_out_km_s,
    ) {
        (Some(top), Some(out)) => format!(
            "Speed against time: relative to {}, a hump from {far} up to {} at periapsis and back to {far} km/s; round \
             the Sun, from {sun_in} to {} km/s, which does not come back.",
            solution.planet.name,
            fixed(top, 2),
            fixed(out, 2)
        ),
        _ => format!(
            "Speed against time: relative to {} from {far} km/s, round the Sun from {sun_in} km/s, up to the impact.",
            solution.planet.name
        ),
    }
}
