//! Velocity arrows of the stages: direction, length and the speed written beside them.

use glam::DVec2;
use two_frames::figure::{Head, Picture, Role, Shaft};
use two_frames::scenario::PRESETS;

use crate::common::{Moment, arrows, parts, planet, probe, sandbox, sizes};
use crate::own::{Own, in_plane};
use crate::stage::{at_moments, seen_from_planet, up};

#[test]
fn velocity_arrows_have_the_velocity_s_direction_and_one_scale() {
    for preset in in_plane() {
        let own = Own::preset(preset);
        for [one, other] in at_moments(preset) {
            let relative = own.velocity(seen_from_planet(&own, &one));
            let planet_velocity = own.planet_velocity().truncate();
            let per_km_s = {
                let arrow = arrows(&other, Role::PlanetMotion)[0];
                (arrow.to - arrow.from).length() / own.planet_speed
            };
            for (picture, role, from, velocity, head, shaft) in [
                (
                    &one,
                    Role::Relative,
                    probe(&one),
                    relative,
                    Head::Filled,
                    Shaft::Single,
                ),
                (
                    &other,
                    Role::RoundSun,
                    probe(&other),
                    relative + planet_velocity,
                    Head::Open,
                    Shaft::Single,
                ),
                (
                    &other,
                    Role::PlanetMotion,
                    planet(&other).centre,
                    planet_velocity,
                    Head::Filled,
                    Shaft::Double,
                ),
            ] {
                let found = arrows(picture, role);
                assert_eq!(found.len(), 1, "{} {role:?}", preset.id);
                let arrow = found[0];
                assert_eq!(
                    (arrow.from, arrow.head, arrow.shaft),
                    (from, head, shaft),
                    "{} {role:?}",
                    preset.id
                );
                let (got, want) = (up(arrow.to - arrow.from), velocity * per_km_s);
                assert!(
                    got.distance(want) < 1e-6 * (1.0 + want.length()),
                    "{} {role:?}: {got}, {want}",
                    preset.id
                );
                match speed_label(picture, role) {
                    Some(shown) => assert!(
                        (shown - velocity.length()).abs() < 0.005 + 1e-9,
                        "{} {role:?}",
                        preset.id
                    ),
                    None => assert!(
                        role == Role::PlanetMotion || is_outside(picture, from),
                        "{} {role:?}",
                        preset.id
                    ),
                }
            }
        }
    }
}

/// The speed that a picture writes in a role's colour.
fn speed_label(picture: &Picture, role: Role) -> Option<f64> {
    let own = picture.labels().filter(|label| label.role == role);
    let mut speeds = own.filter_map(|label| label.text.strip_suffix(" km/s"));
    let speed = speeds.next()?.parse().expect("a number");
    assert_eq!(speeds.next(), None, "one speed in {}", picture.title);
    Some(speed)
}

fn is_outside(picture: &Picture, place: DVec2) -> bool {
    place.cmplt(DVec2::ZERO).any() || place.cmpgt(picture.size).any()
}

/// At the moment that a pass opens with, every head is in sight: it tells the frame without colour, and a length whose end
/// is cut off cannot be compared.
#[test]
fn at_the_telling_moment_every_velocity_ends_inside_the_picture() {
    let mut faults = Vec::new();
    for preset in &PRESETS {
        for side in [390.0, 640.0, 1000.0] {
            let size = sizes((side, side), (720.0, 400.0));
            for part in parts(&mut sandbox(preset.text, Moment::Telling), &size) {
                for role in [Role::Relative, Role::PlanetMotion, Role::RoundSun] {
                    let tips = arrows(&part.picture, role)
                        .into_iter()
                        .map(|arrow| arrow.to);
                    let outside = tips.filter(|tip| is_outside(&part.picture, *tip));
                    faults.extend(outside.map(|tip| {
                        format!("{} {} {side}: {role:?} ends at {tip}", preset.id, part.name)
                    }));
                }
            }
        }
    }
    assert!(
        faults.is_empty(),
        "{} faults\n{}",
        faults.len(),
        faults.join("\n")
    );
}
