//! The page's address carries the settings: it follows them, it opens them, and Back and Forward move between them.

use serde_json::json;
use thirtyfour::prelude::*;
use two_frames::scenario::{Field, PRESETS, Scenario};

use crate::native::Native;
use crate::page::{Outcome, Page, on_our_page};

/// Counts what the page asks of the browser's history, with the time of each call.
const COUNT: &str = "
    window.calls = [];
    for (const kind of ['replaceState', 'pushState']) {
        const own = history[kind].bind(history);
        history[kind] = (...all) => { calls.push([kind, performance.now()]); own(...all); };
    }";

#[test]
fn the_address_follows_a_drag_a_few_times_a_second() {
    on_our_page("", async |page| {
        page.ready().await?;
        page.expect(&Native::at_first()).await?;
        page.run(COUNT, Vec::new()).await?;
        let slider = "[data-field=v-infinity] [data-part=slider]";
        let length = page.value_of("history.length").await?;
        let mut places = Vec::new();
        for i in 0..8 {
            places.push(
                page.place_in(slider, if i % 2 == 0 { 0.1 } else { 0.9 }, 0.5)
                    .await?,
            );
        }
        let started = page
            .value_of("performance.now()")
            .await?
            .as_f64()
            .expect("a time");
        page.drag(&places).await?;
        let value: f64 = page
            .value_in("#v-infinity-number")
            .await?
            .parse()
            .expect("a number");
        page.expect(&Native::at_first().with_value(Field::VInfinity, value))
            .await?;
        let calls: Vec<(String, f64)> = serde_json::from_value(page.value_of("calls").await?)?;
        let seconds = (calls.last().expect("a call").1 - started) / 1000.0;
        assert!(
            calls.iter().all(|(kind, _)| kind == "replaceState"),
            "{calls:?}"
        );
        assert!(
            calls.len() as f64 <= 2.0 + 4.0 * seconds,
            "{} calls in {seconds} s",
            calls.len()
        );
        assert_eq!(page.value_of("history.length").await?, length);
        Ok(())
    });
}

#[test]
fn back_and_forward_move_between_ready_made_passes() {
    on_our_page("", async |page| {
        page.ready().await?;
        page.expect(&Native::at_first()).await?;
        for preset in &PRESETS[1..4] {
            page.type_into("[data-action=preset]", Key::Down + "")
                .await?;
            page.expect(&Native::of(preset.text)).await?;
        }
        // A setting of one's own in between is kept with the pass that it started from.
        page.retype("#periapsis-number", "5").await?;
        let own = || Native::of(PRESETS[3].text).with_value(Field::Periapsis, 5.0);
        page.expect(&own()).await?;
        for preset in [&PRESETS[2], &PRESETS[1], &PRESETS[0]] {
            page.run("history.back();", Vec::new()).await?;
            page.expect(&Native::of(preset.text)).await?;
        }
        assert_eq!(page.value_in("#periapsis-number").await?, "8");
        page.run("history.go(3);", Vec::new()).await?;
        page.expect(&own()).await
    });
}

/// Opens a link, and expects the scenario and the notices that the library makes of it.
async fn opens(page: &Page, link: &str) -> Outcome {
    page.reopen(link).await?;
    expect_reading(page, link).await
}

async fn expect_reading(page: &Page, link: &str) -> Outcome {
    let reading = Scenario::read(link);
    page.expect(&Native::of(&reading.scenario.to_string()))
        .await?;
    let words: Vec<_> = reading.notices.iter().map(ToString::to_string).collect();
    let whole_pass = |text: &String| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let shown = page.texts("[data-text=notices] li").await?;
    assert_eq!(
        shown.iter().map(whole_pass).collect::<Vec<_>>(),
        words.iter().map(whole_pass).collect::<Vec<_>>(),
        "{link}"
    );
    Ok(())
}

