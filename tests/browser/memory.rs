//! A long lesson leaves the page as it was: the core's memory, the browser's heap and the listeners do not grow.

use thirtyfour::prelude::*;

use crate::page::{Outcome, Page, on_our_page};

/// Keeps the core's instance where the test finds it, and puts the page's frames under the test's own clock: they run
/// when `tick` says so, however fast that is.
const OWN_CLOCK: &str = "
    const streaming = WebAssembly.instantiateStreaming, instantiate = WebAssembly.instantiate;
    const keep = made => made.then(all => { window.core = (all.instance ?? all).exports; return all; });
    WebAssembly.instantiateStreaming = (...all) => keep(streaming.apply(WebAssembly, all));
    WebAssembly.instantiate = (...all) => keep(instantiate.apply(WebAssembly, all));
    const own = window.requestAnimationFrame;
    let waiting = [], now = 0, number = 0;
    window.requestAnimationFrame = f => { waiting.push(f); return ++number; };
    window.cancelAnimationFrame = () => {};
    window.tick = ms => { now += ms; const due = waiting; waiting = []; for (const f of due) f(now); };
    window.paint = () => new Promise(own);";

/// How much is in use.
#[derive(Debug)]
struct Use {
    core_bytes: u64,
    heap_bytes: f64,
    listeners: f64,
    nodes: f64,
}

async fn in_use(page: &Page) -> WebDriverResult<Use> {
    // What the page says to screen readers comes later; until then a message may be pending.
    page.run_async("setTimeout(done, 600);", Vec::new()).await?;
    page.measurements().await?;
    let all = page.measurements().await?;
    let core = page.value_of("core.memory.buffer.byteLength").await?;
    Ok(Use {
        core_bytes: core.as_u64().expect("a size"),
        heap_bytes: all["JSHeapUsedSize"],
        listeners: all["JSEventListeners"],
        nodes: all["Nodes"],
    })
}

/// Does something again and again after having done it for a while, and holds what is in use to what was.
async fn leaves_no_trace(page: &Page, what: &str, warm_up: &str, long: &str) -> Outcome {
    page.run_async(warm_up, Vec::new()).await?;
    let before = in_use(page).await?;
    page.run_async(long, Vec::new()).await?;
    let after = in_use(page).await?;
    println!("{what}: {before:?}, then {after:?}");
    assert_eq!(
        after.core_bytes, before.core_bytes,
        "the core's memory grew"
    );
    assert!(
        (after.listeners - before.listeners).abs() < 0.5,
        "{before:?} {after:?}"
    );
    // The browser compiles and caches on its own account; a leak of 100 bytes in each of 1,000 moves would show.
    assert!(
        after.heap_bytes - before.heap_bytes < 100_000.0,
        "{before:?} {after:?}"
    );
    assert!(after.nodes - before.nodes < 50.0, "{before:?} {after:?}");
    Ok(())
}

/// Opens the page under the test's clock; everything it does once has been done.
async fn open(page: &Page) -> Outcome {
    let limit = std::time::Duration::from_secs(90);
    page.driver().set_script_timeout(limit).await?;
    page.before_loading(OWN_CLOCK).await?;
    page.resize(1280, 800, 1.0).await?;
    page.go_to("").await?;
    page.wait_until("window.core && document.querySelector('#app[data-state=shown]')")
        .await
}

/// JavaScript that moves the sliders `count` times, a frame each, and paints now and then.
fn moves(count: usize) -> String {
    format!(
        "(async () => {{
            const sliders = ['v-infinity', 'approach', 'periapsis', 'aim', 'crank']
                .map(key => deep(`[data-field=${{key}}] [data-part=slider]`)[0]);
            for (let i = 0; i < {count}; i++) {{
                const slider = sliders[i % 5], part = (i * 0.618) % 1;
                slider.value = Number(slider.min) + part * (slider.max - slider.min);
                slider.dispatchEvent(new Event('input', {{ bubbles: true }}));
                tick(16);
                if (i % 50 === 0) await paint();
            }}
            await paint();
        }})().then(done);"
    )
}

/// JavaScript that moves the aim by hand `count` times, a frame each, lets go now and then, and switches the outcome.
fn aims(count: usize) -> String {
    format!(
        "(async () => {{
            const plane = deep('[data-picture=aim] canvas')[0], list = deep('[data-action=measure]')[0];
            plane.scrollIntoView({{ block: 'center', behavior: 'instant' }});
            const box = plane.getBoundingClientRect();
            const point = (kind, i) => plane.dispatchEvent(new PointerEvent(kind, {{
                bubbles: true, isPrimary: true, pointerId: 1, pointerType: 'mouse', button: 0,
                clientX: box.left + box.width * (0.1 + 0.8 * ((i * 0.6180339887) % 1)),
                clientY: box.top + box.height * (0.1 + 0.7 * ((i * 0.4142135624) % 1)),
            }}));
            window.aimed = new Set();
            for (let i = 0; i < {count}; i++) {{
                if (i % 20 === 0) point('pointerdown', i);
                point('pointermove', i);
                if (i % 20 === 19) point('pointerup', i);
                if (i % 100 === 50) {{
                    list.selectedIndex = (list.selectedIndex + 1) % list.length;
                    list.dispatchEvent(new Event('change', {{ bubbles: true }}));
                }}
                tick(16);
                aimed.add(deep('[data-aim=t]')[0].dataset.value);
                if (i % 50 === 0) await paint();
            }}
            await paint();
        }})().then(done);"
    )
}

/// JavaScript that plays for `seconds` of the clock, from the start again whenever the end is reached.
fn playing(seconds: u32) -> String {
    format!(
        "(async () => {{
            const play = deep('[data-action=play]')[0], moment = deep('[data-text=moment]')[0];
            let then = '';
            window.moments = 0;
            for (let i = 0; i < {seconds} * 10; i++) {{
                if (!play.textContent.includes('Pause')) {{ play.click(); tick(0); }}
                tick(100);
                if (moment.dataset.value !== then) window.moments++;
                then = moment.dataset.value;
                if (i % 50 === 0) await paint();
            }}
            if (play.textContent.includes('Pause')) play.click();
            tick(0); tick(0);
            await paint();
        }})().then(done);"
    )
}

#[test]
fn a_thousand_moves_of_the_sliders_leave_no_trace() {
    on_our_page("", async |page| {
        open(page).await?;
        leaves_no_trace(page, "1,000 moves", &moves(300), &moves(1000)).await
    });
}

#[test]
fn a_thousand_moves_of_the_aim_leave_no_trace() {
    on_our_page("", async |page| {
        open(page).await?;
        // Under the test's clock a frame comes only when it is asked for.
        page.run(
            "deep('[data-action=plane-only]')[0].click(); tick(16);",
            Vec::new(),
        )
        .await?;
        leaves_no_trace(page, "1,000 aims", &aims(300), &aims(1000)).await?;
        // It did aim: nearly every move led elsewhere.
        let aimed = page.value_of("aimed.size").await?;
        assert!(aimed.as_u64() > Some(900), "{aimed} aims of 1,000");
        Ok(())
    });
}

#[test]
fn ten_minutes_of_playing_leave_no_trace() {
    on_our_page("", async |page| {
        open(page).await?;
        leaves_no_trace(page, "10 minutes of playing", &playing(60), &playing(600)).await?;
        // It did play: nearly every tenth of a second showed another moment.
        let moments = page.value_of("window.moments").await?;
        assert!(moments.as_u64() > Some(5_000), "{moments} moments of 6,000");
        Ok(())
    });
}
