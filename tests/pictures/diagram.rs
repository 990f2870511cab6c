//! The velocity diagram: one sum of arrows before, one after, on the circle of equal relative speed.

use glam::{DVec2, DVec3};
use two_frames::figure::{Arrow, Dash, Disc, Head, Picture, Role, Shaft};
use two_frames::scenario::{PRESETS, Preset};

use crate::common::{Moment, arrows, discs, label, labels, parts, preset, sandbox, usual};
use crate::geometry::{Box2, distance_to_path};
use crate::own::Own;

pub(crate) fn diagram(preset: &Preset) -> Picture {
    let [_, _, part, _] = parts(&mut sandbox(preset.text, Moment::Telling), &usual());
    part.picture
}

/// The only arrow of a role and dash.
#[track_caller]
pub(crate) fn arrow(picture: &Picture, role: Role, dash: Dash) -> &Arrow {
    let found: Vec<_> = arrows(picture, role)
        .into_iter()
        .filter(|arrow| arrow.stroke.dash == dash)
        .collect();
    assert_eq!(found.len(), 1, "{role:?} {dash:?}");
    found[0]
}

/// The circle of equal relative speed.
#[track_caller]
pub(crate) fn circle(picture: &Picture) -> Disc {
    let ring = |disc: &&&Disc| {
        disc.fill.is_none() && disc.edge.is_some_and(|edge| edge.role == Role::Relative)
    };
    let all = discs(picture);
    let found: Vec<_> = all.iter().filter(ring).collect();
    assert_eq!(found.len(), 1);
    **found[0]
}

/// An arrow's run on the page, y up, and what it should be at so many picture units a km/s.
fn runs(arrow: &Arrow, velocity: DVec3, per_km_s: f64) -> (DVec2, DVec2) {
    let run = arrow.to - arrow.from;
    (DVec2::new(run.x, -run.y), velocity.truncate() * per_km_s)
}

/// Picture units; far below what a screen shows, far above the rounding of coordinates.
pub(crate) const EXACT: f64 = 1e-7;

#[test]
fn arrows_are_the_velocities_dashed_before_and_solid_after() {
    for preset in &PRESETS {
        let (own, picture) = (Own::preset(preset), diagram(preset));
        let per_km_s = circle(&picture).radius / own.v_infinity;
        let planet = own.planet_velocity();
        let expected = [
            (Role::PlanetMotion, Dash::Solid, planet),
            (Role::Relative, Dash::Dashed, own.incoming()),
            (Role::RoundSun, Dash::Dashed, own.incoming() + planet),
            (Role::Relative, Dash::Solid, own.outgoing()),
            (Role::RoundSun, Dash::Solid, own.outgoing() + planet),
        ];
        let drawn = if own.strikes() { 3 } else { 5 };
        for (role, dash, velocity) in &expected[..drawn] {
            let (got, want) = runs(arrow(&picture, *role, *dash), *velocity, per_km_s);
            assert!(
                got.distance(want) < EXACT,
                "{} {role:?} {dash:?}: {got}, {want}",
                preset.id
            );
        }
        let all = picture
            .marks
            .iter()
            .filter(|mark| matches!(mark, two_frames::figure::Mark::Arrow(_)));
        assert_eq!(all.count(), drawn, "{}", preset.id);
    }
}

#[test]
fn the_planet_s_arrow_and_the_relative_one_add_up_to_the_one_round_the_sun() {
    for preset in &PRESETS {
        let (own, picture) = (Own::preset(preset), diagram(preset));
        let planet = arrow(&picture, Role::PlanetMotion, Dash::Solid);
        let ring = circle(&picture);
        assert!(planet.to.distance(ring.centre) < EXACT, "{}", preset.id);
        assert!(
            planet.to.y < planet.from.y,
            "{}: the planet moves up",
            preset.id
        );
        let dashes = if own.strikes() {
            vec![Dash::Dashed]
        } else {
            vec![Dash::Dashed, Dash::Solid]
        };
        for dash in dashes {
            let (relative, sun) = (
                arrow(&picture, Role::Relative, dash),
                arrow(&picture, Role::RoundSun, dash),
            );
            assert_eq!(relative.from, planet.to, "{} {dash:?}", preset.id);
            assert_eq!(sun.from, planet.from, "{} {dash:?}", preset.id);
            assert!(
                relative.to.distance(sun.to) < EXACT,
                "{} {dash:?}",
                preset.id
            );
            if own.is_in_plane() {
                let off = relative.to.distance(ring.centre) - ring.radius;
                assert!(
                    off.abs() < EXACT,
                    "{} {dash:?}: off the circle by {off}",
                    preset.id
                );
            }
        }
    }
}

