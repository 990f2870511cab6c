//! Velocity arrows of the stages: direction, length and the speed written beside them.

use glam::DVec2;
use two_frames::figure::{Head, Picture, Role, Shaft};

use crate::common::{arrows, planet, probe};
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
