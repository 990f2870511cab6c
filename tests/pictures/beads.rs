//! Beads stand at equal times, so that their spacing shows speed.

use glam::DVec2;
use two_frames::figure::{Dash, Picture, Role};
use two_frames::sandbox::Sandbox;

use crate::common::{Moment, discs, parts, paths, planet, sandbox, usual};
use crate::own::{Own, in_plane};

/// The beads of a stage in the order of time: where, and whether filled. The probe and the planet are not of the role.
fn beads(picture: &Picture, role: Role) -> Vec<(DVec2, bool)> {
    let own = discs(picture).into_iter().filter_map(|disc| {
        let hollow = disc.fill == Some(Role::Ground)
            && disc.edge.is_some_and(|edge| edge.stroke_role() == role);
        (hollow || disc.fill == Some(role)).then_some((disc.centre, !hollow))
    });
    own.collect()
}

/// What the edge of a disc stands for.
trait StrokeRole {
    fn stroke_role(&self) -> Role;
}

impl StrokeRole for two_frames::figure::Stroke {
    fn stroke_role(&self) -> Role {
        self.role
    }
}

/// The seconds from bead to bead that a picture's note names.
fn noted(picture: &Picture) -> f64 {
    let words = picture
        .labels()
        .find_map(|label| label.text.strip_prefix("bead to bead: "))
        .expect("a note");
    let (number, unit) = words.split_once(' ').expect("a number and its unit");
    let unit = match unit.trim_end_matches('s') {
        "second" => 1.0,
        "minute" => 60.0,
        "hour" => 3_600.0,
        "day" => 86_400.0,
        other => panic!("no unit {other}"),
    };
    number.parse::<f64>().expect("a number") * unit
}

fn stages(sandbox: &mut Sandbox) -> [Picture; 2] {
    let [one, other, ..] = parts(sandbox, &usual());
    [one.picture, other.picture]
}

#[test]
fn beads_of_the_planet_frame_are_equal_times_apart() {
    for preset in in_plane() {
        let own = Own::preset(preset);
        let [picture, _] = stages(&mut sandbox(preset.text, Moment::Telling));
        let (centre, radius) = (planet(&picture).centre, planet(&picture).radius);
        let step = noted(&picture);
        let beads = beads(&picture, Role::Relative);
        assert!(
            (12..=31).contains(&beads.len()),
            "{}: {} beads",
            preset.id,
            beads.len()
        );
        let mut last = f64::NEG_INFINITY;
        for (at, filled) in beads {
            let offset = (at - centre) * (own.planet.radius_km / radius);
            let steps = own.time_of(DVec2::new(offset.x, -offset.y)) / step;
            // The time at periapsis is where the distance is least: a rounding e of the distance is √e of the time.
            assert!(
                (steps - steps.round()).abs() < 1e-5,
                "{}: a bead at {steps} steps",
                preset.id
            );
            assert_eq!(
                filled,
                steps.round() >= 0.0,
                "{}: filled from periapsis on",
                preset.id
            );
            assert!(
                last == f64::NEG_INFINITY || (steps.round() - last - 1.0).abs() < 0.1,
                "{}: {steps} after {last}",
                preset.id
            );
            last = steps.round();
        }
    }
}

#[test]
fn beads_are_widest_apart_where_the_probe_is_fastest() {
    let [picture, _] = stages(&mut sandbox(
        crate::common::preset("gain").text,
        Moment::Telling,
    ));
    let beads = beads(&picture, Role::Relative);
    let gaps: Vec<_> = beads
        .windows(2)
        .map(|pair| pair[0].0.distance(pair[1].0))
        .collect();
    let widest = gaps
        .iter()
        .copied()
        .enumerate()
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .expect("gaps")
        .0;
    assert!(
        widest.abs_diff(gaps.len() / 2) <= 1,
        "the widest gap is number {widest} of {}",
        gaps.len()
    );
    assert!(gaps[widest] > 1.4 * gaps[0] && gaps[widest] > 1.4 * gaps[gaps.len() - 1]);
}

/// In the Sun frame a bead is as far from the planet's own bead of that moment as in the planet frame.
#[test]
fn beads_of_the_sun_frame_are_those_of_the_planet_frame_carried_along() {
    // Over the pole some beads are painted after the disc, so that the two pictures have them in different orders.
    for preset in in_plane() {
        let [one, other] = stages(&mut sandbox(preset.text, Moment::Telling));
        let centre = planet(&one).centre;
        let ticks: Vec<_> = paths(&other, Role::PlanetMotion, Dash::Solid)
            .iter()
            .map(|path| 0.5 * (path.points[0] + path.points[1]))
            .collect();
        let from_planet = beads(&one, Role::Relative);
        assert_eq!(ticks.len(), from_planet.len(), "{}", preset.id);
        let inside = |at: &DVec2| at.cmpge(DVec2::ZERO).all() && at.cmple(other.size).all();
        let expected: Vec<_> = ticks
            .iter()
            .zip(&from_planet)
            .map(|(tick, (at, filled))| (*tick + *at - centre, *filled))
            .filter(|(at, _)| inside(at))
            .collect();
        let got = beads(&other, Role::RoundSun);
        assert_eq!(got.len(), expected.len(), "{}", preset.id);
        for ((at, filled), (want, want_filled)) in got.iter().zip(&expected) {
            assert!(
                at.distance(*want) < 1e-6 && filled == want_filled,
                "{}: {at}, {want}",
                preset.id
            );
        }
        // The planet moves evenly: its own beads are equally far apart, the later ones higher up.
        let gap = ticks[0] - ticks[1];
        assert!(
            gap.y > 0.0
                && ticks
                    .windows(2)
                    .all(|pair| (pair[0] - pair[1]).distance(gap) < 1e-6),
            "{}",
            preset.id
        );
    }
}
