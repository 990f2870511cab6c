//! `figure`: whole SVG files, the moment asked for, and the pictures that the repository keeps.

use std::fs;
use std::path::Path;

use glam::DVec2;
use roxmltree::Document;
use two_frames::figure::{Role, Theme, color, svg};
use two_frames::sandbox::{Sandbox, Sizes};
use two_frames::scenario::PRESETS;

use crate::support::TemporaryFolder;
use crate::{errors, printed, refusals, run};

const PARTS: [&str; 4] = ["planet-frame", "sun-frame", "diagram", "record"];

/// What `figure` prints with arguments after the part.
pub(crate) fn figure(text: &str, part: &str, more: &[&str]) -> String {
    let arguments = [&["figure", text, "--part", part], more].concat();
    printed(run(&arguments))
}

#[test]
fn each_part_theme_and_size_is_a_whole_picture() {
    for part in PARTS {
        for (theme, ground) in [("light", Theme::Light), ("dark", Theme::Dark)] {
            for (width, height) in [("240", "240"), ("640", "480"), ("4096", "1200")] {
                let size = format!("{width}x{height}");
                let text = figure("", part, &["--theme", theme, "--size", &size]);
                check_picture(&text, width, height);
                assert!(text.contains(color(ground, Role::Ground)), "{part} {theme}");
            }
        }
    }
}

/// Checks with an XML parser that knows nothing of us.
pub(crate) fn check_picture(text: &str, width: &str, height: &str) {
    let document = Document::parse(text).expect("it is well-formed XML");
    let root = document.root_element();
    // Source: SVG 2, 5.1.2, the namespace (from memory).
    assert!(root.has_tag_name(("http://www.w3.org/2000/svg", "svg")));
    let attributes = ["width", "height", "viewBox"].map(|name| root.attribute(name));
    let view = format!("0 0 {width} {height}");
    assert_eq!(attributes, [Some(width), Some(height), Some(&*view)]);
    for name in ["title", "desc"] {
        let element = root.children().find(|node| node.has_tag_name(name));
        let words = element.and_then(|element| element.text());
        assert!(
            words.is_some_and(|words| words.len() > 10),
            "{name}: {words:?}"
        );
    }
    for word in ["NaN", "inf"] {
        assert!(!text.contains(word), "{word} in {text}");
    }
}

#[test]
fn presets_are_whole_pictures_too() {
    for preset in PRESETS {
        for part in PARTS {
            check_picture(&figure(preset.text, part, &[]), "640", "640");
        }
    }
}

/// Page, command and tests go through one door: the sandbox's pictures at its own moment.
#[test]
fn without_a_time_it_is_what_the_page_opens_with() {
    let mut sandbox = Sandbox::default();
    let pictures = sandbox.pictures(&Sizes::all(DVec2::new(640.0, 640.0)));
    let pictures = pictures.expect("the default pass has pictures");
    let pictures = [
        pictures.planet_frame,
        pictures.sun_frame,
        pictures.diagram,
        pictures.record,
    ];
    let panel = sandbox.panel().expect("the default pass has words");
    for ((part, picture), words) in PARTS.iter().zip(pictures).zip(panel.descriptions) {
        assert_eq!(figure("", part, &[]), svg(&picture, &words, Theme::Light));
    }
}

#[test]
fn a_time_may_have_any_unit() {
    let at = |time: &str| figure("", "planet-frame", &["--time", time]);
    let whole = at("1.5d");
    for same in ["36h", "2160min", "129600s", "+1.5d", "1.5e0d"] {
        assert_eq!(at(same), whole, "{same}");
    }
    assert!(whole.contains("1.50 days after periapsis"), "{whole}");
    assert!(at("-1.5d").contains("1.50 days before periapsis"));
    assert!(at("0h").contains("at periapsis"));
}

#[test]
fn a_time_without_a_unit_is_refused_with_the_rule() {
    for time in ["1.5", "soon", "infd", "1e308d", ""] {
        let output = run(&["figure", "", "--part", "record", "--time", time]);
        assert_eq!(output.status.code(), Some(2));
        assert!(errors(&output).contains("try 1.5d"), "{}", errors(&output));
    }
}

#[test]
fn a_time_that_is_not_drawn_is_refused_and_one_that_is_drawn_is_suggested() {
    for preset in PRESETS {
        for asked in ["1000d", "-1000d", "1000000h", "-1000000h"] {
            let arguments = ["figure", preset.text, "--part", "sun-frame", "--time"];
            let refused = refusals(&run(&[&arguments[..], &[asked]].concat()));
            let [sentence] = &refused[..] else {
                panic!("one sentence, not {refused:?}")
            };
            assert!(sentence.contains(&format!("time {asked} is")), "{sentence}");
            let (_, rest) = sentence.split_once("`--time ").expect("a suggestion");
            let (suggested, _) = rest.split_once('`').expect("its end");
            figure(preset.text, "sun-frame", &["--time", suggested]);
        }
    }
}

