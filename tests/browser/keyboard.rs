//! The whole page by keyboard alone: Tab reaches every control in a sensible order, the focus is to be seen, and nothing
//! holds it fast.

use serde::Deserialize;
use thirtyfour::prelude::*;

use crate::native::Native;
use crate::page::{Outcome, Page, on_our_page};
use two_frames::scenario::Field;

/// What has the focus.
#[derive(Clone, Debug, PartialEq, Deserialize)]
struct Stop {
    /// Its place among all that the keyboard should reach; -1 for something else.
    index: i64,
    name: String,
    /// Whether an outline is drawn round it.
    outlined: bool,
    /// Whether it is on the screen, and nothing lies over its middle.
    in_sight: bool,
}

/// JavaScript: all that the keyboard should reach, in the page's order. Of a group of radio buttons Tab reaches one.
const REACHABLE: &str = "deep('a[href], button, select, input, summary, [tabindex]')
    .filter(e => e.checkVisibility() && !e.disabled && e.tabIndex >= 0)
    .filter(e => e.type !== 'radio' || e.checked || !deep('input[type=radio]').some(r => r.checked))";

async fn stop(page: &Page) -> WebDriverResult<Stop> {
    let script = format!(
        "
        const e = document.activeElement, all = {REACHABLE};
        const r = e.getBoundingClientRect(), style = getComputedStyle(e);
        const [x, y] = [r.left + Math.min(r.width / 2, 8), r.top + r.height / 2];
        const top = document.elementFromPoint(x, y);
        return {{
            index: all.indexOf(e),
            name: `${{e.localName}} ${{e.id || e.dataset.action || e.getAttribute('aria-label') || e.textContent.trim().slice(0, 40)}}`,
            outlined: style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2,
            in_sight: y >= 0 && y <= innerHeight && !!(top && (e.contains(top) || top.contains(e) || e.labels?.[0]?.contains(top))),
        }};"
    );
    Ok(serde_json::from_value(
        page.run(&script, Vec::new()).await?,
    )?)
}

/// Walks through the page with Tab, or with Shift and Tab, from its start to its end.
async fn walk(page: &Page, keys: &[Key]) -> WebDriverResult<Vec<Stop>> {
    let count = page
        .value_of(&format!("{REACHABLE}.length"))
        .await?
        .as_u64()
        .expect("a number");
    let mut stops = Vec::new();
    for _ in 0..count {
        page.press(keys).await?;
        // The page may glide to where the focus has gone.
        page.run_async(
            "let last; const rest = () => { if (scrollY === last) return done(); last = scrollY;
             requestAnimationFrame(() => requestAnimationFrame(rest)); }; rest();",
            Vec::new(),
        )
        .await?;
        stops.push(stop(page).await?);
    }
    Ok(stops)
}

fn expect_order(stops: &[Stop], meant: impl Iterator<Item = i64>) {
    let order: Vec<_> = stops.iter().map(|stop| stop.index).collect();
    assert_eq!(order, meant.collect::<Vec<_>>(), "{stops:#?}");
    let unseen: Vec<_> = stops
        .iter()
        .filter(|stop| !stop.outlined || !stop.in_sight)
        .collect();
    assert!(
        unseen.is_empty(),
        "the focus is not to be seen: {unseen:#?}"
    );
}

async fn walk_both_ways(page: &Page) -> Outcome {
    page.run(
        "deep('details').forEach(d => { d.open = d.matches('.more, .look'); });",
        Vec::new(),
    )
    .await?;
    let there = walk(page, &[Key::Tab]).await?;
    assert!(there.len() > 30, "only {} stops", there.len());
    let count = i64::try_from(there.len()).expect("a small number");
    expect_order(&there, 0..count);
    page.press(&[Key::Tab]).await?;
    assert_eq!(
        stop(page).await?.index,
        -1,
        "the focus cannot leave the page"
    );
    let back = walk(page, &[Key::Shift, Key::Tab]).await?;
    expect_order(&back, (0..count).rev());
    Ok(())
}

#[test]
fn tab_reaches_everything_and_leaves_again() {
    on_our_page("", async |page| {
        page.resize(1280, 800, 1.0).await?;
        page.ready().await?;
        walk_both_ways(page).await
    });
}

#[test]
fn on_a_narrow_screen_the_focus_is_never_hidden_behind_the_stages() {
    on_our_page("", async |page| {
        page.resize(390, 844, 1.0).await?;
        page.ready().await?;
        walk_both_ways(page).await
    });
}

#[test]
fn tab_reaches_what_leads_out_of_the_plane_too() {
    on_our_page("crank=20", async |page| {
        page.resize(1280, 800, 1.0).await?;
        page.ready().await?;
        walk_both_ways(page).await
    });
}

#[test]
fn a_whole_lesson_without_a_mouse() {
    on_our_page("", async |page| {
        page.resize(1280, 800, 1.0).await?;
        page.ready().await?;
        let to = async |selector: &str| {
            page.run("deep(arguments[0])[0].focus();", vec![selector.into()])
                .await
        };
        to("[data-field=periapsis] [data-part=more]").await?;
        page.press(&[char::from(Key::Enter)]).await?;
        page.press(&[' ']).await?;
        let radii: f64 = page
            .value_in("#periapsis-number")
            .await?
            .parse()
            .expect("a number");
        assert!(
            radii > 8.5,
            "Enter and space each press the button: {radii}"
        );
        page.expect(&Native::at_first().with_value(Field::Periapsis, radii))
            .await?;
        to("[data-action=play]").await?;
        page.press(&[' ']).await?;
        page.wait_until("deep('[data-action=play]')[0].textContent.includes('Pause')")
            .await?;
        assert_eq!(
            page.focus().await?,
            "button",
            "the focus stays on the button"
        );
        page.press(&[' ']).await?;
        page.wait_until("deep('[data-action=play]')[0].textContent.includes('Play')")
            .await?;
        to(".table summary").await?;
        page.press(&[char::from(Key::Enter)]).await?;
        assert_eq!(page.value_of("deep('.table details')[0].open").await?, true);
        Ok(())
    });
}
