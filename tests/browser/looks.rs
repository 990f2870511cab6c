//! From where the stages are seen: list, sliders, drag and arrow keys lead to one and the same view of both.

use serde_json::json;
use thirtyfour::prelude::*;
use two_frames::sandbox::{AimChange, Input};

use crate::hand::Place;
use crate::layout::{Faults, SCREENS, faults};
use crate::native::Native;
use crate::page::{Outcome, Page, on_our_page};
use crate::reading::Look;

/// A pass out of the orbit plane, which looks different from each side.
const PASS: &str = "aim=90&v-infinity=11&approach=110&periapsis=3";

const LIST: &str = "[data-action=look]";

/// Opens the pass, seen from north, with the sliders at hand.
async fn open(page: &Page) -> WebDriverResult<[Look; 4]> {
    page.reopen(PASS).await?;
    page.run("deep('details.look')[0].open = true;", Vec::new())
        .await?;
    page.settle().await?;
    page.looks().await
}

/// Chooses a look from the list as a person does.
async fn choose(page: &Page, value: &str) -> Outcome {
    page.run(
        "const list = deep('[data-action=look]')[0];
         list.value = arguments[0];
         list.dispatchEvent(new Event('change', { bubbles: true }));",
        vec![json!(value)],
    )
    .await?;
    page.settle().await
}

/// What the list and the two sliders say.
async fn said(page: &Page) -> WebDriverResult<[String; 3]> {
    Ok([
        page.value_in(LIST).await?,
        page.value_in("[data-action=around]").await?,
        page.value_in("[data-action=height]").await?,
    ])
}

async fn focus(page: &Page, selector: &str) -> Outcome {
    page.run("deep(arguments[0])[0].focus();", vec![json!(selector)])
        .await
        .map(drop)
}

/// Fails unless both stages differ from what they were, and the other two pictures do not.
#[track_caller]
fn expect_turned(now: &[Look; 4], before: &[Look; 4]) {
    assert!(now[0] != before[0] && now[1] != before[1]);
    assert_eq!(now[2..], before[2..]);
}

#[test]
fn the_list_shows_both_stages_from_each_side_and_back() {
    on_our_page("", async |page| {
        let north = open(page).await?;
        assert_eq!(said(page).await?, ["north", "0", "90"]);
        let mut seen = vec![north.clone()];
        for (value, around) in [("behind", "0"), ("side", "90")] {
            choose(page, value).await?;
            assert_eq!(said(page).await?, [value, around, "0"]);
            let now = page.looks().await?;
            for before in &seen {
                expect_turned(&now, before);
            }
            seen.push(now);
        }
        choose(page, "north").await?;
        assert_eq!(page.looks().await?, north);
        page.expect(&Native::of(PASS)).await
    });
}

/// From the side, three degrees back and two up: by the sliders' keys, by a stage's keys, by the mouse on either stage.
#[test]
fn sliders_keys_and_mouse_reach_the_same_look() {
    on_our_page("", async |page| {
        open(page).await?;
        let from_side = async || {
            choose(page, "side").await?;
            page.looks().await
        };
        let side = from_side().await?;
        focus(page, "[data-action=around]").await?;
        for _ in 0..3 {
            page.press(&[Key::Left]).await?;
        }
        focus(page, "[data-action=height]").await?;
        for _ in 0..2 {
            page.press(&[Key::Up]).await?;
        }
        let meant = page.looks().await?;
        assert_eq!(said(page).await?, ["turned", "87", "2"]);
        expect_turned(&meant, &side);
        for picture in ["planet", "sun"] {
            let stage = format!("[data-picture={picture}] canvas");
            from_side().await?;
            focus(page, &stage).await?;
            page.press(&[Key::Shift, Key::Left]).await?;
            for _ in 0..12 {
                page.press(&[Key::Right]).await?;
            }
            for key in [Key::Up, Key::Up, Key::Up, Key::Down] {
                page.press(&[key]).await?;
            }
            assert_eq!(
                said(page).await?,
                ["turned", "87", "2"],
                "keys on {picture}"
            );
            assert_eq!(page.looks().await?, meant, "keys on {picture}");

            from_side().await?;
            let from = page.place_in(&stage, 0.9, 0.7).await?;
            let to: Place = (from.0 + 6.0, from.1 + 4.0);
            page.drag(&[from, to]).await?;
            assert_eq!(
                said(page).await?,
                ["turned", "87", "2"],
                "mouse on {picture}"
            );
            assert_eq!(page.looks().await?, meant, "mouse on {picture}");
            // Let go is let go.
            page.drag(&[(5.0, 5.0), (60.0, 90.0)]).await?;
            assert_eq!(page.looks().await?, meant);
        }
        page.expect(&Native::of(PASS)).await
    });
}

