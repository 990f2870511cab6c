//! Playing the pass: the clock, its pace, its ends, and the view.

use serde_json::json;
use thirtyfour::prelude::*;
use two_frames::sandbox::{Change, Input, Pace, PaceLaw};
use two_frames::scenario::PRESETS;

use crate::native::Native;
use crate::page::{Outcome, Page, on_our_page};

/// The moment and the pace's words that the library gives after some changes of the clock.
fn after(text: &str, changes: &[Change]) -> (f64, String) {
    let mut sandbox = Native::of(text).sandbox;
    for change in changes {
        let result = sandbox.apply(Input::Clock(*change));
        result.expect("a clock refuses nothing");
    }
    let panel = sandbox.panel().expect("it is solved");
    (panel.time_d, panel.rate)
}

/// Holds the page's moment to the library's, bit for bit.
async fn expect_moment(page: &Page, changes: &[Change]) -> Outcome {
    let (meant, _) = after(PRESETS[0].text, changes);
    assert_eq!(
        page.time_d().await?.to_bits(),
        meant.to_bits(),
        "after {changes:?}"
    );
    Ok(())
}

async fn choose(page: &Page, list: &str, key: Key) -> Outcome {
    page.type_into(&format!("[data-action={list}]"), key + "")
        .await
}

async fn scrub_to(page: &Page, key: Key) -> Outcome {
    page.type_into("[data-action=scrub]", key + "").await
}

#[test]
fn beads_periapsis_and_the_time_slider_lead_to_exact_moments() {
    on_our_page("", async |page| {
        page.ready().await?;
        page.click("[data-action=on]").await?;
        expect_moment(page, &[Change::Step(1.0)]).await?;
        page.click("[data-action=back]").await?;
        page.click("[data-action=back]").await?;
        let steps = [Change::Step(1.0), Change::Step(-1.0), Change::Step(-1.0)];
        expect_moment(page, &steps).await?;
        page.click("[data-action=to-periapsis]").await?;
        assert!(page.time_d().await?.abs() < 1e-300);
        assert!(page.text("[data-text=moment]").await?.contains("periapsis"));
        for (key, position) in [(Key::Home, 0.0), (Key::Right, 0.001), (Key::End, 1.0)] {
            let before = page.looks().await?;
            scrub_to(page, key).await?;
            expect_moment(page, &[Change::Scrub(position)]).await?;
            assert_ne!(page.looks().await?, before);
        }
        let places = [
            page.place_in("[data-action=scrub]", 0.9, 0.5).await?,
            page.place_in("[data-action=scrub]", 0.25, 0.5).await?,
        ];
        page.drag(&places).await?;
        let position: f64 = page
            .value_in("[data-action=scrub]")
            .await?
            .parse()
            .expect("a number");
        expect_moment(page, &[Change::Scrub(position / 1000.0)]).await
    });
}

#[test]
fn the_time_slider_keeps_its_place_whatever_the_time_in_words() {
    on_our_page("", async |page| {
        let place = "(r => [r.x, r.width])(deep('[data-action=scrub]')[0].getBoundingClientRect())";
        for (width, height) in [(1280, 800), (768, 1024), (390, 844)] {
            page.resize(width, height, 1.0).await?;
            page.reopen("").await?;
            page.click("[data-action=to-periapsis]").await?;
            let before = page.value_of(place).await?;
            for key in [Key::Home, Key::End] {
                scrub_to(page, key).await?;
                let now = page.value_of(place).await?;
                assert_eq!(now, before, "x and width of the slider, {width} px wide");
            }
        }
        Ok(())
    });
}

#[test]
fn the_time_shown_is_the_pass_s_own_at_every_pace() {
    on_our_page("", async |page| {
        page.ready().await?;
        page.click("[data-action=to-periapsis]").await?;
        let pace = |law, whole_s| Change::Pace(Pace { law, whole_s });
        let rate = |law, whole_s| after(PRESETS[0].text, &[Change::Go(0.0), pace(law, whole_s)]).1;
        let words = async || page.text("[data-text=rate]").await;
        assert_eq!(words().await?, rate(PaceLaw::SlowerNear, 16.0));
        choose(page, "law", Key::Down).await?;
        assert_eq!(words().await?, rate(PaceLaw::Even, 16.0));
        for (key, whole_s) in [(Key::Up, 8.0), (Key::End, 64.0)] {
            choose(page, "whole", key).await?;
            assert_eq!(words().await?, rate(PaceLaw::Even, whole_s));
        }
        // Choosing a pace starts nothing.
        assert!(page.time_d().await?.abs() < 1e-300);
        Ok(())
    });
}

/// The page's clock (ms) and the moment shown (days), read together.
async fn clocks(page: &Page) -> WebDriverResult<(f64, f64)> {
    let both = "[performance.now(), Number(deep('[data-text=moment]')[0].dataset.value)]";
    Ok(serde_json::from_value(page.value_of(both).await?)?)
}

