//! `figure --part aim-plane` and `--part outcome`, and the options that go with them.

use two_frames::report::MeasureWords;

use crate::figure::{check_picture, figure};
use crate::{errors, refusals, run};

#[test]
fn the_aim_plane_shows_each_outcome_and_a_goal() {
    for words in MeasureWords::ALL {
        let more = ["--show", words.key, "--for", "leave=5"];
        let text = figure("planet=saturn", "aim-plane", &more);
        check_picture(&text, "640", "640");
        for part in [words.label, ">goal<", ">strikes<", "data:image/png;base64,"] {
            assert!(text.contains(part), "{}: no {part}", words.key);
        }
    }
    let usual = figure("", "aim-plane", &[]);
    assert_eq!(usual, figure("", "aim-plane", &["--show", "speed-change"]));
    assert!(!usual.contains(">goal<"), "none is asked for");
}

#[test]
fn a_goal_that_makes_no_sense_is_refused() {
    for (goal, words) in [
        ("reach=jupiter", "Jupiter"),
        ("leave=fast", "leave=fast"),
        ("height=3", "no such goal"),
    ] {
        let refused = refusals(&run(&["figure", "", "--part", "aim-plane", "--for", goal]));
        assert!(
            refused.len() == 1 && refused[0].contains(words),
            "{goal}: {refused:?}"
        );
    }
}

#[test]
fn an_outcome_may_be_charted_against_each_setting() {
    for words in MeasureWords::ALL {
        for against in ["periapsis", "approach", "v-infinity"] {
            let more = ["--show", words.key, "--against", against];
            let text = figure("planet=venus&v-infinity=6", "outcome", &more);
            check_picture(&text, "640", "640");
            assert!(text.contains(words.label), "{} {against}", words.key);
        }
    }
    let usual = figure("", "outcome", &[]);
    let spelt_out = ["--show", "speed-change", "--against", "periapsis"];
    assert_eq!(usual, figure("", "outcome", &spelt_out));
    assert!(usual.contains("best +11.88 km/s at 2.36 planet radii"));
}

#[test]
fn options_that_a_part_has_no_use_for_are_refused() {
    for (part, option, value, rule) in [
        (
            "record",
            "--against",
            "approach",
            "goes with `--part outcome` only",
        ),
        (
            "diagram",
            "--show",
            "turn",
            "goes with `--part aim-plane` and `--part outcome` only",
        ),
        (
            "outcome",
            "--time",
            "1d",
            "goes with the pictures of one moment only",
        ),
        (
            "outcome",
            "--for",
            "leave=5",
            "goes with `--part aim-plane` only",
        ),
    ] {
        let refused = refusals(&run(&["figure", "", "--part", part, option, value]));
        assert!(
            refused.len() == 1 && refused[0].contains(option) && refused[0].contains(rule),
            "{refused:?}"
        );
    }
    for (option, rule) in [
        ("--show", "speed-change, energy-change"),
        ("--against", "periapsis, approach"),
    ] {
        let output = run(&["figure", "", "--part", "outcome", option, "height"]);
        assert_eq!(output.status.code(), Some(2));
        assert!(errors(&output).contains(rule), "{}", errors(&output));
    }
}
