//! `figure --look`: the stages from each side, and the parts that have none.

use glam::DVec2;
use two_frames::figure::{Look, Theme, svg};
use two_frames::sandbox::{AimChange, Input, Sandbox, Sizes};

use crate::figure::{check_picture, figure};
use crate::{errors, refusals, run};

/// The stages of the default pass from each side, as the library draws them.
#[test]
fn a_stage_can_be_seen_from_each_side() {
    for (name, look) in [
        ("north", Look::NORTH),
        ("behind", Look::BEHIND),
        ("side", Look::SIDE),
    ] {
        let mut sandbox = Sandbox::default();
        for input in [Input::Aim(AimChange::InPlane(false)), Input::Look(look)] {
            sandbox.apply(input).expect("every look is taken");
        }
        let pictures = sandbox.pictures(&Sizes::all(DVec2::splat(640.0)));
        let pictures = pictures.expect("the default pass has pictures");
        let [planet, sun, ..] = sandbox.panel().expect("and words").descriptions;
        for (part, picture, words) in [
            ("planet-frame", pictures.planet_frame, planet),
            ("sun-frame", pictures.sun_frame, sun),
        ] {
            let printed = figure("", part, &["--look", name]);
            check_picture(&printed, "640", "640");
            assert_eq!(printed, svg(&picture, &words, Theme::Light));
            let same = printed == figure("", part, &[]);
            assert_eq!(same, name == "north", "{part} {name}");
        }
    }
}

#[test]
fn a_look_at_what_has_none_is_refused() {
    for part in ["diagram", "record"] {
        for look in ["north", "behind", "side"] {
            let refused = refusals(&run(&["figure", "", "--part", part, "--look", look]));
            let [sentence] = &refused[..] else {
                panic!("one sentence, not {refused:?}")
            };
            assert!(sentence.contains("`--look`") && sentence.contains("planet-frame"));
        }
    }
    let output = run(&["figure", "", "--part", "sun-frame", "--look", "above"]);
    assert_eq!(output.status.code(), Some(2));
    assert!(errors(&output).contains("north, behind, side"));
}