#[test]
fn playing_runs_at_its_pace_until_it_is_paused() {
    on_our_page("", async |page| {
        page.ready().await?;
        choose(page, "law", Key::Down).await?;
        scrub_to(page, Key::Home).await?;
        page.click("[data-action=play]").await?;
        assert!(page.text("[data-action=play]").await?.contains("Pause"));
        let (start_ms, start_d) = clocks(page).await?;
        page.wait_until(&format!("performance.now() > {start_ms} + 1500"))
            .await?;
        let (end_ms, end_d) = clocks(page).await?;
        page.click("[data-action=play]").await?;
        assert!(page.text("[data-action=play]").await?.contains("Play"));
        // Evenly, the whole pass in 16 s; both clocks are read between two frames, so a tenth is allowed.
        let whole_d = 2.0 * after(PRESETS[0].text, &[Change::Scrub(1.0)]).0;
        let meant = whole_d * (end_ms - start_ms) / 16_000.0;
        let ran = end_d - start_d;
        assert!(
            (ran / meant - 1.0).abs() < 0.1,
            "ran {ran} days, not {meant}"
        );
        let stopped = (page.time_d().await?, page.looks().await?);
        page.settle().await?;
        page.settle().await?;
        assert_eq!((page.time_d().await?, page.looks().await?), stopped);
        Ok(())
    });
}

#[test]
fn the_pass_stops_at_its_end_and_starts_again_from_there() {
    on_our_page("", async |page| {
        page.ready().await?;
        let end = after(PRESETS[0].text, &[Change::Scrub(1.0)]).0;
        choose(page, "whole", Key::Home).await?;
        scrub_to(page, Key::End).await?;
        scrub_to(page, Key::PageDown).await?;
        page.click("[data-action=play]").await?;
        page.wait_until("deep('[data-action=play]')[0].textContent.includes('Play')")
            .await?;
        assert_eq!(page.time_d().await?.to_bits(), end.to_bits());
        page.click("[data-action=play]").await?;
        page.wait_until("Number(deep('[data-text=moment]')[0].dataset.value) < 0")
            .await?;
        page.click("[data-action=play]").await
    });
}

#[test]
fn a_pass_that_strikes_ends_at_the_surface() {
    let strike = PRESETS.iter().find(|preset| preset.id == "strikes");
    let text = strike.expect("a pass that strikes").text;
    on_our_page(text, async |page| {
        page.ready().await?;
        let end = after(text, &[Change::Scrub(1.0)]).0;
        assert!(end < 0.0, "it strikes before periapsis");
        scrub_to(page, Key::End).await?;
        assert_eq!(page.time_d().await?.to_bits(), end.to_bits());
        page.click("[data-action=to-periapsis]").await?;
        assert_eq!(page.time_d().await?.to_bits(), end.to_bits());
        let words = page.text("main").await?;
        assert!(words.contains("strikes Jupiter"));
        let radius_km = Native::of(text)
            .value("planet.radius_km")
            .expect("a radius");
        let distance_km = page.quantity("page.now.distance_km").await?;
        assert!(
            (distance_km / radius_km - 1.0).abs() < 1e-9,
            "{distance_km} km from the centre"
        );
        Ok(())
    });
}

#[test]
fn with_reduced_motion_the_pass_goes_in_steps_when_asked() {
    on_our_page("", async |page| {
        page.prefer(&[("prefers-reduced-motion", "reduce")]).await?;
        page.reopen("").await?;
        scrub_to(page, Key::Home).await?;
        let watch = "
            const moment = deep('[data-text=moment]')[0], steps = [];
            new MutationObserver(() => steps.push(performance.now()))
                .observe(moment, { attributeFilter: ['data-value'] });
            deep('[data-action=play]')[0].click();
            setTimeout(() => done(steps), 3500);";
        let steps: Vec<f64> = serde_json::from_value(page.run_async(watch, Vec::new()).await?)?;
        assert!((2..=4).contains(&steps.len()), "{steps:?}");
        let gaps: Vec<f64> = steps.windows(2).map(|pair| pair[1] - pair[0]).collect();
        assert!(gaps.iter().all(|gap| *gap > 900.0), "{gaps:?}");
        page.click("[data-action=play]").await
    });
}

#[test]
fn zooming_changes_both_stages_alike_and_fit_undoes_it() {
    on_our_page("", async |page| {
        page.ready().await?;
        let first = page.looks().await?;
        for action in ["closer", "farther"] {
            page.click(&format!("[data-action={action}]")).await?;
            let now = page.looks().await?;
            assert_ne!(now[0], first[0], "{action}");
            assert_ne!(now[1], first[1], "{action}");
            assert_eq!(now[2..], first[2..], "{action}");
            page.click("[data-action=fit]").await?;
            assert_eq!(page.looks().await?, first);
        }
        // As far as it goes, both ways, nothing breaks and nothing becomes blank.
        for action in ["closer", "farther"] {
            for _ in 0..20 {
                page.run(
                    "deep(`[data-action=${arguments[0]}]`)[0].click();",
                    vec![json!(action)],
                )
                .await?;
            }
            page.settle().await?;
            assert!(
                page.looks().await?.iter().all(|look| look.colours > 20),
                "{action}"
            );
        }
        page.expect(&Native::at_first()).await
    });
}
