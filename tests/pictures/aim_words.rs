//! The words of the aim plane's picture, and that it holds for whatever is set.

use fastrand::Rng;
use glam::dvec2;
use two_frames::physics::Measure;
use two_frames::scenario::PRESETS;

use crate::aim::{MEASURES, SIZE, aimed, picture};
use crate::common::labels;
use crate::finite::check;
use crate::geometry::Box2;
use crate::scenarios::any;

#[test]
fn axes_are_named_in_words() {
    for (text, words) in [
        (
            "approach=129",
            [
                "behind, sunward · B·T →",
                "← ahead, outward",
                "↑ north · −B·R",
            ],
        ),
        (
            "approach=-129",
            [
                "ahead, sunward · B·T →",
                "← behind, outward",
                "↑ north · −B·R",
            ],
        ),
        (
            "approach=0",
            ["outward · B·T →", "← sunward", "↑ north · −B·R"],
        ),
        (
            "approach=90&crank=90",
            ["ahead · B·T →", "← behind", "↑ outward · −B·R"],
        ),
    ] {
        let picture = picture(&mut aimed(text, Measure::Turn, ""));
        for word in words {
            assert_eq!(labels(&picture, word).len(), 1, "{text}: {word}");
        }
    }
}

#[test]
fn a_flat_map_says_so() {
    for (text, measure, words) in [
        (
            "planet=custom&gm=1&radius=1000&orbit=1&v-infinity=50&approach=90",
            Measure::SpeedChange,
            "nearly the same everywhere",
        ),
        (
            "v-infinity=0.01",
            Measure::SpeedChange,
            "nearly the same everywhere",
        ),
        (
            "planet=custom&gm=1e-9&radius=1&orbit=1&v-infinity=9&approach=60",
            Measure::Aphelion,
            "nearly the same everywhere",
        ),
        (
            "planet=mercury&v-infinity=100&approach=90",
            Measure::Aphelion,
            "every pass leaves the Sun",
        ),
    ] {
        let picture = picture(&mut aimed(text, measure, ""));
        let said = picture.labels().any(|label| label.text.contains(words));
        assert!(said, "{text} {measure:?}");
    }
}

/// No name covers another, at any size that the page has.
#[test]
fn names_keep_apart() {
    for preset in &PRESETS {
        for measure in MEASURES {
            let mut sandbox = aimed(preset.text, measure, "leave=4");
            for width in [320.0, 420.0, 700.0] {
                let picture = sandbox
                    .aim_picture(dvec2(width, 1.15 * width), 8)
                    .expect("a pass");
                let boxes: Vec<_> = picture
                    .labels()
                    .map(|label| (&label.text, Box2::new(label.bounds())))
                    .collect();
                for (i, (one, a)) in boxes.iter().enumerate() {
                    for (other, b) in &boxes[i + 1..] {
                        assert!(
                            a.overlap(b) < 0.5,
                            "{} {measure:?} {width}: “{one}” and “{other}”",
                            preset.id
                        );
                    }
                }
            }
        }
    }
}

#[test]
fn whatever_is_set_every_coordinate_is_finite() {
    let mut rng = Rng::with_seed(22);
    for i in 0..400 {
        let text = any(&mut rng).to_string();
        let wish = ["", "leave=3", "most=gain", "aphelion=9", "turn=40"][i % 5];
        let mut sandbox = aimed(&text, MEASURES[i % 7], wish);
        if let Ok(picture) = sandbox.aim_picture(SIZE, 16) {
            check(&picture, &text);
        }
    }
}
