//! Wishing, staying in the plane, and taking the answer.

use glam::DVec2;
use two_frames::physics::Free;
use two_frames::sandbox::{AimChange, Input, Sandbox};
use two_frames::scenario::{Field, PRESETS, Wish};

use super::{apply, get, preset, state};

fn wish(text: &str) -> Input {
    Input::Aim(AimChange::Wish(Wish::read(text).expect("a goal")))
}

fn value(sandbox: &mut Sandbox) -> Option<f64> {
    sandbox.aiming().expect("an answer").achieved()
}

fn is(sandbox: &Sandbox, field: Field, value: f64) -> bool {
    get(sandbox, field).to_bits() == value.to_bits()
}

#[test]
fn a_wish_changes_what_is_aimed_for_and_nothing_else() {
    let mut sandbox = Sandbox::default();
    let (scenario, revision) = (*sandbox.scenario(), sandbox.revision());
    apply(&mut sandbox, wish("turn=60"));
    assert_eq!(sandbox.scenario(), &scenario);
    assert!(
        sandbox.revision() > revision,
        "whoever shows it has to know"
    );
    assert!(value(&mut sandbox).is_some_and(|turn| (turn - 60.0).abs() < 1e-9));
    let before = state(&sandbox);
    apply(&mut sandbox, wish("turn=60"));
    assert_eq!(state(&sandbox), before, "the same wish again");
    apply(&mut sandbox, wish("turn=30"));
    assert!(value(&mut sandbox).is_some_and(|turn| (turn - 30.0).abs() < 1e-9));
    // Another pass has another answer to the same wish.
    let old = sandbox.aiming().expect("an answer").answer;
    apply(&mut sandbox, Input::Set(Field::VInfinity, 12.0));
    assert_ne!(sandbox.aiming().expect("an answer").answer, old);
    assert!(value(&mut sandbox).is_some_and(|turn| (turn - 30.0).abs() < 1e-9));
}

#[test]
fn only_what_is_free_changes() {
    for free in [Free::Periapsis, Free::AimPoint, Free::Approach] {
        let mut sandbox = Sandbox::open("approach=100&aim=180");
        for input in [
            Input::Aim(AimChange::Free(free)),
            wish("most=gain"),
            Input::Aim(AimChange::Take),
        ] {
            apply(&mut sandbox, input);
        }
        // With the approach free as well, the mirror image of the best pass is as good, on the other side.
        if free != Free::Approach {
            assert_eq!(
                is(&sandbox, Field::Aim, 180.0),
                free == Free::Periapsis,
                "{free:?}"
            );
        }
        assert_eq!(
            is(&sandbox, Field::Approach, 100.0),
            free != Free::Approach,
            "{free:?}"
        );
        assert_eq!(get(&sandbox, Field::VInfinity).to_bits(), 9.0_f64.to_bits());
    }
}

#[test]
fn a_taken_answer_is_the_pass_and_answers_again() {
    for goal in [
        "reach=saturn",
        "perihelion=2",
        "leave=3",
        "change=-2",
        "turn=45",
        "most=gain",
        "most=loss",
    ] {
        let mut sandbox = Sandbox::default();
        apply(&mut sandbox, wish(goal));
        let answer = sandbox.aiming().expect("an answer").answer;
        let wanted = value(&mut sandbox).expect("a value");
        apply(&mut sandbox, Input::Aim(AimChange::Take));
        assert_eq!(sandbox.scenario(), &answer, "{goal}");
        let again = value(&mut sandbox).expect("a value");
        assert!(
            (again - wanted).abs() < 1e-9,
            "{goal}: {again} after {wanted}"
        );
        assert!(sandbox.aim_settings().in_plane, "{goal}");
    }
}

#[test]
fn a_refused_wish_leaves_the_pass_alone() {
    let mut sandbox = Sandbox::default();
    apply(&mut sandbox, wish("reach=jupiter"));
    let refused = sandbox.aiming().expect_err("its own orbit").to_string();
    assert!(refused.contains("the orbit of Jupiter"), "{refused}");
    let before = state(&sandbox);
    apply(&mut sandbox, Input::Aim(AimChange::Take));
    assert_eq!(state(&sandbox), before);
    // The same wish makes sense elsewhere.
    apply(&mut sandbox, Input::Planet("saturn".into()));
    assert!(sandbox.aiming().is_ok());
    // Numbers that no computer holds have no answer either.
    let mut sandbox = Sandbox::open("planet=custom&gm=1e300&radius=1e200&orbit=1e200");
    let scenario = *sandbox.scenario();
    apply(&mut sandbox, wish("most=gain"));
    assert!(sandbox.aiming().is_err() && sandbox.aim_solution().is_err());
    apply(&mut sandbox, Input::Aim(AimChange::Take));
    assert_eq!(sandbox.scenario(), &scenario);
}

#[test]
fn the_plane_is_entered_on_the_nearer_side() {
    for (aim, side) in [
        (0.0, 0.0),
        (80.0, 0.0),
        (-89.0, 0.0),
        (100.0, 180.0),
        (-95.0, 180.0),
        (-180.0, 180.0),
    ] {
        let mut sandbox = Sandbox::open(&format!("crank=30&aim={aim}"));
        assert!(
            !sandbox.aim_settings().in_plane,
            "it opens out of the plane"
        );
        apply(&mut sandbox, Input::Aim(AimChange::InPlane(true)));
        for (field, value) in [
            (Field::Crank, 0.0),
            (Field::Aim, side),
            (Field::Approach, 129.0),
        ] {
            assert!(is(&sandbox, field, value), "aim={aim}: {field:?}");
        }
        assert!(sandbox.aim_settings().in_plane);
    }
}

