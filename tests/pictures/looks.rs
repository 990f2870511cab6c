//! Stages seen from elsewhere than north: nothing is stretched, and a learner is told where they stand.

use glam::{DVec2, DVec3, dvec3};
use two_frames::figure::{Arrow, Dash, Grip, Look, Mark, Picture, Role, Views};
use two_frames::sandbox::Sandbox;
use two_frames::scenario::PRESETS;

use crate::common::{
    Moment, arrows, label, labels, parts, paths, planet, preset, probe, sandbox, seen, usual,
};
use crate::geometry::Box2;
use crate::own::{Own, in_plane};

/// Every look in steps of some degrees, both ends included.
pub(crate) fn looks(step: usize) -> impl Iterator<Item = Look> {
    (-180..=180).step_by(step).flat_map(move |around| {
        let heights = (-90..=90).step_by(step);
        heights.map(move |height| Look::new(f64::from(around), f64::from(height)))
    })
}

/// What runs right, up and towards the eye: a camera that looks north from behind is turned about its own axes.
/// Source: common practice, no source: a rotation about z by the azimuth, then one about the turned x by the elevation.
pub(crate) fn own_axes(look: Look) -> [DVec3; 3] {
    let (sin, cos) = look.around_deg().to_radians().sin_cos();
    let (rise, level) = look.height_deg().to_radians().sin_cos();
    let round = |v: DVec3| dvec3(cos * v.x - sin * v.y, sin * v.x + cos * v.y, v.z);
    // About x, so that what points back is lifted to the north.
    let lift = |v: DVec3| dvec3(v.x, level * v.y + rise * v.z, -rise * v.y + level * v.z);
    [DVec3::X, DVec3::Z, DVec3::NEG_Y].map(|axis| round(lift(axis)))
}

pub(crate) fn stages(sandbox: &mut Sandbox) -> [Picture; 2] {
    let [planet_frame, sun_frame, ..] = parts(sandbox, &usual());
    [planet_frame.picture, sun_frame.picture]
}

pub(crate) fn views(sandbox: &mut Sandbox) -> Views {
    sandbox.views(&usual()).expect("a pass")
}

#[test]
fn the_axes_are_a_camera_s_and_keep_all_lengths() {
    for look in looks(7).chain([Look::NORTH, Look::BEHIND, Look::SIDE]) {
        let views = views(&mut seen("", Moment::Telling, look));
        let axes = views.planet.axes;
        assert_eq!((views.look, views.sun.axes), (look, axes));
        assert!(
            axes.right.cross(axes.up).distance(axes.toward) < 1e-15,
            "{look:?}"
        );
        let got = [axes.right, axes.up, axes.toward];
        for (one, own) in got.into_iter().zip(own_axes(look)) {
            assert!(one.distance(own) < 2e-15, "{look:?}: {one}, {own}");
        }
        for point in [dvec3(3.0, -4.0, 12.0), dvec3(-1e6, 2e5, 3e3)] {
            let (flat, depth) = (axes.flat(point), point.dot(axes.toward));
            let length = flat.length_squared() + depth * depth;
            assert!(
                (length / point.length_squared() - 1.0).abs() < 1e-14,
                "{look:?}"
            );
        }
    }
}

#[test]
fn the_named_looks_are_exact() {
    let axes = |look| {
        let axes = views(&mut seen("", Moment::Telling, look)).planet.axes;
        [axes.right, axes.up, axes.toward]
    };
    assert_eq!(axes(Look::NORTH), [DVec3::X, DVec3::Y, DVec3::Z]);
    assert_eq!(axes(Look::BEHIND), [DVec3::X, DVec3::Z, DVec3::NEG_Y]);
    assert_eq!(axes(Look::SIDE), [DVec3::Y, DVec3::Z, DVec3::X]);
    assert_eq!(axes(Look::new(180.0, 0.0)), axes(Look::new(-180.0, 0.0)));
}

#[test]
fn both_stages_share_scale_moment_and_look() {
    for preset in &PRESETS {
        for look in looks(45) {
            let [one, other] = stages(&mut seen(preset.text, Moment::Telling, look));
            let radii = [&one, &other].map(|picture| planet(picture).radius.to_bits());
            assert_eq!(radii[0], radii[1], "{} {look:?}", preset.id);
            let (a, b) = (
                probe(&one) - planet(&one).centre,
                probe(&other) - planet(&other).centre,
            );
            assert!(a.distance(b) < 1e-6, "{} {look:?}: {a} and {b}", preset.id);
        }
    }
}

/// The probe stands where a camera would see it, at the scale of the planet's disc.
#[test]
fn the_probe_is_where_it_belongs_from_everywhere() {
    for id in ["gain", "out-of-plane", "inner"] {
        let own = Own::preset(preset(id));
        let place = own.to_periapsis() * own.periapsis;
        for look in looks(30) {
            let [right, up, _] = own_axes(look);
            let want = DVec2::new(place.dot(right), -place.dot(up)) / own.planet.radius_km;
            for picture in stages(&mut seen(preset(id).text, Moment::Periapsis, look)) {
                let disc = planet(&picture);
                let got = (probe(&picture) - disc.centre) / disc.radius;
                assert!(got.distance(want) < 1e-6, "{id} {look:?}: {got}, {want}");
            }
        }
    }
}

