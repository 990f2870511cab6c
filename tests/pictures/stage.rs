//! The two stages: one scale, one clock, each in its own frame.

use glam::DVec2;
use two_frames::figure::{Dash, Mark, Picture, Role};
use two_frames::sandbox::{Change, Input, Sandbox};
use two_frames::scenario::{PRESETS, Preset};

use crate::common::{
    Moment, arrows, label, labels, parts, paths, planet, preset, probe, sandbox, sizes, usual,
};
use crate::geometry::{Box2, distance_to_path};
use crate::own::{Own, in_plane};

/// The two stages of a sandbox.
fn stages(sandbox: &mut Sandbox) -> [Picture; 2] {
    let [planet_frame, sun_frame, ..] = parts(sandbox, &usual());
    [planet_frame.picture, sun_frame.picture]
}

/// The two stages at moments spread over the whole pass.
pub(crate) fn at_moments(preset: &Preset) -> Vec<[Picture; 2]> {
    let mut sandbox = sandbox(preset.text, Moment::Start);
    let scrub = |i: i32| Input::Clock(Change::Scrub(f64::from(i) / 12.0));
    (0..=12)
        .map(|i| {
            sandbox
                .apply(scrub(i))
                .expect("the clock takes every position");
            stages(&mut sandbox)
        })
        .collect()
}

/// From the page's axes, y down, to the world's, y up.
pub(crate) fn up(place: DVec2) -> DVec2 {
    DVec2::new(place.x, -place.y)
}

/// Kilometres in one picture unit: the planet is drawn to scale.
fn km_per_unit(own: &Own, picture: &Picture) -> f64 {
    own.planet.radius_km / planet(picture).radius
}

/// Where the probe is from the planet's centre, km, as a picture shows it.
pub(crate) fn seen_from_planet(own: &Own, picture: &Picture) -> DVec2 {
    up(probe(picture) - planet(picture).centre) * km_per_unit(own, picture)
}

/// A share of a length that covers the rounding of coordinates of some hundred units.
const EXACT: f64 = 1e-9;

#[test]
fn both_stages_show_the_same_pass_at_the_same_scale_and_moment() {
    for preset in &PRESETS {
        for [one, other] in at_moments(preset) {
            assert_eq!(
                planet(&one).radius.to_bits(),
                planet(&other).radius.to_bits(),
                "{}",
                preset.id
            );
            let (a, b) = (
                probe(&one) - planet(&one).centre,
                probe(&other) - planet(&other).centre,
            );
            assert!(
                a.distance(b) < EXACT * a.length().max(640.0),
                "{}: {a} and {b}",
                preset.id
            );
        }
    }
}

#[test]
fn the_planet_stands_still_in_one_frame_and_moves_straight_up_in_the_other() {
    for preset in &PRESETS {
        let moments = at_moments(preset);
        let first = &moments[0];
        let mut last_height = f64::INFINITY;
        for [one, other] in &moments {
            assert_eq!(
                planet(one).centre,
                planet(&first[0]).centre,
                "{}",
                preset.id
            );
            let (place, start) = (planet(other).centre, planet(&first[1]).centre);
            assert!((place.x - start.x).abs() < EXACT * 640.0, "{}", preset.id);
            // A strike ends the clock: the planet then stands where it was.
            assert!(
                place.y < last_height || Own::preset(preset).strikes(),
                "{}: up is y less",
                preset.id
            );
            last_height = place.y;
        }
        assert!(last_height < planet(&first[1]).centre.y);
    }
}

#[test]
fn the_probe_is_where_it_belongs_at_periapsis() {
    for preset in PRESETS
        .iter()
        .filter(|preset| !Own::preset(preset).strikes())
    {
        let own = Own::preset(preset);
        for picture in stages(&mut sandbox(preset.text, Moment::Periapsis)) {
            let want = own.to_periapsis().truncate() * own.periapsis;
            let got = seen_from_planet(&own, &picture);
            assert!(
                got.distance(want) < 1e-7 * own.periapsis,
                "{} {}: {got}, {want}",
                preset.id,
                picture.title
            );
        }
    }
}

#[test]
fn the_path_is_the_hyperbola_dashed_before_periapsis_and_solid_after() {
    for preset in in_plane() {
        let own = Own::preset(preset);
        let [picture, _] = stages(&mut sandbox(preset.text, Moment::Telling));
        let (centre, scale) = (planet(&picture).centre, km_per_unit(&own, &picture));
        for (dash, sign) in [(Dash::Dashed, -1.0), (Dash::Solid, 1.0)] {
            let found = paths(&picture, Role::Relative, dash);
            if own.strikes() && dash == Dash::Solid {
                assert_eq!(
                    found.len(),
                    0,
                    "{}: nothing comes after a strike",
                    preset.id
                );
                continue;
            }
            assert_eq!(found.len(), 1, "{}", preset.id);
            let mut last = f64::NEG_INFINITY;
            for point in &found[0].points {
                let place = up(*point - centre) * scale;
                assert!(
                    own.off_path(place) < 1e-8,
                    "{}: {place} is off the path",
                    preset.id
                );
                let time = own.time_of(place);
                // Near periapsis the time is a difference of nearly equal distances.
                let slack = 1e-4 * own.periapsis / own.v_infinity;
                assert!(
                    time > last - slack && sign * time > -slack,
                    "{}: {time} after {last}",
                    preset.id
                );
                last = time;
            }
        }
    }
}

