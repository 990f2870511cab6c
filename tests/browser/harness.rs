//! The harness itself, on small pages of its own: it must see what is there, and must not miss what is wrong.

use std::fs;

use serde_json::json;
use thirtyfour::prelude::*;

use crate::page::{Outcome, Page, on_page_of};
use crate::support::TemporaryFolder;

/// Runs `test` on a page with the given body.
fn on_a_page(body: &str, test: impl AsyncFnOnce(&Page) -> Outcome) {
    let site = TemporaryFolder::new("site");
    let page = format!(
        "<!doctype html><html lang=en><title>A small page</title><link rel=icon href=data:,><main>{body}</main>"
    );
    fs::write(site.path().join("index.html"), page).expect("a page can be written");
    on_page_of(site.path(), "", test);
}

#[test]
fn a_page_answers_and_has_a_title() {
    on_a_page("<h1>Hello</h1>", async |page| {
        assert_eq!(page.driver().title().await?, "A small page");
        assert_eq!(page.texts("h1").await?, ["Hello"]);
        Ok(())
    });
}

#[test]
fn numbers_are_read_through_shadow_roots() {
    let body = "
        <output data-quantity=a.b data-value=0.1>0.10</output> <output data-quantity=a.none>-</output>
        <div id=host></div>
        <script>
            host.attachShadow({ mode: 'open' }).innerHTML = '<b data-quantity=c data-value=-2.5e-7>0</b>';
        </script>";
    on_a_page(body, async |page| {
        let numbers = page.quantities().await?;
        assert_eq!(
            numbers.into_iter().collect::<Vec<_>>(),
            [("a.b".to_owned(), 0.1), ("c".to_owned(), -2.5e-7)]
        );
        assert!((page.quantity("a.b").await? - 0.1).abs() < f64::EPSILON);
        Ok(())
    });
}

#[test]
fn mouse_finger_and_keys_arrive_as_a_person_s() {
    let body = "
        <button id=b style='width:200px;height:100px;touch-action:none'>b</button> <input id=i>
        <script>
            const seen = [];
            for (const kind of ['pointerdown', 'pointermove', 'pointerup', 'click'])
                b.addEventListener(kind, e => seen.push(`${e.pointerType} ${kind} ${e.isTrusted}`));
        </script>";
    on_a_page(body, async |page| {
        page.click("#b").await?;
        let seen = page.value_of("seen.splice(0)").await?;
        assert_eq!(
            seen,
            json!([
                "mouse pointermove true",
                "mouse pointerdown true",
                "mouse pointerup true",
                "mouse click true"
            ])
        );

        page.drag(&[
            page.place_in("#b", 0.2, 0.5).await?,
            page.place_in("#b", 0.8, 0.5).await?,
        ])
        .await?;
        assert!(
            page.value_of("seen.splice(0).filter(s => s.includes('pointermove')).length")
                .await?
                .as_u64()
                > Some(5)
        );

        page.touch_screen(true).await?;
        page.tap("#b").await?;
        let seen = page.value_of("seen.splice(0)").await?;
        assert_eq!(seen[0], "touch pointerdown true");

        page.swipe(&[
            page.place_in("#b", 0.2, 0.5).await?,
            page.place_in("#b", 0.8, 0.5).await?,
        ])
        .await?;
        let moves = page
            .value_of("seen.splice(0).filter(s => s === 'touch pointermove true').length")
            .await?;
        assert!(moves.as_u64() > Some(5), "{moves}");

        page.type_into("#i", "7" + Key::Left + "4").await?;
        assert_eq!(page.value_of("i.value").await?, "47");
        assert_eq!(page.focus().await?, "input#i");
        page.press(&[Key::Shift, Key::Tab]).await?;
        assert_eq!(page.focus().await?, "button#b");
        Ok(())
    });
}

#[test]
fn the_wheel_scrolls() {
    on_a_page("<div style='height:5000px'></div>", async |page| {
        page.wheel((50.0, 50.0), 300.0).await?;
        page.wait_until("scrollY === 300").await
    });
}

#[test]
fn size_and_preferences_reach_the_page() {
    on_a_page("", async |page| {
        page.resize(360, 740, 2.0).await?;
        assert_eq!(
            page.value_of("[innerWidth, innerHeight, devicePixelRatio]")
                .await?,
            json!([360, 740, 2])
        );
        for (feature, value) in [
            ("prefers-color-scheme", "dark"),
            ("prefers-reduced-motion", "reduce"),
            ("forced-colors", "active"),
        ] {
            page.prefer(&[(feature, value)]).await?;
            let matches = format!("matchMedia('({feature}: {value})').matches");
            assert_eq!(page.value_of(&matches).await?, true, "{feature}");
            page.prefer(&[]).await?;
            assert_eq!(page.value_of(&matches).await?, false, "{feature}");
        }
        page.print_view().await?;
        assert_eq!(page.value_of("matchMedia('print').matches").await?, true);
        Ok(())
    });
}

#[test]
fn the_browser_s_measurements_are_there() {
    on_a_page("", async |page| {
        let before = page.measurements().await?;
        let busy = "setTimeout(() => { const end = performance.now() + 60; while (performance.now() < end); done(); });";
        page.run_async(busy, Vec::new()).await?;
        let after = page.measurements().await?;
        assert!(
            after["ScriptDuration"] - before["ScriptDuration"] >= 0.05,
            "{before:?} {after:?}"
        );
        assert!(after["JSHeapUsedSize"] > 0.0);
        Ok(())
    });
}

#[test]
fn faults_of_accessibility_are_found() {
    on_a_page(
        "<h1>Hello</h1><img src=data:,><button></button>",
        async |page| {
            let mut broken: Vec<_> = page
                .violations()
                .await?
                .into_iter()
                .map(|violation| violation.id)
                .collect();
            broken.sort();
            assert_eq!(broken, ["button-name", "image-alt"]);
            Ok(())
        },
    );
    on_a_page("<h1>Hello</h1>", async |page| {
        let found = page.violations().await?;
        assert!(found.is_empty(), "{found:#?}");
        Ok(())
    });
}

#[test]
fn what_the_page_writes_to_the_console_is_taken() {
    on_a_page(
        "<script>console.log('fine'); console.error('bad'); missing();</script>",
        async |page| {
            let complaints = page.complaints().await?;
            assert_eq!(complaints.len(), 2, "{complaints:?}");
            assert!(
                complaints[0].contains("bad") && complaints[1].contains("missing is not defined"),
                "{complaints:?}"
            );
            Ok(())
        },
    );
}

#[test]
#[should_panic(expected = "the page complained on the console")]
fn a_complaint_that_nobody_expects_fails_the_test() {
    on_a_page("<script>console.error('bad')</script>", async |_| Ok(()));
}
