//! The map and the chart of an outcome: they follow the settings while these move, show each outcome of the list, and have
//! something to say whatever the settings are.

use serde_json::Value;
use thirtyfour::prelude::*;
use two_frames::sandbox::{AimChange, Input, Sandbox};
use two_frames::scenario::Field;

use crate::native::{answer_numbers, chart_numbers};
use crate::page::{Outcome, Page, on_our_page};

const MEASURE: &str = "[data-action=measure]";
const AGAINST: &str = "[data-action=against]";

/// Everything that the page says, to the eye and to a screen reader, that no page should say.
const NONSENSE: &str = r"(() => {
    const words = [document.body.innerText];
    for (const e of document.querySelectorAll('#app *')) {
        for (const name of ['aria-label', 'aria-valuetext', 'data-value', 'title']) words.push(e.getAttribute(name) ?? '');
        if (e.matches('input')) words.push(e.value);
    }
    return words.filter(text => /NaN|undefined|null|Infinity|\binf\b/.test(text));
})()";

/// Holds answer and chart to the library, in the same place and with the same settings.
async fn expect_library(page: &Page, sandbox: &mut Sandbox) -> Outcome {
    assert_eq!(page.numbers_in("answer").await?, answer_numbers(sandbox));
    assert_eq!(page.numbers_in("outcome").await?, chart_numbers(sandbox));
    Ok(())
}

#[test]
fn map_chart_and_answer_follow_a_slider_while_it_moves() {
    on_our_page("", async |page| {
        page.resize(1280, 800, 1.0).await?;
        page.reopen("").await?;
        let slider = "[data-field=v-infinity] [data-part=slider]";
        let (x, y) = page.place_in(slider, 0.4, 0.5).await?;
        let mut before = (page.aim_looks().await?, page.numbers_in("answer").await?);
        page.press_mouse((x, y)).await?;
        for step in 1..=6 {
            page.move_mouse((x + 8.0 * f64::from(step), y)).await?;
            page.settle().await?;
            let now = (page.aim_looks().await?, page.numbers_in("answer").await?);
            for (i, (new, old)) in now.0.iter().zip(&before.0).enumerate() {
                assert_ne!(new, old, "picture {i} stayed in step {step}");
            }
            assert_ne!(
                now.1[0].value, before.1[0].value,
                "the answer, in step {step}"
            );
            let speed: f64 = page
                .value_in("#v-infinity-number")
                .await?
                .parse()
                .expect("a number");
            let mut sandbox = Sandbox::open("");
            let set = Input::Set(Field::VInfinity, speed);
            sandbox.apply(set).expect("within the range");
            expect_library(page, &mut sandbox).await?;
            before = now;
        }
        page.release_mouse((x + 48.0, y)).await
    });
}

#[test]
fn each_outcome_has_its_own_map_and_chart() {
    on_our_page("aim=60&crank=10", async |page| {
        page.ready().await?;
        let keys = format!("Array.from(deep('{MEASURE} option'), o => o.value)");
        let keys: Vec<String> = serde_json::from_value(page.value_of(&keys).await?)?;
        assert!(keys.len() >= 6, "{keys:?}");
        let mut seen = Vec::new();
        for key in &keys {
            page.choose(MEASURE, key).await?;
            let now = page.aim_looks().await?;
            for (before, other) in &seen {
                let [map, chart]: &[crate::reading::Look; 2] = before;
                assert!(
                    map != &now[0] && chart != &now[1],
                    "{key} looks like {other}"
                );
            }
            let mut sandbox = Sandbox::open("aim=60&crank=10");
            let measure = two_frames::report::MeasureWords::from_key(key).expect("a known key");
            let change = Input::Aim(AimChange::Measure(measure));
            sandbox.apply(change).expect("not refused");
            expect_library(page, &mut sandbox).await?;
            seen.push((now, key.clone()));
        }
        Ok(())
    });
}