#[test]
fn sizes_and_parts_outside_the_rule_are_refused_with_it() {
    let cases = [
        ("--size", "100000x100000", "from 240 to 4096; try 640x480"),
        ("--size", "10x10", "from 240 to 4096; try 640x480"),
        ("--size", "640", "try 640x480"),
        ("--size", "６４０x480", "try 640x480"),
        ("--theme", "blue", "light, dark"),
        (
            "--part",
            "orbit",
            "planet-frame, sun-frame, diagram, record",
        ),
    ];
    for (option, value, rule) in cases {
        let mut arguments = vec!["figure", "", option, value];
        if option != "--part" {
            arguments.extend(["--part", "diagram"]);
        }
        let output = run(&arguments);
        assert_eq!(output.status.code(), Some(2));
        let errors = errors(&output);
        assert!(errors.contains(value) && errors.contains(rule), "{errors}");
    }
}

/// A name in a folder, as an argument.
fn name(folder: &TemporaryFolder, name: &str) -> String {
    let path = folder.path().join(name);
    path.to_str().expect("a plain name").to_owned()
}

#[test]
fn a_file_is_replaced_by_a_whole_one_and_nothing_else_is_left() {
    let folder = TemporaryFolder::new("figure");
    let file = name(&folder, "Bild ü.svg");
    for old in [
        None,
        Some("an older and much longer picture ".repeat(10_000)),
    ] {
        if let Some(old) = old {
            fs::write(&file, old).expect("a file can be written");
        }
        let said = figure("", "diagram", &["--out", &file]);
        assert_eq!(said, format!("Wrote {file}\n"));
        let text = fs::read_to_string(&file).expect("it is there");
        assert_eq!(text, figure("", "diagram", &["--out", "-"]));
    }
    assert_eq!(fs::read_dir(folder.path()).expect("it is there").count(), 1);
}

#[test]
fn a_refusal_leaves_the_file_as_it_was() {
    let folder = TemporaryFolder::new("figure");
    let file = name(&folder, "pass.svg");
    fs::write(&file, "old").expect("a file can be written");
    let output = run(&["figure", "x", "--part", "diagram", "--out", &file]);
    assert_eq!(output.status.code(), Some(2));
    assert_eq!(fs::read_to_string(&file).expect("it is there"), "old");
}

#[test]
fn a_file_that_cannot_be_is_said_in_a_sentence() {
    let folder = TemporaryFolder::new("figure");
    let inside = folder.path().display();
    let cases = [
        (
            name(&folder, "no/such/f.svg"),
            2,
            format!("there is no folder {inside}/no/such"),
        ),
        (inside.to_string(), 2, format!("{inside} is a folder")),
        (
            name(&folder, &"long".repeat(100)),
            1,
            "could not write".to_owned(),
        ),
    ];
    for (file, status, words) in cases {
        let output = run(&["figure", "", "--part", "diagram", "--out", &file]);
        assert_eq!(output.status.code(), Some(status));
        let sentence = crate::sentence(&output);
        assert!(sentence.contains(&words), "{sentence}");
    }
    assert_eq!(fs::read_dir(folder.path()).expect("it is there").count(), 0);
}

#[test]
#[cfg(unix)]
fn a_link_stays_a_link() {
    let folder = TemporaryFolder::new("figure");
    let link = name(&folder, "link.svg");
    let file = name(&folder, "file.svg");
    fs::write(&file, "old").expect("a file can be written");
    std::os::unix::fs::symlink("file.svg", &link).expect("a link can be made");
    figure("", "diagram", &["--out", &link]);
    assert!(Path::new(&link).is_symlink());
    let text = fs::read_to_string(&file).expect("it is there");
    assert_eq!(text, figure("", "diagram", &[]));
}

/// A device, or a pipe to another program, takes the picture and is not replaced by a file. The pipe here is one of our
/// own: were this broken and the test used a device, whoever runs it as root would lose the device.
#[test]
#[cfg(unix)]
fn a_pipe_stays_a_pipe() {
    use std::io::Read as _;
    use std::os::unix::fs::FileTypeExt as _;

    let folder = TemporaryFolder::new("figure");
    let pipe = name(&folder, "pipe");
    let made = std::process::Command::new("mkfifo").arg(&pipe).status();
    assert!(made.expect("there is mkfifo").success());
    // Open for both, so that neither side waits for the other: the picture is smaller than what a pipe holds.
    let mut both = fs::OpenOptions::new();
    let mut open = both.read(true).write(true).open(&pipe).expect("a pipe");
    figure("", "diagram", &["--out", &pipe]);
    let kind = fs::symlink_metadata(&pipe).expect("it is there");
    assert!(kind.file_type().is_fifo());
    let mut read = vec![0; figure("", "diagram", &[]).len()];
    open.read_exact(&mut read).expect("the picture");
    assert_eq!(String::from_utf8(read), Ok(figure("", "diagram", &[])));
}

/// The pictures of the default pass that the README shows, and the page where JavaScript is missing.
#[test]
fn the_pictures_in_www_are_what_the_command_writes_now() {
    let www = Path::new(env!("CARGO_MANIFEST_DIR")).join("www");
    for part in ["planet-frame", "sun-frame", "diagram"] {
        let file = www.join(part).with_extension("svg");
        let kept = fs::read_to_string(&file).unwrap_or_default();
        let now = figure("", part, &["--size", "640x640", "--theme", "light"]);
        assert!(
            kept == now,
            "www/{part}.svg is not what the command writes now. If the new picture is right, renew all of them:\n\
             for part in planet-frame sun-frame diagram; do cargo run --release -- figure \"\" --part $part --out \
             www/$part.svg; done"
        );
    }
}
