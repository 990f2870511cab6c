//! How quick the page is: from an input event to a painted frame, played, and opened. The figures are printed; another
//! program that keeps the machine busy must not fail a test, so each bound has to hold in the best of a few runs.
//!
//! Source: the bounds are the project's own, for a 2-core machine without a GPU at 1280x800.

use serde::Deserialize;
use thirtyfour::prelude::*;

use crate::page::{Outcome, Page, on_our_page};

/// Runs in the best of which a bound has to hold.
const RUNS: usize = 4;

/// Adds up how long each listener and each frame's callback of the page takes, before the page makes any.
pub(crate) const STOPWATCH: &str = "
    window.spent = [];
    const timed = (kind, f) => function (...all) {
        const start = performance.now();
        try { return f.apply(this, all); } finally { spent.push([kind, performance.now() - start]); }
    };
    const listen = EventTarget.prototype.addEventListener;
    EventTarget.prototype.addEventListener = function (kind, f, options) {
        return listen.call(this, kind, typeof f === 'function' ? timed(kind, f) : f, options);
    };
    const frame = window.requestAnimationFrame;
    window.requestAnimationFrame = f => frame.call(window, timed('frame', f));";

/// Waits for one frame without being a callback of the page's.
const NEXT_FRAME: &str = "new Promise(resolve => { const c = new MessageChannel(); c.port1.onmessage = resolve; \
    frame.call(window, () => c.port2.postMessage(0)); })";

/// Durations, ms, sorted.
pub(crate) struct Durations(Vec<f64>);

impl Durations {
    pub(crate) fn new(mut all: Vec<f64>) -> Self {
        assert!(!all.is_empty(), "nothing was measured");
        all.sort_by(f64::total_cmp);
        Self(all)
    }

    /// The value below which this part of them lies.
    pub(crate) fn part(&self, part: f64) -> f64 {
        self.0[((self.0.len() - 1) as f64 * part).round() as usize]
    }

    pub(crate) fn words(&self) -> String {
        let [median, p95, most] = [0.5, 0.95, 1.0].map(|part| self.part(part));
        format!(
            "{} of them, median {median:.2} ms, p95 {p95:.2} ms, longest {most:.2} ms",
            self.0.len()
        )
    }
}

/// Repeats a measurement until its figure is within the bound.
pub(crate) async fn best_of_runs(
    what: &str,
    bound: f64,
    measure: impl AsyncFn() -> WebDriverResult<(f64, String)>,
) -> Outcome {
    let mut best = f64::INFINITY;
    for run in 1..=RUNS {
        let (figure, words) = measure().await?;
        println!("{what}, run {run}: {words}");
        best = best.min(figure);
        if best <= bound {
            return Ok(());
        }
    }
    panic!("{what}: {best} at best, and {bound} is the bound");
}

/// Opens the page with a stopwatch on everything that it does.
pub(crate) async fn with_stopwatch(page: &Page) -> Outcome {
    page.before_loading(STOPWATCH).await?;
    page.resize(1280, 800, 1.0).await?;
    page.reopen("").await
}

/// Drags a slider there and back with a real mouse, a move for each frame, and gives the script time of each move: its
/// listeners and the frame's callback.
async fn drag(page: &Page, key: &str) -> WebDriverResult<Vec<f64>> {
    let slider = format!("[data-field={key}] [data-part=slider]");
    let (left, y) = page.place_in(&slider, 0.15, 0.5).await?;
    let (right, _) = page.place_in(&slider, 0.85, 0.5).await?;
    page.run("spent.length = 0;", Vec::new()).await?;
    let mut moves = Vec::new();
    let steps = 70;
    page.press_mouse((left, y)).await?;
    for i in 0..=steps {
        let along = f64::from(i) / f64::from(steps);
        page.move_mouse((left + (right - left) * along, y)).await?;
        let taken: Vec<(String, f64)> = serde_json::from_value(
            page.run_async(
                &format!("{NEXT_FRAME}.then(() => done(spent.splice(0)));"),
                Vec::new(),
            )
            .await?,
        )?;
        let drew = taken.iter().any(|(kind, _)| kind == "frame");
        let input = taken.iter().any(|(kind, _)| kind == "input");
        if drew && input {
            moves.push(taken.iter().map(|(_, ms)| ms).sum());
        }
    }
    page.release_mouse((right, y)).await?;
    Ok(moves)
}

