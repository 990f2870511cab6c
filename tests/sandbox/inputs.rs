//! Opening, setting, typing, sliding, pressing, choosing; and what is refused.

use two_frames::sandbox::{Change, Input, Sandbox};
use two_frames::scenario::{Field, PRESETS, Scenario};

use super::{apply, clock, get, preset, state, time};

/// The fields that every pass has.
fn fields() -> impl Iterator<Item = Field> {
    Field::ALL
        .into_iter()
        .filter(|field| !field.is_of_custom_planet())
}

#[test]
fn it_opens_with_the_first_ready_made_pass_paused_at_its_telling_moment() {
    let mut sandbox = Sandbox::default();
    assert_eq!(*sandbox.scenario(), PRESETS[0].scenario());
    assert_eq!(sandbox.preset(), Some(&PRESETS[0]));
    assert!(!sandbox.is_playing() && !sandbox.is_dragging() && sandbox.notices().is_empty());
    assert!(time(&mut sandbox) > 0.0);
    for preset in &PRESETS {
        let mut sandbox = Sandbox::open(preset.text);
        assert_eq!(sandbox.preset(), Some(preset));
        let now = time(&mut sandbox);
        let solved = sandbox.solved().expect("a pass");
        let (flyby, encounter) = (solved.flyby, solved.flyby.encounter);
        let (position, _) = flyby.seen_from_planet(now);
        // Three times as far as at periapsis, on the way out; before a strike, two radii from the centre on the way in.
        let want = if flyby.strikes() {
            2.0 * encounter.planet.radius_km
        } else {
            3.0 * encounter.periapsis_km
        };
        assert!(
            (position.km.length() / want - 1.0).abs() < 1e-9,
            "{}",
            preset.id
        );
        assert_eq!(now < 0.0, flyby.strikes(), "{}", preset.id);
    }
}

#[test]
fn a_bad_text_opens_with_defaults_and_notices() {
    let sandbox = Sandbox::open("planet=saturn&periapsis=0&colour=red");
    assert_eq!(
        (
            sandbox.scenario().planet().key(),
            get(&sandbox, Field::Periapsis)
        ),
        ("saturn", 8.0)
    );
    assert_eq!(sandbox.notices().len(), 2);
    assert_eq!(sandbox.preset(), None);
}

#[test]
fn setting_a_field_changes_that_field_only() {
    for field in fields() {
        let spec = field.spec();
        let mut sandbox = Sandbox::default();
        for value in [
            spec.min,
            spec.max,
            0.5 * (spec.min + spec.max),
            spec.slider.0,
            spec.slider.1,
        ] {
            apply(&mut sandbox, Input::Set(field, value));
            let mut expected = Scenario::default();
            expected.set(field, value).expect("a value in the range");
            assert_eq!(*sandbox.scenario(), expected);
            assert_eq!(get(&sandbox, field).to_bits(), value.to_bits());
        }
    }
}

#[test]
fn what_is_refused_changes_nothing_and_says_why() {
    let mut sandbox = Sandbox::open(preset("loss").text);
    clock(&mut sandbox, Change::Scrub(0.3));
    let before = state(&sandbox);
    let mut bad = vec![
        Input::Planet("pluto".into()),
        Input::Planet(String::new()),
        Input::Set(Field::Gm, 5.0),
        Input::Type(Field::Radius, "7000".into()),
        Input::Slide(Field::Orbit, 500.0),
    ];
    for field in fields() {
        let spec = field.spec();
        for value in [
            f64::NAN,
            f64::INFINITY,
            f64::NEG_INFINITY,
            spec.min - 1.0,
            spec.max * 1.001,
        ] {
            bad.push(Input::Set(field, value));
        }
        for text in ["", " ", "8 ", "eight", "1,5", "NaN", "inf", "1e999", "0x8"] {
            bad.push(Input::Type(field, text.into()));
        }
        bad.push(Input::Type(field, format!("{}", spec.max * 2.0)));
    }
    for input in bad {
        let notice = sandbox
            .apply(input.clone())
            .expect_err("this is not allowed")
            .to_string();
        assert!(
            notice.contains("try ") && notice.ends_with('.'),
            "{input:?}: {notice}"
        );
        assert!(state(&sandbox) == before, "{input:?}");
    }
}

#[test]
fn typing_is_setting() {
    for (field, text, value) in [
        (Field::VInfinity, "12.5", 12.5),
        (Field::Approach, "-90", -90.0),
        (Field::Periapsis, "1e2", 100.0),
        (Field::Aim, "+180", 180.0),
        (Field::ProbeMass, ".5", 0.5),
    ] {
        let (mut typed, mut set) = (Sandbox::default(), Sandbox::default());
        apply(&mut typed, Input::Type(field, text.into()));
        apply(&mut set, Input::Set(field, value));
        assert!(state(&typed) == state(&set), "{text}");
    }
}

#[test]
fn sliders_run_from_end_to_end_and_no_farther() {
    for field in fields() {
        let spec = field.spec();
        let (low, high, _) = spec.slider_range();
        let mut sandbox = Sandbox::default();
        for (position, value) in [
            (low, spec.slider.0),
            (high, spec.slider.1),
            (low - 1e9, spec.slider.0),
            (high + 1e9, spec.slider.1),
        ] {
            apply(&mut sandbox, Input::Slide(field, position));
            assert_eq!(
                get(&sandbox, field).to_bits(),
                value.to_bits(),
                "{} at {position}",
                spec.key
            );
        }
        let mut last = f64::NEG_INFINITY;
        for i in 0..=50 {
            let position = low + (high - low) * f64::from(i) / 50.0;
            apply(&mut sandbox, Input::Slide(field, position));
            let value = get(&sandbox, field);
            // Three digits on a logarithmic slider are within five thousandths, and a thousandth of the way is less.
            let back = spec.slider_position(value);
            assert!(
                value > last && (back - position).abs() <= 1.5e-3 * (high - low),
                "{} at {position}: {value}, {back}",
                spec.key
            );
            last = value;
        }
    }
}

#[test]
fn presses_take_one_step_and_come_back() {
    for field in fields() {
        let spec = field.spec();
        let mut sandbox = Sandbox::default();
        let start = get(&sandbox, field);
        apply(&mut sandbox, Input::Press(field, 1.0));
        let up = get(&sandbox, field);
        let stop = (start - spec.max).abs() < f64::EPSILON;
        assert!(up > start || stop, "{}: {start} to {up}", spec.key);
        apply(&mut sandbox, Input::Press(field, -1.0));
        assert!(
            (get(&sandbox, field) / start - 1.0).abs() < 2e-3
                || start == 0.0 && get(&sandbox, field) == 0.0,
            "{}",
            spec.key
        );
        apply(&mut sandbox, Input::Press(field, 1e6));
        assert_eq!(
            get(&sandbox, field).to_bits(),
            spec.max.to_bits(),
            "{}",
            spec.key
        );
        apply(&mut sandbox, Input::Press(field, -1e6));
        assert_eq!(
            get(&sandbox, field).to_bits(),
            spec.min.to_bits(),
            "{}",
            spec.key
        );
    }
    // A step is what the words on the button promise.
    let mut sandbox = Sandbox::default();
    apply(&mut sandbox, Input::Press(Field::VInfinity, 3.0));
    assert_eq!(get(&sandbox, Field::VInfinity).to_bits(), 9.3_f64.to_bits());
    // A custom planet's buttons do nothing while there is none.
    let before = state(&sandbox);
    apply(&mut sandbox, Input::Press(Field::Gm, 1.0));
    assert!(state(&sandbox) == before, "there is no custom planet");
}