/// A crank angle of 180° is in the plane already: the probe comes from the other side of the planet's motion.
#[test]
fn a_pass_cranked_right_round_is_the_same_in_the_plane() {
    for aim in [0.0, 180.0] {
        let mut sandbox = Sandbox::open(&format!("crank=180&aim={aim}"));
        let before = sandbox.solved().expect("a pass").flyby;
        apply(&mut sandbox, Input::Aim(AimChange::InPlane(true)));
        let after = sandbox.solved().expect("a pass").flyby;
        assert_eq!(get(&sandbox, Field::Crank).to_bits(), 0.0_f64.to_bits());
        let moved = (after.velocity_out.km_s - before.velocity_out.km_s).length();
        assert!(moved < 1e-12, "{moved} km/s, aim={aim}");
    }
}

#[test]
fn leaving_the_plane_is_noticed() {
    let open = |text: &str| Sandbox::open(text).aim_settings().in_plane;
    assert!(open("") && open("aim=180") && open("aim=-180"));
    assert!(!open("aim=90") && !open("crank=1") && !open(preset("out-of-plane").text));
    for input in [
        Input::Set(Field::Aim, 30.0),
        Input::Set(Field::Crank, -2.0),
        Input::Preset(4),
    ] {
        let mut sandbox = Sandbox::default();
        apply(&mut sandbox, input.clone());
        assert!(!sandbox.aim_settings().in_plane, "{input:?}");
    }
    // The most tilt is looked for out of the plane, and taking it leaves the plane.
    let mut sandbox = Sandbox::default();
    apply(&mut sandbox, wish("most=inclination"));
    assert!(value(&mut sandbox).is_some_and(|tilt| tilt > 20.0));
    assert!(
        sandbox.aim_settings().in_plane,
        "asking alone leaves nothing"
    );
    apply(&mut sandbox, Input::Aim(AimChange::Take));
    assert!(!sandbox.aim_settings().in_plane);
}

#[test]
fn a_link_keeps_the_wish_and_an_example_brings_its_own() {
    let mut sandbox = Sandbox::default();
    for input in [
        wish("leave=2"),
        Input::Aim(AimChange::Free(Free::Approach)),
        Input::Open("planet=saturn&periapsis=5".into()),
    ] {
        apply(&mut sandbox, input);
    }
    let wished = |sandbox: &Sandbox| {
        let aim = sandbox.aim_settings();
        (aim.wish.map(|wish| wish.to_string()), aim.free)
    };
    assert_eq!(wished(&sandbox), (Some("leave=2".into()), Free::Approach));
    for (index, example) in PRESETS.iter().enumerate() {
        apply(&mut sandbox, Input::Preset(index));
        let own = example.wish.map(|wish| wish.to_string());
        assert_eq!(wished(&sandbox), (own, Free::Approach), "{}", example.id);
        assert_eq!(sandbox.aim_settings().measure, example.measure);
        // What it aims for makes sense there.
        assert!(example.wish.is_none() || sandbox.aiming().is_ok());
    }
    apply(&mut sandbox, Input::Reset);
    assert_eq!(wished(&sandbox).0.as_deref(), Some("reach=saturn"));
    assert!(sandbox.aim_settings().in_plane, "as the pass has it");
}

#[test]
fn fine_steps_lead_across_the_planet() {
    for text in ["", "periapsis=1", "planet=mars&periapsis=3"] {
        let mut sandbox = Sandbox::open(text);
        let mut pressed = 0;
        while get(&sandbox, Field::Aim).abs() < 90.0 {
            let step = AimChange::Nudge(DVec2::NEG_X);
            apply(&mut sandbox, Input::Aim(step));
            pressed += 1;
            assert!(pressed < 300, "{text}: stuck at {}", sandbox.scenario());
        }
        assert!((get(&sandbox, Field::Aim) - 180.0).abs() < 1e-9, "{text}");
    }
}

#[test]
fn an_aim_point_that_no_periapsis_has_is_refused() {
    let mut sandbox = Sandbox::default();
    let before = sandbox.scenario().to_string();
    for point in [[0.0, 0.0], [1e30, 0.0], [1.0, 0.0]] {
        let refused = sandbox.apply(Input::Aim(AimChange::At(point)));
        let words = refused.expect_err("no such periapsis").to_string();
        assert!(words.starts_with("periapsis="), "{words}");
        assert_eq!(sandbox.scenario().to_string(), before);
    }
    apply(&mut sandbox, Input::Aim(AimChange::At([f64::NAN, 0.0])));
    assert_eq!(sandbox.scenario().to_string(), before);
}

/// What is not free stays to the last bit.
#[test]
fn an_answer_leaves_the_rest_as_it_was() {
    let mut sandbox = Sandbox::open("approach=128.99999999999997&aim=0.1");
    for change in [
        AimChange::Wish(Wish::read("leave=3").expect("a goal")),
        AimChange::Free(Free::Periapsis),
        AimChange::Take,
    ] {
        apply(&mut sandbox, Input::Aim(change));
    }
    assert_eq!(
        get(&sandbox, Field::Approach).to_bits(),
        128.999_999_999_999_97_f64.to_bits()
    );
    assert_eq!(get(&sandbox, Field::Aim).to_bits(), 0.1_f64.to_bits());
}