#[test]
fn a_slider_s_move_is_on_the_screen_within_a_frame_s_script() {
    on_our_page("", async |page| {
        with_stopwatch(page).await?;
        // The browser compiles what is used often; a person's first seconds are not the rest of the hour.
        drag(page, "approach").await?;
        // 6 ms for the stages, the numbers and the rest, 8 ms for the map; a frame at 60 a second has 16.7 ms.
        best_of_runs("Input to painted frame", 14.0, async || {
            let mut all = Vec::new();
            for key in ["v-infinity", "approach", "periapsis", "v-infinity"] {
                all.extend(drag(page, key).await?);
            }
            assert!(all.len() >= 200, "only {} moves were seen", all.len());
            let durations = Durations::new(all);
            Ok((durations.part(0.95), durations.words()))
        })
        .await
    });
}

#[test]
fn playing_holds_sixty_frames_a_second() {
    on_our_page("", async |page| {
        with_stopwatch(page).await?;
        page.type_into("[data-action=scrub]", Key::Home + "")
            .await?;
        let watch = "
            spent.length = 0;
            const times = [];
            const tick = now => { times.push(now); frame.call(window, tick); };
            deep('[data-action=play]')[0].click();
            frame.call(window, tick);
            setTimeout(() => {
                deep('[data-action=play]')[0].click();
                done([times, spent.filter(([kind]) => kind === 'frame').map(([, ms]) => ms)]);
            }, 5000);";
        // In a hundredth of a second: a frame takes 1.667 of them.
        best_of_runs(
            "Playing for 5 s, p95 from frame to frame",
            17.5,
            async || {
                let (times, script): (Vec<f64>, Vec<f64>) =
                    serde_json::from_value(page.run_async(watch, Vec::new()).await?)?;
                let gaps = Durations::new(times.windows(2).map(|pair| pair[1] - pair[0]).collect());
                assert!(
                    script.len() + 2 >= times.len(),
                    "the page drew {} of {} frames",
                    script.len(),
                    times.len()
                );
                let words = format!(
                    "{}; script of a frame: {}",
                    gaps.words(),
                    Durations::new(script).words()
                );
                page.type_into("[data-action=scrub]", Key::Home + "")
                    .await?;
                // A dropped frame makes a gap of two; 300 frames in 5 s have room for 15 in a hundred of none.
                Ok((gaps.part(0.95), words))
            },
        )
        .await
    });
}

/// When the first figure was drawn, ms after the navigation began.
#[derive(Debug, Deserialize)]
struct FirstFigure {
    drawn: f64,
    painted: f64,
}

#[test]
fn the_first_figure_is_drawn_within_a_fifth_of_a_second() {
    on_our_page("", async |page| {
        let watch = "
            new MutationObserver((_, own) => {
                if (!document.querySelector('#app[data-state=shown]')) return;
                own.disconnect();
                const drawn = performance.now();
                requestAnimationFrame(() => setTimeout(() => { window.first = { drawn, painted: performance.now() }; }));
            }).observe(document, { subtree: true, attributes: true, attributeFilter: ['data-state'] });";
        page.before_loading(watch).await?;
        best_of_runs("First figure", 200.0, async || {
            let (mut drawn, mut painted) = (Vec::new(), Vec::new());
            for _ in 0..7 {
                page.reopen("").await?;
                page.wait_until("window.first").await?;
                let first: FirstFigure = serde_json::from_value(page.value_of("first").await?)?;
                drawn.push(first.drawn);
                painted.push(first.painted);
            }
            let (drawn, painted) = (Durations::new(drawn), Durations::new(painted));
            Ok((
                drawn.part(0.5),
                format!(
                    "drawn: {}; on the screen: {}",
                    drawn.words(),
                    painted.words()
                ),
            ))
        })
        .await
    });
}
