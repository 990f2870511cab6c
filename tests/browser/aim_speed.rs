//! How quick aiming is on the page: the map with its lines on its own, and what a played pass leaves alone.
//!
//! Source: the bounds are the project's own, for a 2-core machine without a GPU at 1280x800.

use serde::Deserialize;
use serde_json::{Value, json};
use thirtyfour::prelude::*;

use crate::page::{Page, on_our_page};
use crate::speed::{Durations, best_of_runs, with_stopwatch};

/// Script of a frame, ms, each time after something was done, with the browser at rest in between: `act` is JavaScript with
/// the number `i`.
async fn frames_of(page: &Page, act: &str) -> WebDriverResult<Durations> {
    let script = format!(
        "(async () => {{
            const next = () => new Promise(resolve => {{
                const c = new MessageChannel();
                c.port1.onmessage = resolve;
                frame.call(window, () => c.port2.postMessage(0));
            }});
            const all = [];
            for (let i = 0; i < 60; i++) {{
                spent.length = 0;
                {act}
                await next();
                const drawn = spent.filter(([kind]) => kind === 'frame').map(([, ms]) => ms);
                if (drawn.length === 1) all.push(drawn[0]);
            }}
            done(all);
        }})();"
    );
    let all: Vec<f64> = serde_json::from_value(page.run_async(&script, Vec::new()).await?)?;
    assert!(all.len() > 40, "only {} frames were drawn", all.len());
    Ok(Durations::new(all))
}

/// Another outcome on the map and in the chart: everything else stays.
const OTHER_OUTCOME: &str = "const list = deep('[data-action=measure]')[0];
    list.selectedIndex = (i + 1) % list.length;
    list.dispatchEvent(new Event('change', { bubbles: true }));";

/// Zoom in and out again: the stages are drawn anew, the map is not.
const ZOOM: &str = "deep(`[data-action=${i % 2 ? 'closer' : 'farther'}]`)[0].click();";

#[test]
fn the_map_with_its_lines_takes_eight_milliseconds() {
    on_our_page("", async |page| {
        with_stopwatch(page).await?;
        // Without a goal there is nothing to search for. The browser compiles what is used often.
        page.choose("[data-action=wish]", "").await?;
        frames_of(page, OTHER_OUTCOME).await?;
        best_of_runs("Map, lines and chart", 8.0, async || {
            let with = frames_of(page, OTHER_OUTCOME).await?;
            let without = frames_of(page, ZOOM).await?;
            let own = with.part(0.5) - without.part(0.5);
            let words = format!(
                "{own:.2} ms; a frame with them: {}; without: {}",
                with.words(),
                without.words()
            );
            Ok((own, words))
        })
        .await
    });
}

/// Counts how often each picture is painted: painting begins with the ground.
const COUNT_PAINTING: &str = "
    window.painted = {};
    const fill = CanvasRenderingContext2D.prototype.fillRect;
    CanvasRenderingContext2D.prototype.fillRect = function (...all) {
        const name = this.canvas.closest?.('[data-picture]')?.dataset.picture;
        if (name && all[2] === this.canvas.clientWidth) painted[name] = (painted[name] ?? 0) + 1;
        return fill.apply(this, all);
    };";

/// How often each picture was painted.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
struct Painted {
    planet: u32,
    sun: u32,
    aim: u32,
    outcome: u32,
}

async fn painted(page: &Page) -> WebDriverResult<Painted> {
    let counts = page.run("const all = painted; painted = {}; return all;", Vec::new());
    Ok(serde_json::from_value(counts.await?)?)
}

#[test]
fn playing_paints_neither_the_map_nor_the_chart() {
    on_our_page("", async |page| {
        page.before_loading(COUNT_PAINTING).await?;
        page.resize(1280, 800, 1.0).await?;
        page.reopen("").await?;
        page.type_into("[data-action=scrub]", Key::Home + "")
            .await?;
        painted(page).await?;
        page.click("[data-action=play]").await?;
        page.wait_until("painted.planet > 30").await?;
        page.click("[data-action=play]").await?;
        let played = painted(page).await?;
        assert!(played.planet > 30 && played.sun > 30, "{played:?}");
        assert_eq!((played.aim, played.outcome), (0, 0), "{played:?}");
        // The counter does see them: a setting moves, and all are painted.
        page.click("[data-field=periapsis] [data-part=more]")
            .await?;
        let moved = painted(page).await?;
        assert!(
            moved.aim > 0 && moved.outcome > 0 && moved.sun > 0,
            "{moved:?}"
        );
        Ok(())
    });
}

/// A search for a goal, with the approach free too, within a slider's move: the script of the whole frame.
#[test]
fn a_goal_is_searched_for_while_a_setting_moves() {
    on_our_page("", async |page| {
        with_stopwatch(page).await?;
        let slide = "const slider = deep('[data-field=v-infinity] [data-part=slider]')[0];
            slider.value = Number(slider.min) + (0.3 + 0.005 * i) * (slider.max - slider.min);
            slider.dispatchEvent(new Event('input', { bubbles: true }));";
        for (free, wish, bound) in [
            ("aim-point", "reach=saturn", 16.0),
            ("approach", "most=gain", 16.0),
        ] {
            page.choose("[data-action=free]", free).await?;
            page.choose("[data-action=wish]", wish).await?;
            frames_of(page, slide).await?;
            best_of_runs(
                &format!("Frame with {wish}, {free} free"),
                bound,
                async || {
                    let all = frames_of(page, slide).await?;
                    Ok((all.part(0.5), all.words()))
                },
            )
            .await?;
        }
        let visible: Value = page
            .run(
                "return deep('canvas').every(c => c.checkVisibility());",
                vec![json!(0)],
            )
            .await?;
        assert_eq!(visible, true);
        Ok(())
    });
}
