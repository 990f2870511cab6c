//! The diagram's arcs: what the planet can turn the probe to, and how far it does.

use glam::DVec2;
use two_frames::figure::{Dash, Picture, Role};

use crate::common::{label, paths, preset};
use crate::diagram::{EXACT, arrow, circle, diagram};
use crate::own::{Own, in_plane};

/// The angle of a place seen from the circle's centre, rad, y up.
fn angle(place: DVec2, centre: DVec2) -> f64 {
    let offset = place - centre;
    (-offset.y).atan2(offset.x)
}

/// The difference of two angles, from minus half a turn to half a turn.
fn between(a: f64, b: f64) -> f64 {
    let turns = (a - b) / std::f64::consts::TAU;
    (turns - turns.round()) * std::f64::consts::TAU
}

#[test]
fn the_thick_arc_is_what_this_planet_can_turn_the_probe_to() {
    for preset in in_plane() {
        let (own, picture) = (Own::preset(preset), diagram(preset));
        let ring = circle(&picture);
        let thick = paths(&picture, Role::Relative, Dash::Solid);
        assert_eq!(thick.len(), 1, "{}", preset.id);
        let points = &thick[0].points;
        assert!(
            points
                .iter()
                .all(|point| (point.distance(ring.centre) - ring.radius).abs() < EXACT),
            "{}",
            preset.id
        );
        let incoming = angle(
            arrow(&picture, Role::Relative, Dash::Dashed).to,
            ring.centre,
        );
        let ends = [points[0], points[points.len() - 1]]
            .map(|end| between(angle(end, ring.centre), incoming));
        let widest = own.widest_turn();
        assert!(
            (ends[0].abs() - widest).abs() < 1e-9 && (ends[0] + ends[1]).abs() < 1e-9,
            "{}: {ends:?}, {widest}",
            preset.id
        );
        // The middle is the incoming direction: the arc runs through it, not round the other way.
        let middle = points[points.len() / 2];
        assert!(
            between(angle(middle, ring.centre), incoming).abs() < 1e-9,
            "{}",
            preset.id
        );
        if !own.strikes() {
            let after = angle(arrow(&picture, Role::Relative, Dash::Solid).to, ring.centre);
            assert!(
                between(after, incoming).abs() <= widest + 1e-9,
                "{}",
                preset.id
            );
        }
    }
}

/// Out of the plane the reach is a cap of the sphere: its rim, seen from north, lies inside the circle.
#[test]
fn out_of_the_plane_the_circle_is_a_sphere() {
    let picture = diagram(preset("out-of-plane"));
    let ring = circle(&picture);
    let after = arrow(&picture, Role::Relative, Dash::Solid);
    assert!(after.to.distance(ring.centre) < 0.99 * ring.radius);
    let says =
        |picture: &Picture, word: &str| picture.labels().any(|label| label.text.contains(word));
    assert!(says(&picture, "sphere") && says(&picture, "seen from north"));
    let flat = diagram(preset("gain"));
    assert!(says(&flat, "lies on the circle") && !says(&flat, "sphere"));
}

#[test]
fn the_turn_is_an_arc_from_before_to_after_with_its_angle() {
    for preset in in_plane().filter(|preset| !Own::preset(preset).strikes()) {
        let (own, picture) = (Own::preset(preset), diagram(preset));
        let arc = paths(&picture, Role::Ink, Dash::Solid);
        assert_eq!(arc.len(), 1, "{}", preset.id);
        let centre = circle(&picture).centre;
        let points = &arc[0].points;
        let ends = [
            (points[0], Dash::Dashed),
            (points[points.len() - 1], Dash::Solid),
        ];
        for (end, dash) in ends {
            let to = arrow(&picture, Role::Relative, dash).to;
            assert!(
                between(angle(end, centre), angle(to, centre)).abs() < 1e-9,
                "{} {dash:?}",
                preset.id
            );
        }
        let words = format!("turn {:.1}°", own.turn().to_degrees());
        assert_eq!(label(&picture, &words).role, Role::Ink, "{}", preset.id);
    }
}
