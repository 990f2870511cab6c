//! The pictures' text, byte for byte, against files that a person has looked at.
//!
//! After a change that is meant to change pictures: `UPDATE_GOLDEN=1 cargo test --test pictures golden`, then look at
//! what `git diff` shows and at the files themselves in a browser.

use std::collections::BTreeSet;
use std::env;
use std::fs;
use std::path::PathBuf;

use glam::dvec2;
use two_frames::figure::{Look, Theme, chart_picture, svg};
use two_frames::physics::Measure;
use two_frames::report::{ChartReading, describe_aim_plane, describe_chart};
use two_frames::scenario::Field;

use crate::aim::aimed;
use crate::common::{Moment, Part, parts, preset, sandbox, seen, usual};

/// The ready-made passes that have files: between them they show everything that a picture can hold.
const KEPT: [&str; 6] = [
    "gain",
    "loss",
    "out-of-plane",
    "strikes",
    "too-fast",
    "custom",
];

/// The charts that have files: a best pass between others, one on a round of angles, a gap, the best v-infinity, nothing to choose.
const CHARTS: [(&str, &str, Measure, Field); 5] = [
    (
        "closer-is-not-better",
        "not-the-closest",
        Measure::SpeedChange,
        Field::Periapsis,
    ),
    ("approach", "gain", Measure::EnergyChange, Field::Approach),
    ("leaves", "leaves", Measure::Aphelion, Field::Periapsis),
    (
        "circular-speed",
        "inner",
        Measure::VelocityChange,
        Field::VInfinity,
    ),
    ("strikes", "strikes", Measure::Turn, Field::Approach),
];

fn charts() -> impl Iterator<Item = (String, String)> {
    CHARTS.into_iter().map(|(name, id, measure, against)| {
        let mut sandbox = sandbox(preset(id).text, Moment::Telling);
        let solved = sandbox.solved().expect("a ready-made pass");
        let chart = ChartReading::of(&solved.flyby, measure, against);
        let picture = chart_picture(&chart, dvec2(640.0, 400.0));
        let words = describe_chart(&solved.pass(), &chart);
        (
            format!("chart-{name}.svg"),
            svg(&picture, &words, Theme::Light),
        )
    })
}

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/pictures/golden")
}

/// A picture's file: its name and the text that belongs into it.
fn file(id: &str, part: &Part, theme: Theme, mark: &str) -> (String, String) {
    let name = format!("{id}-{}{mark}.svg", part.name);
    (name, svg(&part.picture, &part.description, theme))
}

/// Every file's name and the text that belongs into it.
fn expected() -> Vec<(String, String)> {
    let light = KEPT.map(|id| (id, Theme::Light, ""));
    let all = light.into_iter().chain([("gain", Theme::Dark, "-dark")]);
    let from_north = all.flat_map(|(id, theme, mark)| {
        let parts = parts(&mut sandbox(preset(id).text, Moment::Telling), &usual());
        parts.map(|part| file(id, &part, theme, mark))
    });
    // A pass out of the plane shows all that the looks can show.
    let looks = [
        ("-behind", Look::BEHIND),
        ("-side", Look::SIDE),
        ("-turned", Look::new(-35.0, 25.0)),
    ];
    let from_elsewhere = looks.into_iter().flat_map(|(mark, look)| {
        let id = "out-of-plane";
        let mut sandbox = seen(preset(id).text, Moment::Telling, look);
        let [planet_frame, sun_frame, ..] = parts(&mut sandbox, &usual());
        [planet_frame, sun_frame].map(|part| file(id, &part, Theme::Light, mark))
    });
    from_north
        .chain(from_elsewhere)
        .chain(charts())
        .chain(aim_planes())
        .collect()
}

/// Aim planes: both kinds of colours, every kind of line, in the plane and out of it. Few cells, so that the files stay
/// small.
fn aim_planes() -> Vec<(String, String)> {
    let kept = [
        ("gain", Measure::SpeedChange, "reach=saturn", Theme::Light),
        ("leaves", Measure::Aphelion, "leave=5", Theme::Light),
        (
            "out-of-plane",
            Measure::Inclination,
            "most=inclination",
            Theme::Dark,
        ),
        ("inner", Measure::Turn, "change=2", Theme::Light),
        ("strikes", Measure::Perihelion, "", Theme::Light),
    ];
    let file = |(id, measure, wish, theme)| {
        let mut sandbox = aimed(preset(id).text, measure, wish);
        let picture = sandbox
            .aim_picture(dvec2(420.0, 480.0), 24)
            .expect("a pass");
        let words = describe_aim_plane(&sandbox.solved().expect("a pass").pass());
        (format!("{id}-aim-plane.svg"), svg(&picture, &words, theme))
    };
    kept.map(file).into()
}

/// Where two texts first differ, in words.
fn first_difference(kept: &str, now: &str) -> Option<String> {
    if kept == now {
        return None;
    }
    let (mut kept, mut now) = (kept.lines(), now.lines());
    for number in 1.. {
        match (kept.next(), now.next()) {
            (None, None) => break,
            (a, b) if a == b => {}
            (a, b) => {
                let show = |line: Option<&str>| line.unwrap_or("(no more lines)").to_owned();
                return Some(format!(
                    "line {number}\n  kept: {}\n  now:  {}",
                    show(a),
                    show(b)
                ));
            }
        }
    }
    Some("the ends of lines".into())
}

/// The names of the files in the folder.
fn kept_names() -> BTreeSet<String> {
    let entries = fs::read_dir(folder()).into_iter().flatten();
    entries
        .map(|entry| {
            entry
                .expect("a readable folder")
                .file_name()
                .to_string_lossy()
                .into_owned()
        })
        .collect()
}

/// Writes every file and removes those that no picture belongs to.
fn update(expected: &[(String, String)]) {
    fs::create_dir_all(folder()).expect("a folder can be made");
    for name in kept_names()
        .iter()
        .filter(|kept| !expected.iter().any(|(name, _)| name == *kept))
    {
        fs::remove_file(folder().join(name)).expect("a file can be removed");
    }
    for (name, text) in expected {
        fs::write(folder().join(name), text).expect("a file can be written");
    }
}

#[test]
fn golden_pictures_are_as_they_were() {
    let expected = expected();
    if env::var_os("UPDATE_GOLDEN").is_some() {
        update(&expected);
    }
    let differences: Vec<_> = expected
        .iter()
        .filter_map(|(name, text)| {
            let kept = fs::read_to_string(folder().join(name)).unwrap_or_default();
            first_difference(&kept, text).map(|place| format!("{name}: {place}"))
        })
        .collect();
    assert!(
        differences.is_empty(),
        "{} pictures differ from tests/pictures/golden.\n{}\nWhere this is meant: \
         UPDATE_GOLDEN=1 cargo test --test pictures golden",
        differences.len(),
        differences.join("\n")
    );
    let names: BTreeSet<_> = expected.into_iter().map(|(name, _)| name).collect();
    assert_eq!(
        kept_names(),
        names,
        "the folder holds these files and no others"
    );
}

#[test]
fn the_first_difference_is_found() {
    assert_eq!(first_difference("a\nb\n", "a\nb\n"), None);
    let found = first_difference("a\nb\nc\n", "a\nx\nc\n").expect("they differ");
    assert_eq!(found, "line 2\n  kept: b\n  now:  x");
    assert!(first_difference("a\n", "a\nb\n").is_some_and(|found| found.contains("now:  b")));
    assert!(first_difference("", "a\n").is_some() && first_difference("a", "a\n").is_some());
}
