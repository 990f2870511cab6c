//! Every setting in every way: slider by mouse and keys, number field, − and + buttons. Each changes pictures and
//! numbers at once, and the numbers are the library's own.

use thirtyfour::prelude::*;
use two_frames::sandbox::Input;
use two_frames::scenario::{Field, Spec};

use crate::native::Native;
use crate::page::{Outcome, Page, on_our_page};

/// The settings that a person moves most.
const FIELDS: [Field; 4] = [
    Field::VInfinity,
    Field::Approach,
    Field::Periapsis,
    Field::Aim,
];

/// A part of a field's control.
fn part(field: Field, name: &str) -> String {
    format!("[data-field={}] [data-part={name}]", field.spec().key)
}

/// The value that a field's slider and number field show; they have to agree.
async fn shown(page: &Page, field: Field) -> WebDriverResult<f64> {
    let read = |text: String| text.parse::<f64>().expect("a number");
    let number = read(page.value_in(&part(field, "number")).await?);
    let position = read(page.value_in(&part(field, "slider")).await?);
    let spec: &Spec = field.spec();
    let (low, high, step) = spec.slider_range();
    let meant = spec.slider_position(number).clamp(low, high);
    assert!(
        (position - meant).abs() <= 0.5 * step + 1e-9,
        "{} = {number}, but its slider stands at {position}, not at {meant}",
        spec.key
    );
    Ok(number)
}

/// Does something to a field, then holds pictures and numbers to it: all four pictures have changed, and every number is
/// that of the value now shown. Returns that value.
async fn changed(
    page: &Page,
    field: Field,
    act: impl AsyncFnOnce() -> Outcome,
) -> WebDriverResult<f64> {
    let before = (page.looks().await?, shown(page, field).await?);
    act().await?;
    let value = shown(page, field).await?;
    let key = field.spec().key;
    assert!(value.total_cmp(&before.1).is_ne(), "{key} stayed {value}");
    for (i, (now, then)) in page.looks().await?.iter().zip(&before.0).enumerate() {
        assert_ne!(now, then, "picture {i} stayed as {key} became {value}");
    }
    page.expect(&Native::at_first().with_value(field, value))
        .await?;
    Ok(value)
}

/// Opens the page afresh with every setting that moves the probe in sight.
async fn unfold(page: &Page) -> Outcome {
    page.reopen("").await?;
    page.click("[data-action=plane-only]").await
}

/// Runs a test of each field on a fresh page.
fn for_each_field(test: &impl AsyncFn(&Page, Field) -> Outcome) {
    on_our_page("", async |page| {
        for field in FIELDS {
            unfold(page).await?;
            test(page, field).await?;
        }
        Ok(())
    });
}

#[test]
fn sliders_follow_the_mouse() {
    for_each_field(&async |page: &Page, field| {
        let slider = part(field, "slider");
        let value = changed(page, field, async || {
            let places = [
                page.place_in(&slider, 0.3, 0.5).await?,
                page.place_in(&slider, 0.75, 0.5).await?,
            ];
            page.drag(&places).await
        })
        .await?;
        // Three quarters of the way, give or take the slider's own margins.
        let (low, high, _) = field.spec().slider_range();
        let part = (field.spec().slider_position(value) - low) / (high - low);
        assert!((part - 0.75).abs() < 0.05, "{value} is at {part}");
        Ok(())
    });
}

#[test]
fn sliders_follow_the_keys() {
    for_each_field(&async |page: &Page, field| {
        let slider = part(field, "slider");
        let spec = field.spec();
        let (low, high) = spec.slider;
        let key = async |key: Key| {
            changed(page, field, async || {
                page.type_into(&slider, key + "").await
            })
            .await
        };
        let start = shown(page, field).await?;
        let more = key(Key::Right).await?;
        assert!(more > start, "→ led from {start} to {more}");
        assert!(key(Key::Down).await? < more);
        let far = key(Key::PageUp).await?;
        assert!(
            far - start > 2.0 * (more - start),
            "Page Up led from {start} to {far}"
        );
        assert!((key(Key::End).await? - high).abs() < 1e-12);
        // A turn of 360° is the same pass again, so the other end of an angle is reached by way of another value.
        key(Key::PageDown).await?;
        assert!((key(Key::Home).await? - low).abs() < 1e-12);
        Ok(())
    });
}

#[test]
fn buttons_step_and_step_back() {
    for_each_field(&async |page: &Page, field| {
        let start = shown(page, field).await?;
        for (name, presses) in [("more", 1.0), ("less", -1.0), ("less", -1.0)] {
            let before = shown(page, field).await?;
            let value = changed(page, field, async || page.click(&part(field, name)).await).await?;
            let meant = Native::at_first()
                .with_value(field, before)
                .with(Input::Press(field, presses))
                .get(field);
            assert_eq!(value.to_bits(), meant.to_bits(), "from {start}, {name}");
        }
        Ok(())
    });
}

#[test]
fn numbers_can_be_typed() {
    for_each_field(&async |page: &Page, field| {
        // More digits than a slider gives, beyond the sliders' ends where the range is wider, and exponents.
        let typed = match field {
            Field::VInfinity => ["5.640625", "77.7", "1e1"],
            Field::Approach => ["-12.3456789", "180", "6e1"],
            Field::Periapsis => ["1.0000001", "9999.5", "2e2"],
            _ => ["33.25", "-180", "9e1"],
        };
        for text in typed {
            let value = changed(page, field, async || {
                page.retype(&part(field, "number"), text).await
            })
            .await?;
            let meant: f64 = text.parse().expect("a number");
            assert_eq!(value.to_bits(), meant.to_bits(), "{text}");
        }
        Ok(())
    });
}

#[test]
fn settings_follow_a_finger() {
    on_our_page("", async |page| {
        page.touch_screen(true).await?;
        page.resize(390, 844, 2.0).await?;
        for field in FIELDS {
            page.reopen("").await?;
            page.tap("[data-action=plane-only]").await?;
            changed(page, field, async || page.tap(&part(field, "more")).await).await?;
            changed(page, field, async || page.tap(&part(field, "slider")).await).await?;
            changed(page, field, async || {
                let slider = part(field, "slider");
                let places = [
                    page.place_in(&slider, 0.5, 0.5).await?,
                    page.place_in(&slider, 0.3, 0.5).await?,
                ];
                page.swipe(&places).await
            })
            .await?;
        }
        Ok(())
    });
}

/// Turned about the planet's motion, the approach comes from above or below: the numbers that are angles to that motion
/// stay, the pictures do not.
#[test]
fn the_crank_and_the_probe_s_mass_can_be_typed() {
    on_our_page("", async |page| {
        for (field, opener, typed) in [
            (Field::Crank, "[data-action=plane-only]", "-37.5"),
            (Field::ProbeMass, "details.more summary", "1234.5"),
        ] {
            page.reopen("").await?;
            let number = part(field, "number");
            let visible = format!("deep('{number}')[0].checkVisibility()");
            assert_eq!(page.value_of(&visible).await?, false, "{number}");
            page.click(opener).await?;
            assert_eq!(page.value_of(&visible).await?, true, "{number}");
            let before = page.looks().await?;
            page.retype(&number, typed).await?;
            let value = shown(page, field).await?;
            assert_eq!(value.to_string(), typed);
            page.expect(&Native::at_first().with_value(field, value))
                .await?;
            let stage_moved = page.looks().await?[0] != before[0];
            assert_eq!(stage_moved, field == Field::Crank, "{number}");
        }
        Ok(())
    });
}
