//! What a program can find of WCAG 2.2 A and AA where the page aims and leaves the plane; and what is said of the answer.

use serde_json::{Value, json};

use crate::accessible::{sound, unfold_all};
use crate::aiming::PLANE;
use crate::layout::faults;
use crate::page::{Outcome, Page, on_our_page};
use crate::wishing::{VALUE, WISH};

/// Takes the page through the states of aiming, and does the same in each.
async fn in_each_state(page: &Page, check: &impl AsyncFn(&Page, &str) -> Outcome) -> Outcome {
    page.reopen("").await?;
    page.click("[data-action=plane-only]").await?;
    check(page, "the switch off").await?;
    page.choose("[data-action=look]", "behind").await?;
    unfold_all(page).await?;
    check(page, "the switch off, from behind, unfolded").await?;
    page.choose(WISH, "aphelion").await?;
    page.paste_over(VALUE, "-4").await?;
    check(page, "a refused value of the goal").await?;
    page.choose(WISH, "reach=jupiter").await?;
    check(page, "one's own orbit").await?;
    page.choose(WISH, "most=inclination").await?;
    page.click("[data-action=take]").await?;
    check(page, "the most tilt taken").await?;
    page.choose("[data-action=measure]", "aphelion").await?;
    page.choose("[data-action=against]", "v-infinity").await?;
    check(page, "another outcome").await?;
    page.go_to("planet=custom&gm=1e-300&radius=1e300&orbit=1e300&crank=4")
        .await?;
    page.wait_until("deep('#app[data-state=refused]').length == 1")
        .await?;
    page.settle().await?;
    check(page, "refused settings").await
}

#[test]
fn every_state_of_aiming_is_sound_in_every_look() {
    on_our_page("", async |page| {
        page.resize(1280, 800, 1.0).await?;
        for look in [
            &[("prefers-color-scheme", "light")],
            &[("prefers-color-scheme", "dark")],
            &[("forced-colors", "active")],
        ] {
            page.prefer(look).await?;
            in_each_state(page, &async |page: &Page, state: &str| {
                sound(page, &format!("{look:?}, {state}")).await
            })
            .await?;
        }
        Ok(())
    });
}

#[test]
fn every_state_of_aiming_is_sound_on_a_narrow_screen() {
    on_our_page("", async |page| {
        page.resize(320, 640, 1.0).await?;
        in_each_state(page, &async |page: &Page, state: &str| {
            sound(page, &format!("320 wide, {state}")).await
        })
        .await
    });
}

/// WCAG 2.2, 1.4.4: at 200 % nothing is lost. A browser's own zoom halves the page's pixels; a person's larger letters double
/// them. Here one comes on top of the other.
#[test]
fn twice_as_large_and_letters_twice_as_large_again_it_still_fits_and_is_sound() {
    on_our_page("", async |page| {
        page.resize(640, 400, 2.0).await?;
        for letters in ["", "32px"] {
            in_each_state(page, &async |page: &Page, state: &str| {
                let size = "document.documentElement.style.fontSize = arguments[0]";
                page.run(size, vec![json!(letters)]).await?;
                page.settle().await?;
                let found = faults(page).await?;
                let none = Vec::<String>::new();
                assert_eq!(found.outside, none, "{letters}, {state}");
                assert_eq!(found.overlapping, none, "{letters}, {state}");
                sound(page, &format!("200 % {letters}, {state}")).await?;
                page.run(size, vec![json!("")]).await?;
                page.settle().await
            })
            .await?;
        }
        Ok(())
    });
}

/// The answer is a live region: while a slider moves it is busy, so that nothing is said until all has settled.
#[test]
fn the_answer_is_said_once_things_have_settled() {
    on_our_page("", async |page| {
        page.ready().await?;
        let busy = "deep('[data-text=answer]')[0].getAttribute('aria-busy')";
        let live = "deep('[data-text=answer]')[0].getAttribute('aria-live')";
        assert_eq!(page.value_of(live).await?, "polite");
        let settled = format!("{busy} === 'false'");
        page.wait_until(&settled).await?;
        // Seen from within the page at every change: it never changes while it is not busy.
        let watch = "window.early = 0; window.late = 0; const list = deep('[data-text=answer]')[0];
            new MutationObserver(() => { if (list.ariaBusy === 'true') late++; else early++; })
                .observe(list, { childList: true, subtree: true });";
        page.run(watch, Vec::new()).await?;
        let slider = "[data-field=v-infinity] [data-part=slider]";
        let places = [
            page.place_in(slider, 0.2, 0.5).await?,
            page.place_in(slider, 0.8, 0.5).await?,
        ];
        page.drag(&places).await?;
        page.wait_until(&settled).await?;
        assert_eq!(page.value_of("early").await?, 0);
        assert!(page.value_of("late").await?.as_u64() > Some(3));
        Ok(())
    });
}

#[test]
fn the_aim_plane_tells_its_aim() {
    on_our_page("", async |page| {
        page.ready().await?;
        let label = format!("deep('{PLANE}')[0].getAttribute('aria-label')");
        let before = page.value_of(&label).await?;
        page.click("[data-field=periapsis] [data-part=more]")
            .await?;
        let after = page.value_of(&label).await?;
        assert_ne!(before, after);
        assert!(
            matches!(&after, Value::String(words) if words.contains("km")),
            "{after}"
        );
        Ok(())
    });
}