#[test]
fn a_strike_ends_at_the_surface() {
    let mut sandbox = sandbox(preset("strikes").text, Moment::End);
    let pictures = stages(&mut sandbox);
    for (picture, role) in pictures.iter().zip([Role::Relative, Role::RoundSun]) {
        let body = planet(picture);
        let path = paths(picture, role, Dash::Dashed)[0];
        let end = path.points.last().expect("a path has points");
        assert!(
            (end.distance(body.centre) / body.radius - 1.0).abs() < 1e-9,
            "{}",
            picture.title
        );
        assert!(
            probe(picture).distance(*end) < EXACT * 640.0,
            "{}",
            picture.title
        );
        let after = paths(picture, role, Dash::Solid);
        assert!(after.is_empty(), "{}", picture.title);
        // A cross marks the place.
        let middle = |points: &[DVec2]| 0.5 * (points[0] + points[points.len() - 1]);
        let strokes = paths(picture, Role::Ink, Dash::Solid).into_iter();
        let arms = strokes.filter(|path| middle(&path.points).distance(*end) < EXACT * 640.0);
        assert_eq!(arms.count(), 2, "{}", picture.title);
    }
}

#[test]
fn each_path_says_from_where_it_is_seen() {
    for preset in &PRESETS {
        let name = Own::preset(preset).planet.name;
        let [planet_frame, sun_frame] = stages(&mut sandbox(preset.text, Moment::Telling));
        for (picture, own, other, role) in [
            (
                &planet_frame,
                format!("seen from {name}"),
                "seen from the Sun".to_owned(),
                Role::Relative,
            ),
            (
                &sun_frame,
                "seen from the Sun".to_owned(),
                format!("seen from {name}"),
                Role::RoundSun,
            ),
        ] {
            let words = label(picture, &own);
            assert_eq!(words.role, role, "{}: {own}", preset.id);
            assert!(labels(picture, &other).is_empty(), "{}: {other}", preset.id);
            let area = Box2::new(words.bounds());
            let lines = [Dash::Dashed, Dash::Solid].map(|dash| paths(picture, role, dash));
            let nearest = lines
                .iter()
                .flatten()
                .map(|path| distance_to_path(&area, &path.points));
            let nearest = nearest.fold(f64::INFINITY, f64::min);
            assert!(
                nearest < 2.0 * words.size,
                "{}: {own} is {nearest:.1} from its path",
                preset.id
            );
        }
        // Each stage is drawn in its own frame's colour only.
        let stray = |picture: &Picture, role| {
            !paths(picture, role, Dash::Solid).is_empty() || !arrows(picture, role).is_empty()
        };
        assert!(!stray(&planet_frame, Role::RoundSun) && !stray(&planet_frame, Role::PlanetMotion));
        assert!(!stray(&sun_frame, Role::Relative));
    }
}

#[test]
fn handles_stand_on_the_path_of_the_planet_frame_only() {
    use two_frames::figure::Grip;
    for preset in &PRESETS {
        let [planet_frame, sun_frame] = stages(&mut sandbox(preset.text, Moment::Periapsis));
        let path = paths(&planet_frame, Role::Relative, Dash::Dashed)[0];
        let reach = |at| planet_frame.handle_near(at, 0.5);
        assert_eq!(reach(path.points[0]), Some(Grip::Approach), "{}", preset.id);
        if !Own::preset(preset).strikes() {
            assert_eq!(
                reach(probe(&planet_frame)),
                Some(Grip::Periapsis),
                "{}",
                preset.id
            );
        }
        assert!(
            !sun_frame
                .marks
                .iter()
                .any(|mark| matches!(mark, Mark::Handle(_))),
            "{}",
            preset.id
        );
    }
}

/// x runs away from the Sun, so that the Sun is to the left in both frames, outside the picture.
#[test]
fn the_sun_is_to_the_left() {
    for preset in &PRESETS {
        for picture in stages(&mut sandbox(preset.text, Moment::Telling)) {
            let pointer = arrows(&picture, Role::Quiet);
            assert_eq!(pointer.len(), 1, "{} {}", preset.id, picture.title);
            let [from, to] = [pointer[0].from, pointer[0].to];
            assert!(to.x < from.x - 10.0 && (to.y - from.y).abs() < 1e-9);
            let words = Box2::new(label(&picture, "to the Sun").bounds());
            assert!(words.distance(from) < 20.0, "{}", preset.id);
        }
    }
}

/// The Sun frame is not shrunk without end to show a long way: a probe outside it is told of.
#[test]
fn a_probe_outside_the_picture_is_told_of() {
    let mut outside = 0;
    for preset in &PRESETS {
        for moment in Moment::ALL {
            for side in [390.0, 640.0, 1000.0] {
                let size = sizes((side, side), (720.0, 400.0));
                let [one, other, ..] = parts(&mut sandbox(preset.text, moment), &size);
                for picture in [one.picture, other.picture] {
                    let place = probe(&picture);
                    let is_outside =
                        place.cmpgt(picture.size).any() || place.cmplt(DVec2::ZERO).any();
                    let told = picture.labels().any(|label| label.text.contains("outside"));
                    let name = &picture.title;
                    assert_eq!(told, is_outside, "{} {name} {moment:?} {side}", preset.id);
                    outside += usize::from(is_outside);
                }
            }
        }
    }
    assert!(outside > 0);
}