#[test]
fn from_behind_a_pass_in_the_orbit_plane_lies_level() {
    for preset in in_plane() {
        let pictures = stages(&mut seen(preset.text, Moment::Telling, Look::BEHIND));
        for (picture, role) in pictures.iter().zip([Role::Relative, Role::RoundSun]) {
            let height = planet(picture).centre.y;
            let lines = [Dash::Dashed, Dash::Solid].map(|dash| paths(picture, role, dash));
            let points = lines.iter().flatten().flat_map(|path| &path.points);
            assert!(points.clone().count() > 50, "{}", preset.id);
            for point in points {
                assert!((point.y - height).abs() < 1e-9, "{}: {point}", preset.id);
            }
        }
    }
}

/// The direction of an arrow that stands beside its name, as long as it is seen.
fn pointer(picture: &Picture, name: &str) -> Option<DVec2> {
    let words = Box2::new(labels(picture, name).first()?.bounds());
    let beside = |arrow: &&&Arrow| {
        words.distance(0.5 * (arrow.from + arrow.to)) < 60.0
            && (0.5 * (arrow.from.y + arrow.to.y) - words.centre().y).abs() < 6.0
    };
    let arrows = arrows(picture, Role::Quiet);
    let arrow = arrows
        .iter()
        .find(beside)
        .expect("an arrow beside its name");
    let run = arrow.to - arrow.from;
    Some(DVec2::new(run.x, -run.y))
}

#[test]
fn arrows_say_where_north_the_sun_and_the_planet_s_motion_are() {
    let mut found = [0; 3];
    for look in looks(30).filter(|look| *look != Look::NORTH) {
        let [right, up, _] = own_axes(look);
        for picture in stages(&mut seen(preset("gain").text, Moment::Telling, look)) {
            for (i, (name, direction)) in [
                ("north", DVec3::Z),
                ("the planet's motion", DVec3::Y),
                ("to the Sun", DVec3::NEG_X),
            ]
            .into_iter()
            .enumerate()
            {
                let want = DVec2::new(direction.dot(right), direction.dot(up));
                let Some(got) = pointer(&picture, name) else {
                    continue;
                };
                found[i] += 1;
                assert!(want.length() > 0.29, "{name} {look:?}: too short to see");
                let scale = got.length() / want.length();
                assert!(got.distance(want * scale) < 1e-6 * scale, "{name} {look:?}");
            }
        }
    }
    // Each is left out only where it points at the eye or finds no room.
    assert!(found.iter().all(|count| *count > 100), "{found:?}");
}

#[test]
fn words_say_where_the_sun_is_when_no_arrow_can() {
    for (look, words) in [
        (Look::new(85.0, 3.0), "the Sun lies behind the picture"),
        (
            Look::new(-90.0, 0.0),
            "the Sun lies in front of the picture",
        ),
    ] {
        for picture in stages(&mut seen(preset("inner").text, Moment::Telling, look)) {
            label(&picture, words);
            assert!(labels(&picture, "to the Sun").is_empty());
        }
    }
}

#[test]
fn each_stage_says_from_where_it_is_seen() {
    for (look, words) in [
        (Look::NORTH, None),
        (Look::BEHIND, Some("looking along Jupiter's motion")),
        (Look::SIDE, Some("looking towards the Sun")),
        (
            Look::new(30.0, 20.0),
            Some("turned 30°, from 20° above the orbit plane"),
        ),
        (
            Look::new(-120.4, -35.0),
            Some("turned −120°, from 35° below the orbit plane"),
        ),
    ] {
        let mut sandbox = seen(preset("gain").text, Moment::Telling, look);
        for part in parts(&mut sandbox, &usual()).iter().take(2) {
            let told = |words: &&str| part.description.contains(*words);
            assert_eq!(words.filter(told), words, "{}", part.description);
            if let Some(words) = words {
                assert_eq!(label(&part.picture, words).role, Role::Ink);
                // Up and left are no longer what they are from north.
                for gone in ["straight up", "to the left"] {
                    assert!(!part.description.contains(gone), "{}", part.description);
                }
            }
        }
    }
}

#[test]
fn handles_stand_only_where_they_can_be_pulled() {
    let grips = |sandbox: &mut Sandbox| {
        let [planet_frame, _] = stages(sandbox);
        let grips = planet_frame.marks.iter().filter_map(|mark| match mark {
            Mark::Handle(handle) => Some((handle.grip, handle.at)),
            _ => None,
        });
        grips.collect::<Vec<_>>()
    };
    for look in looks(15) {
        let own = Own::preset(preset("out-of-plane"));
        let [_, _, toward] = own_axes(look);
        // Seen at less than about 3°, there is nothing to pull along.
        let slant = own.to_periapsis().cross(toward).length();
        let found = grips(&mut seen(
            preset("out-of-plane").text,
            Moment::Periapsis,
            look,
        ));
        let names: Vec<_> = found.iter().map(|(grip, _)| *grip).collect();
        let mut want = Vec::from_iter((slant > 0.05).then_some(Grip::Periapsis));
        want.extend((look == Look::NORTH).then_some(Grip::Approach));
        assert_eq!(names, want, "{look:?} {slant}");
    }
    let mut from_north = sandbox(preset("gain").text, Moment::Periapsis);
    assert_eq!(grips(&mut from_north).len(), 2);
}