#[test]
fn links_open_with_a_notice_for_what_cannot_be_used() {
    let long = format!(
        "periapsis=5&{}=1&v-infinity={}",
        "x".repeat(5000),
        "9".repeat(5000)
    );
    on_our_page("", async |page| {
        for link in [
            "v=1&planet=saturn&v-infinity=5.5&approach=-60&crank=10&periapsis=2.5&aim=-45&probe-mass=722",
            "planet=custom&gm=1e5&radius=6e3&orbit=1",
            "v=2&planet=jupiter&periapsis=5",
            "planet=vulcan&periapsis=0.001&v-infinity=fast&flavour=3",
            "periapsis=5&periapsis=6",
            "periapsis=NaN&v-infinity=Infinity&aim=1e999&approach=",
            "complete garbage",
            "%%%&&&===#?//",
            "planet=custom&gm=5",
            "<b>=1&periapsis=<script>alert(1)</script>",
            &long,
        ] {
            opens(
                page,
                &link
                    .replace(' ', "%20")
                    .replace('<', "%3C")
                    .replace('>', "%3E"),
            )
            .await?;
        }
        Ok(())
    });
}

#[test]
fn an_address_edited_by_hand_is_followed() {
    on_our_page("", async |page| {
        page.ready().await?;
        page.expect(&Native::at_first()).await?;
        for link in [
            "planet=venus&periapsis=2",
            "periapsis=-1",
            "planet=mars",
            "",
        ] {
            page.run("location.hash = arguments[0];", vec![json!(link)])
                .await?;
            page.wait_until("!document.hidden").await?;
            expect_reading(page, link).await?;
        }
        Ok(())
    });
}

#[test]
fn notices_go_when_another_pass_is_chosen() {
    on_our_page("periapsis=0", async |page| {
        page.ready().await?;
        assert_eq!(page.texts("[data-text=notices] li").await?.len(), 1);
        page.type_into("[data-action=preset]", Key::Down + "")
            .await?;
        page.expect(&Native::of(PRESETS[1].text)).await?;
        assert_eq!(page.texts("[data-text=notices] li").await?.len(), 0);
        Ok(())
    });
}

/// Lets the page write to the clipboard and a test read it, or not.
async fn allow_clipboard(page: &Page, allowed: bool) -> Outcome {
    for name in ["clipboard-read", "clipboard-write"] {
        let setting = if allowed { "granted" } else { "denied" };
        let permission = json!({ "permission": { "name": name }, "setting": setting });
        page.cdp("Browser.setPermission", permission).await?;
    }
    Ok(())
}

#[test]
fn the_link_is_copied() {
    on_our_page("planet=saturn&periapsis=3", async |page| {
        page.ready().await?;
        allow_clipboard(page, true).await?;
        page.click("[data-field=periapsis] [data-part=more]")
            .await?;
        page.click("[data-action=share]").await?;
        let copied = "navigator.clipboard.readText().then(done, error => done(String(error)));";
        let link = page.run_async(copied, Vec::new()).await?;
        let link = link.as_str().expect("a text").to_owned();
        let (_, text) = link.split_once('#').expect("the scenario's text");
        page.expect(&Native::of(text)).await?;
        assert_eq!(page.value_in("[data-part=link]").await?, link);
        page.driver().goto(&link).await?;
        page.ready().await?;
        page.expect(&Native::of(text)).await
    });
}

#[test]
fn where_copying_is_not_allowed_the_link_stands_ready_to_be_copied_by_hand() {
    on_our_page("", async |page| {
        page.ready().await?;
        allow_clipboard(page, false).await?;
        page.click("[data-action=share]").await?;
        let link = page.value_in("[data-part=link]").await?;
        assert!(
            link.ends_with(&format!("#{}", Native::at_first().text())),
            "{link}"
        );
        let selected = "(f => f.checkVisibility() && f.selectionEnd - f.selectionStart === f.value.length)(deep('[data-part=link]')[0])";
        assert_eq!(page.value_of(selected).await?, true);
        Ok(())
    });
}

#[test]
fn a_link_that_stays_in_sight_stays_true() {
    on_our_page("", async |page| {
        page.ready().await?;
        allow_clipboard(page, true).await?;
        page.click("[data-action=share]").await?;
        page.click("[data-field=periapsis] [data-part=more]")
            .await?;
        page.wait_until("location.hash.includes('periapsis=8.4')")
            .await?;
        let shown =
            "(f => !f.checkVisibility() || f.value === location.href)(deep('[data-part=link]')[0])";
        assert_eq!(
            page.value_of(shown).await?,
            true,
            "the link in sight is that of other settings"
        );
        Ok(())
    });
}