#[test]
fn heads_and_shafts_tell_the_frames_without_colour() {
    for preset in &PRESETS {
        let picture = diagram(preset);
        for (role, head, shaft) in [
            (Role::PlanetMotion, Head::Filled, Shaft::Double),
            (Role::Relative, Head::Filled, Shaft::Single),
            (Role::RoundSun, Head::Open, Shaft::Single),
        ] {
            let all = arrows(&picture, role);
            assert!(
                !all.is_empty()
                    && all
                        .iter()
                        .all(|arrow| (arrow.head, arrow.shaft) == (head, shaft)),
                "{role:?}"
            );
        }
    }
}

/// A box's distance from a point, and whether it is nearer to `own` than to `other`.
fn belongs(area: &Box2, own: DVec2, other: DVec2) -> bool {
    area.distance(own) < area.distance(other)
}

#[test]
fn ends_are_named_before_and_after() {
    for preset in &PRESETS {
        let (own, picture) = (Own::preset(preset), diagram(preset));
        let before = arrow(&picture, Role::RoundSun, Dash::Dashed).to;
        let words = label(&picture, "before");
        assert!(
            Box2::new(words.bounds()).distance(before) < 4.0 * words.size,
            "{}",
            preset.id
        );
        if own.strikes() {
            let later = |text: &str| text == "after" || text.starts_with("turn ");
            assert!(
                !picture.labels().any(|label| later(&label.text)),
                "{}",
                preset.id
            );
            continue;
        }
        let after = arrow(&picture, Role::RoundSun, Dash::Solid).to;
        // Where both ends are nearly one place, either name may stand nearer to the other end.
        if before.distance(after) > 4.0 * words.size {
            assert!(
                belongs(&Box2::new(words.bounds()), before, after),
                "{}: before",
                preset.id
            );
            assert!(
                belongs(&Box2::new(label(&picture, "after").bounds()), after, before),
                "{}: after",
                preset.id
            );
        }
    }
}

#[test]
fn arrows_carry_their_speeds() {
    for preset in &PRESETS {
        let (own, picture) = (Own::preset(preset), diagram(preset));
        let planet = own.planet_velocity();
        let two = |speed: f64| format!("{speed:.2}");
        let planet_words = format!("planet {}", two(planet.length()));
        assert_eq!(
            label(&picture, &planet_words).role,
            Role::PlanetMotion,
            "{}",
            preset.id
        );
        let mut wanted = vec![
            (Role::Relative, Dash::Dashed, own.incoming()),
            (Role::RoundSun, Dash::Dashed, own.incoming() + planet),
        ];
        if !own.strikes() {
            wanted.push((Role::Relative, Dash::Solid, own.outgoing()));
            wanted.push((Role::RoundSun, Dash::Solid, own.outgoing() + planet));
        }
        for (role, dash, velocity) in wanted {
            let arrow = arrow(&picture, role, dash);
            let words = two(velocity.length());
            let found = labels(&picture, &words).into_iter().find(|label| {
                let away = distance_to_path(&Box2::new(label.bounds()), &[arrow.from, arrow.to]);
                label.role == role && away < 5.0 * label.size
            });
            assert!(
                found.is_some(),
                "{} {role:?} {dash:?}: no “{words}” near",
                preset.id
            );
        }
    }
}

#[test]
fn the_number_of_a_quicker_side_is_with_the_longer_arrow() {
    // A gain: the solid arrow round the Sun is the longer one; a loss: the dashed one.
    for (id, gains) in [("gain", true), ("loss", false)] {
        let picture = diagram(preset(id));
        let length = |dash| {
            let arrow = arrow(&picture, Role::RoundSun, dash);
            arrow.from.distance(arrow.to)
        };
        assert_eq!(length(Dash::Solid) > length(Dash::Dashed), gains, "{id}");
        let relative = [Dash::Dashed, Dash::Solid].map(|dash| {
            let arrow = arrow(&picture, Role::Relative, dash);
            arrow.from.distance(arrow.to)
        });
        assert!(
            (relative[0] - relative[1]).abs() < EXACT,
            "{id}: the blue arrows are equally long"
        );
    }
}
