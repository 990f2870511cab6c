//! What a person sees who opens the page and touches nothing.

use serde_json::json;

use crate::native::Native;
use crate::page::{Outcome, Page, on_our_page};

#[test]
fn the_page_answers_and_has_a_title() {
    on_our_page("", async |page| {
        let title = page.driver().title().await?;
        assert!(title.contains("Two Frames"), "the title is {title:?}");
        Ok(())
    });
}

#[test]
fn tern_passes_jupiter_in_both_frames() {
    on_our_page("", async |page| {
        page.ready().await?;
        let mut native = Native::at_first();
        page.expect(&native).await?;
        let body = page.text("body").await?;
        for words in ["Tern", "Jupiter", "Planet frame", "Sun frame"] {
            assert!(body.contains(words), "{words} is not on the page");
        }
        // Source: the project's own promise, worked out by hand from v-infinity 9 km/s, 129° and Jupiter's
        // 13.06 km/s; common practice, no source.
        assert_eq!(
            page.text("[data-text=planet-sentence]").await?,
            "Relative to Jupiter: 9.00 km/s in, 9.00 km/s out."
        );
        assert_eq!(
            page.text("[data-text=sun-sentence]").await?,
            "Round the Sun: 10.18 km/s in, 21.08 km/s out."
        );
        // The probe stands where the bend and what comes out of it are both to be seen: after periapsis, in the picture.
        let telling = native.telling_d();
        assert!(telling > 0.0);
        assert_eq!(page.time_d().await?.to_bits(), telling.to_bits());
        Ok(())
    });
}

#[test]
fn all_four_pictures_are_drawn() {
    on_our_page("", async |page| {
        page.ready().await?;
        for look in page.looks().await? {
            // Ground, ink, and at least one colour of each frame; smoothed edges add many more.
            assert!(look.colours > 20, "a picture with only {look:?}");
        }
        Ok(())
    });
}

#[test]
fn nothing_moves_by_itself() {
    on_our_page("", async |page| {
        nothing_moves(page).await?;
        page.prefer(&[("prefers-reduced-motion", "reduce")]).await?;
        page.reopen("").await?;
        nothing_moves(page).await
    });
}

/// Watches for a second: no frame is asked for, and the pictures and the time stay.
async fn nothing_moves(page: &Page) -> Outcome {
    page.ready().await?;
    let before = (page.looks().await?, page.time_d().await?);
    let watch = "
        const own = requestAnimationFrame;
        let asked = 0;
        window.requestAnimationFrame = f => { asked += 1; return own(f); };
        setTimeout(() => { window.requestAnimationFrame = own; done(asked); }, 1000);";
    assert_eq!(page.run_async(watch, Vec::new()).await?, json!(0));
    assert_eq!((page.looks().await?, page.time_d().await?), before);
    assert!(page.text("[data-action=play]").await?.contains("Play"));
    Ok(())
}