#[test]
fn a_finger_turns_both_stages_and_the_page_stays() {
    on_our_page("", async |page| {
        page.touch_screen(true).await?;
        page.resize(390, 844, 2.0).await?;
        for picture in ["planet", "sun"] {
            let north = open(page).await?;
            let stage = format!("[data-picture={picture}] canvas");
            let from = page.place_in(&stage, 0.9, 0.8).await?;
            let before = page.value_of("scrollY").await?;
            page.swipe(&[from, (from.0, from.1 - 80.0)]).await?;
            assert_eq!(said(page).await?, ["turned", "0", "50"], "{picture}");
            expect_turned(&page.looks().await?, &north);
            assert_eq!(page.value_of("scrollY").await?, before, "{picture}");
        }
        Ok(())
    });
}

#[test]
fn screen_readers_are_told_and_another_pass_is_seen_from_north() {
    on_our_page("", async |page| {
        open(page).await?;
        choose(page, "behind").await?;
        for picture in ["planet", "sun"] {
            page.wait_until(&format!(
                "deep('[data-picture={picture}] canvas')[0].getAttribute('aria-label').includes(\"looking along Jupiter's motion\")"
            ))
            .await?;
        }
        let found = page.violations().await?;
        assert!(found.is_empty(), "{found:#?}");
        page.click("[data-action=reset]").await?;
        assert_eq!(said(page).await?, ["north", "0", "90"]);
        Ok(())
    });
}

#[test]
fn in_the_plane_only_there_is_nothing_to_turn_with() {
    on_our_page("", async |page| {
        open(page).await?;
        let visible = "deep('.look, [data-action=look], [data-action=around]').filter(e => e.checkVisibility()).length";
        assert!(page.value_of(visible).await?.as_u64() > Some(2));
        choose(page, "behind").await?;
        page.click("[data-action=plane-only]").await?;
        assert_eq!(page.value_of(visible).await?, 0);
        // The pass is brought into the plane, and seen from north.
        assert_eq!(said(page).await?, ["north", "0", "90"]);
        page.expect(&Native::of(PASS).with(Input::Aim(AimChange::InPlane(true))))
            .await?;
        let flat = page.looks().await?;
        // Neither keys nor mouse turn it there.
        let stage = "[data-picture=planet] canvas";
        assert_eq!(
            page.value_of(&format!("deep('{stage}')[0].tabIndex"))
                .await?,
            -1
        );
        let from = page.place_in(stage, 0.9, 0.7).await?;
        page.drag(&[from, (from.0 - 60.0, from.1 + 40.0)]).await?;
        assert_eq!(page.looks().await?, flat);
        page.click("[data-action=plane-only]").await?;
        assert!(page.value_of(visible).await?.as_u64() > Some(2));
        Ok(())
    });
}

#[test]
fn the_sliders_fit_on_every_screen() {
    on_our_page("", async |page| {
        for (width, height) in SCREENS {
            page.resize(width, height, 1.0).await?;
            open(page).await?;
            assert_eq!(faults(page).await?, Faults::default(), "{width}x{height}");
        }
        Ok(())
    });
}
