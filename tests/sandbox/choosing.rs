//! Choosing a planet, opening another pass, coming closer.

use two_frames::figure::Look;
use two_frames::sandbox::{Change, Input, Pace, PaceLaw, Sandbox};
use two_frames::scenario::{Field, PRESETS, PlanetChoice};

use super::{SIZES, apply, clock, get, state, time};

#[test]
fn every_planet_can_be_chosen_and_a_custom_one_starts_as_the_last() {
    for (key, _) in PlanetChoice::KNOWN {
        let mut sandbox = Sandbox::default();
        apply(&mut sandbox, Input::Planet(key.into()));
        assert_eq!(sandbox.scenario().planet().key(), key);
        assert_eq!(get(&sandbox, Field::VInfinity).to_bits(), 9.0_f64.to_bits());
        let known = sandbox.solved().expect("a pass").flyby;
        apply(&mut sandbox, Input::Planet("custom".into()));
        let custom = sandbox.solved().expect("a pass").flyby;
        assert_eq!(
            custom.encounter.planet.gm.to_bits(),
            known.encounter.planet.gm.to_bits(),
            "{key}"
        );
        assert_eq!(custom.turn_rad.to_bits(), known.turn_rad.to_bits(), "{key}");
        // The orbit goes through AU and back, which may cost the last bit.
        assert!(
            (custom.speed_change_km_s() - known.speed_change_km_s()).abs() < 1e-12,
            "{key}"
        );
        // Its numbers are now one's own, and go with it.
        for (field, value) in [(Field::Gm, 4e5), (Field::Radius, 6e3), (Field::Orbit, 1.5)] {
            apply(&mut sandbox, Input::Set(field, value));
            assert_eq!(get(&sandbox, field).to_bits(), value.to_bits());
        }
        apply(&mut sandbox, Input::Planet("custom".into()));
        assert_eq!(
            get(&sandbox, Field::Gm).to_bits(),
            4e5_f64.to_bits(),
            "custom again changes nothing"
        );
        let text = sandbox.scenario().to_string();
        assert_eq!(
            Sandbox::open(&text).scenario(),
            sandbox.scenario(),
            "{text}"
        );
        apply(&mut sandbox, Input::Planet(key.into()));
        assert_eq!(sandbox.scenario().get(Field::Gm), None);
        assert_eq!(
            sandbox.solved().expect("a pass").flyby,
            known,
            "{key}: back where it was"
        );
    }
}

/// Opening something else keeps the pace and nothing else.
#[test]
fn presets_texts_and_reset_start_afresh_at_the_same_pace() {
    let pace = Pace {
        law: PaceLaw::Even,
        whole_s: 7.0,
    };
    let opening = [
        (Input::Preset(4), PRESETS[4].text),
        (Input::Open(PRESETS[7].text.into()), PRESETS[7].text),
        (Input::Open(String::new()), PRESETS[0].text),
        (Input::Reset, PRESETS[0].text),
    ];
    for (input, text) in opening {
        let mut sandbox = Sandbox::open("planet=nowhere");
        clock(&mut sandbox, Change::Pace(pace));
        clock(&mut sandbox, Change::Scrub(0.1));
        clock(&mut sandbox, Change::Play);
        apply(&mut sandbox, Input::Zoom(4.0));
        apply(&mut sandbox, Input::Set(Field::Aim, 33.0));
        apply(&mut sandbox, input.clone());
        let mut fresh = Sandbox::open(text);
        clock(&mut fresh, Change::Pace(pace));
        if matches!(input, Input::Preset(_)) {
            // An example out of the plane is seen from behind; in the plane this changes nothing.
            apply(&mut fresh, Input::Look(Look::BEHIND));
        }
        assert_eq!(sandbox.scenario(), fresh.scenario(), "{input:?}");
        assert_eq!(
            time(&mut sandbox).to_bits(),
            time(&mut fresh).to_bits(),
            "{input:?}"
        );
        assert_eq!(sandbox.pace(), pace, "{input:?}");
        assert!(
            !sandbox.is_playing() && sandbox.notices().is_empty(),
            "{input:?}"
        );
        assert_eq!(
            sandbox.views(&SIZES),
            fresh.views(&SIZES),
            "{input:?}: zoom as fitted"
        );
    }
    let mut sandbox = Sandbox::default();
    let before = state(&sandbox);
    apply(&mut sandbox, Input::Preset(PRESETS.len()));
    assert!(state(&sandbox) == before, "there is no such pass");
}

#[test]
fn zoom_changes_the_scale_within_its_limits() {
    let mut sandbox = Sandbox::default();
    let scale = |sandbox: &mut Sandbox| {
        let views = sandbox.views(&SIZES).expect("a pass");
        assert_eq!(
            views.planet.scale.to_bits(),
            views.sun.scale.to_bits(),
            "one scale for both"
        );
        views.planet.scale
    };
    let fitted = scale(&mut sandbox);
    for (factor, share) in [(2.0, 0.5), (0.5, 1.0), (1e9, 1.0 / 64.0), (1e-9, 16.0)] {
        apply(&mut sandbox, Input::Zoom(factor));
        assert!(
            (scale(&mut sandbox) / fitted / share - 1.0).abs() < 1e-12,
            "zoom {factor}"
        );
    }
    apply(&mut sandbox, Input::Fit);
    assert_eq!(scale(&mut sandbox).to_bits(), fitted.to_bits());
    assert_eq!(
        sandbox.preset(),
        Some(&PRESETS[0]),
        "looking closer is no other pass"
    );
}