#[test]
fn the_chart_can_be_drawn_against_each_of_three_settings() {
    on_our_page("", async |page| {
        page.ready().await?;
        let mut seen = vec![page.aim_looks().await?];
        for (key, field) in [
            ("approach", Field::Approach),
            ("v-infinity", Field::VInfinity),
            ("periapsis", Field::Periapsis),
        ] {
            page.choose(AGAINST, key).await?;
            let now = page.aim_looks().await?;
            assert_eq!(now[0], seen[0][0], "the map does not depend on it");
            let is_first = key == "periapsis";
            assert_eq!(now[1] == seen[0][1], is_first, "{key}");
            let mut sandbox = Sandbox::open("");
            let change = Input::Aim(AimChange::Against(field));
            sandbox.apply(change).expect("not refused");
            expect_library(page, &mut sandbox).await?;
            let sentence = page.text("[data-text=outcome]").await?;
            assert!(sentence.ends_with('.'), "{sentence}");
            seen.push(now);
        }
        Ok(())
    });
}

/// Settings at the ends of what is allowed.
const EXTREMES: [&str; 10] = [
    "v-infinity=0.01",
    "v-infinity=100",
    "v-infinity=0.01&periapsis=10000&aim=90",
    "v-infinity=100&periapsis=0.01&crank=90",
    "approach=0&v-infinity=13.0578",
    "approach=180&aim=180&periapsis=1",
    "planet=mercury&v-infinity=60&aim=-90",
    "planet=neptune&periapsis=10000",
    "planet=custom&gm=1e-3&radius=1e-3&orbit=1e-4",
    "planet=custom&gm=1e12&radius=1e6&orbit=1000&aim=45&crank=-179",
];

#[test]
fn whatever_the_settings_are_there_is_a_picture_and_no_nonsense() {
    on_our_page("", async |page| {
        for text in EXTREMES {
            page.reopen(text).await?;
            every_list(page, text).await?;
        }
        Ok(())
    });
}

/// Goes through the outcomes, the settings to draw against, the goals and the looks.
async fn every_list(page: &Page, text: &str) -> Outcome {
    for list in [MEASURE, AGAINST, "[data-action=wish]", "[data-action=look]"] {
        let values = format!(
            "Array.from(deep('{list} option'), o => o.disabled ? '-' : o.value).filter(v => v !== '-')"
        );
        let values: Vec<String> = serde_json::from_value(page.value_of(&values).await?)?;
        let out = page
            .value_of("deep('[data-action=look]')[0].checkVisibility()")
            .await?;
        if list.contains("look") && out == Value::Bool(false) {
            continue;
        }
        for value in values {
            page.choose(list, &value).await?;
            let found: Vec<String> = serde_json::from_value(page.value_of(NONSENSE).await?)?;
            assert!(found.is_empty(), "{text}, {list} {value}: {found:#?}");
            let looks = (page.looks().await?, page.aim_looks().await?);
            for (i, look) in looks.0.iter().chain(&looks.1).enumerate() {
                assert!(
                    look.colours > 8,
                    "{text}, {list} {value}: picture {i} has {look:?}"
                );
            }
            for place in ["answer", "outcome"] {
                let said = page.text(&format!("[data-text={place}]")).await?;
                assert!(
                    said.ends_with('.'),
                    "{text}, {list} {value}: {place} says {said:?}"
                );
            }
        }
    }
    Ok(())
}

/// Settings that have no flyby together leave no number of the pass before.
#[test]
fn settings_without_a_flyby_leave_nothing_stale() {
    on_our_page("planet=custom&gm=1e5&radius=6e3&orbit=1", async |page| {
        page.ready().await?;
        page.run(
            "location.hash = 'planet=custom&gm=1e-300&radius=1e300&orbit=1e300';",
            Vec::new(),
        )
        .await?;
        page.wait_until("deep('#app[data-state=refused]').length == 1")
            .await?;
        page.settle().await?;
        let stale = "deep('[data-value]').map(e => e.outerHTML)";
        let stale: Vec<String> = serde_json::from_value(page.value_of(stale).await?)?;
        assert!(stale.is_empty(), "{stale:#?}");
        let said = page.text("[data-text=answer]").await?;
        assert!(said.contains("try "), "{said}");
        assert_eq!(
            page.value_of("deep('[data-action=take]')[0].disabled")
                .await?,
            true
        );
        let why = page.text("[data-text=why]").await?;
        for name in ["aim", "outcome"] {
            let label =
                format!("deep('[data-picture={name}] canvas')[0].getAttribute('aria-label')");
            assert_eq!(page.value_of(&label).await?, why, "{name}");
        }
        // Aiming does nothing, and does no harm.
        page.click("[data-picture=aim] canvas").await?;
        page.press(&[Key::Left]).await?;
        page.click("[data-action=reset]").await?;
        page.ready().await
    });
}
