//! Whole scenarios at once: ready-made passes, the planet, the side, a planet of one's own, and starting again.

use thirtyfour::prelude::*;
use two_frames::physics::Planet;
use two_frames::sandbox::Input;
use two_frames::scenario::{Field, PRESETS, PlanetChoice};

use crate::native::Native;
use crate::page::{Outcome, Page, on_our_page};

#[test]
fn every_ready_made_pass_opens_from_the_list() {
    on_our_page("", async |page| {
        page.ready().await?;
        for (i, preset) in PRESETS.iter().enumerate() {
            if i > 0 {
                let before = page.looks().await?;
                page.type_into("[data-action=preset]", Key::Down + "")
                    .await?;
                let after = page.looks().await?;
                for (picture, (now, then)) in after.iter().zip(&before).enumerate() {
                    assert_ne!(now, then, "picture {picture} of {}", preset.id);
                }
            }
            is_shown(page, &mut Native::of(preset.text)).await?;
            let words = page.text("[data-text=preset]").await?;
            assert!(
                words.contains(preset.look) && words.contains(preset.why),
                "{words}"
            );
            let name = preset.probe.split(',').next().expect("a name");
            assert!(page.text("[data-text=title]").await?.contains(name));
        }
        Ok(())
    });
}

/// The numbers are the library's, and the clock stands at the telling moment.
async fn is_shown(page: &Page, native: &mut Native) -> Outcome {
    page.expect(native).await?;
    assert_eq!(page.time_d().await?.to_bits(), native.telling_d().to_bits());
    Ok(())
}

#[test]
fn every_planet_can_be_chosen() {
    on_our_page("", async |page| {
        page.ready().await?;
        page.type_into("#planet", Key::Home + "").await?;
        for (i, (key, body)) in PlanetChoice::KNOWN.into_iter().enumerate() {
            let name = Planet::of(body).name;
            if i > 0 {
                page.press(&[Key::Down]).await?;
            }
            assert_eq!(page.value_in("#planet").await?, key);
            page.expect(&Native::at_first().with(Input::Planet(key.to_owned())))
                .await?;
            let sentence = page.text("[data-text=planet-sentence]").await?;
            assert!(sentence.contains(name), "{sentence}");
        }
        Ok(())
    });
}

#[test]
fn a_planet_of_one_s_own_starts_as_the_last_one_and_can_be_changed() {
    on_our_page("", async |page| {
        page.ready().await?;
        let custom = || Native::at_first().with(Input::Planet("custom".to_owned()));
        assert_eq!(
            page.value_of("deep('#gm-number')[0].checkVisibility()")
                .await?,
            false
        );
        page.type_into("#planet", "A planet").await?;
        page.expect(&custom()).await?;
        let mut native = custom();
        for (field, typed) in [
            (Field::Gm, "2.5e6"),
            (Field::Radius, "15000"),
            (Field::Orbit, "0.35"),
        ] {
            let value = typed.parse().expect("a number");
            let before = page.looks().await?;
            page.retype(&format!("#{}-number", field.spec().key), typed)
                .await?;
            native = native.with_value(field, value);
            page.expect(&native).await?;
            assert_ne!(page.looks().await?, before, "{typed}");
        }
        let slider = "[data-field=gm] [data-part=slider]";
        page.type_into(slider, Key::Right + "").await?;
        let gm: f64 = page
            .value_in("#gm-number")
            .await?
            .parse()
            .expect("a number");
        assert!(gm > 2.5e6);
        page.expect(&native.with_value(Field::Gm, gm)).await
    });
}

#[test]
fn the_side_can_be_chosen() {
    on_our_page("", async |page| {
        page.ready().await?;
        let checked = "deep('[data-side] input').map(radio => radio.checked)";
        assert_eq!(
            page.value_of(checked).await?,
            serde_json::json!([true, false])
        );
        assert!(page.text("[data-side='0']").await?.contains("behind"));
        assert!(page.text("[data-side='1']").await?.contains("ahead"));
        page.click("[data-side='1']").await?;
        page.expect(&Native::at_first().with_value(Field::Aim, 180.0))
            .await?;
        assert_eq!(
            page.value_of(checked).await?,
            serde_json::json!([false, true])
        );
        assert!(page.quantity("sun_frame.speed_change_km_s").await? < 0.0);
        // With the keys, as radio buttons go.
        page.press(&[Key::Up]).await?;
        page.expect(&Native::at_first()).await?;
        // Neither, once the probe passes over a pole.
        page.click("[data-action=plane-only]").await?;
        page.retype("#aim-number", "90").await?;
        assert_eq!(
            page.value_of(checked).await?,
            serde_json::json!([false, false])
        );
        Ok(())
    });
}

#[test]
fn further_settings_come_into_sight_when_a_link_uses_them() {
    on_our_page("", async |page| {
        page.ready().await?;
        let open = "deep('#crank-number, #aim-number').every(field => field.checkVisibility())";
        assert_eq!(page.value_of(open).await?, false);
        page.reopen("aim=90&crank=5&probe-mass=1000").await?;
        assert_eq!(page.value_of(open).await?, true);
        page.click("details.more summary").await?;
        let native = Native::of("aim=90&crank=5&probe-mass=1000");
        page.expect(&native).await?;
        // The mass changes no path; it changes what the planet loses.
        let key = "page.planet_speed_change_km_s";
        let before = (page.looks().await?, page.quantity(key).await?);
        page.retype("#probe-mass-number", "2000").await?;
        assert_eq!(page.looks().await?, before.0);
        let ratio = page.quantity(key).await? / before.1;
        assert!((ratio - 2.0).abs() < 1e-12, "{ratio}");
        page.expect(&native.with_value(Field::ProbeMass, 2000.0))
            .await
    });
}

#[test]
fn start_again_goes_back_to_the_first_state() {
    on_our_page("planet=saturn&periapsis=3&v-infinity=12", async |page| {
        page.ready().await?;
        page.click("[data-action=to-periapsis]").await?;
        page.click("[data-action=closer]").await?;
        page.click("[data-action=reset]").await?;
        is_shown(page, &mut Native::at_first()).await?;
        let fresh = page.looks().await?;
        page.reopen("").await?;
        assert_eq!(page.looks().await?, fresh);
        Ok(())
    });
}

#[test]
fn explanations_unfold_and_stay_unfolded_while_a_setting_moves() {
    on_our_page("", async |page| {
        page.ready().await?;
        let open = "deep('.table details[open]').length";
        page.click(".table details summary").await?;
        assert_eq!(page.value_of(open).await?, 1);
        page.click("[data-field=periapsis] [data-part=more]")
            .await?;
        assert_eq!(page.value_of(open).await?, 1);
        Ok(())
    });
}
