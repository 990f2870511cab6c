//! What a person sees when something that the page needs is missing or breaks: a still figure and a sentence, or the
//! settings to copy.

use std::fs;
use std::path::Path;

use serde_json::json;
use two_frames::scenario::Field;

use crate::native::Native;
use crate::page::{Outcome, Page, built, on_our_page, on_page_of};
use crate::support::TemporaryFolder;

/// The two still pictures are there and drawn, with their descriptions, and the sentence names what is missing.
async fn still(page: &Page, missing: &str) -> Outcome {
    let drawn = "Array.from(document.querySelectorAll('#still img')).filter(i => i.complete && i.naturalWidth > 0).length";
    page.wait_until(&format!("{drawn} === 2")).await?;
    let sentence = page.text("#missing").await?;
    assert!(sentence.contains(missing), "{sentence}");
    let seen = page.text("body").await?;
    assert!(
        seen.contains("Tern") && !seen.contains("Settings"),
        "{seen}"
    );
    let descriptions =
        "Array.from(document.querySelectorAll('#still img')).map(i => i.alt).join(' ')";
    let descriptions = page.value_of(descriptions).await?.to_string();
    let mut native = Native::at_first();
    let panel = native.sandbox.panel().expect("it is solved");
    for row in [0, 2] {
        for cell in &panel.rows[row].cells[..2] {
            assert!(
                descriptions.contains(&cell.text),
                "{} in {descriptions}",
                cell.text
            );
        }
    }
    Ok(())
}

#[test]
fn without_javascript_the_figure_stands_still() {
    on_our_page("", async |page| {
        let disabled = |value: bool| json!({ "value": value });
        page.cdp("Emulation.setScriptExecutionDisabled", disabled(true))
            .await?;
        page.go_to("").await?;
        // The driver's own questions are scripts too, and these still run.
        still(page, "JavaScript").await?;
        page.cdp("Emulation.setScriptExecutionDisabled", disabled(false))
            .await?;
        page.reopen("").await?;
        assert_eq!(
            page.value_of("document.querySelector('#still').checkVisibility()")
                .await?,
            false
        );
        Ok(())
    });
}

#[test]
fn without_webassembly_the_figure_stands_still() {
    on_our_page("", async |page| {
        page.before_loading("delete window.WebAssembly;").await?;
        page.go_to("").await?;
        still(page, "WebAssembly").await
    });
}

/// A copy of the page whose files a test may spoil.
fn copy_of_site() -> TemporaryFolder {
    fn copy(from: &Path, to: &Path) {
        fs::create_dir_all(to).expect("a folder can be made");
        for entry in fs::read_dir(from).expect("a folder can be read") {
            let entry = entry.expect("an entry can be read");
            let target = to.join(entry.file_name());
            if entry.path().is_dir() {
                copy(&entry.path(), &target);
            } else {
                fs::copy(entry.path(), target).expect("a file can be copied");
            }
        }
    }
    let site = TemporaryFolder::new("spoilt-site");
    copy(&built().page(), site.path());
    site
}

/// Opens a page one of whose files a test has spoilt. The browser says so on the console, as it should.
fn on_spoilt_page(spoil: impl FnOnce(&Path)) {
    let site = copy_of_site();
    spoil(&site.path().join("pkg"));
    on_page_of(site.path(), "", async |page| {
        still(page, "did not start").await?;
        assert!(
            !page.complaints().await?.is_empty(),
            "nothing on the console to find the fault by"
        );
        Ok(())
    });
}

#[test]
fn a_core_that_is_not_there_leaves_the_still_figure() {
    on_spoilt_page(|folder| {
        fs::remove_file(folder.join("two_frames_bg.wasm")).expect("it was there");
    });
}

#[test]
fn a_core_that_is_garbage_leaves_the_still_figure() {
    on_spoilt_page(|folder| {
        fs::write(folder.join("two_frames_bg.wasm"), "not a program").expect("it can be written");
    });
}

#[test]
fn bindings_that_are_not_there_leave_the_still_figure() {
    on_spoilt_page(|folder| {
        fs::remove_file(folder.join("two_frames.js")).expect("it was there");
    });
}

#[test]
fn a_core_that_breaks_hands_out_the_settings() {
    on_our_page("", async |page| {
        page.ready().await?;
        page.click("[data-field=periapsis] [data-part=more]")
            .await?;
        let radii = page
            .value_in("#periapsis-number")
            .await?
            .parse()
            .expect("a number");
        let text = Native::at_first()
            .with_value(Field::Periapsis, radii)
            .text();
        page.expect_address(&text).await?;
        page.run(
            "CanvasRenderingContext2D.prototype.setTransform = () => { throw new Error('broken'); };",
            Vec::new(),
        )
        .await?;
        page.click("[data-action=on]").await?;
        page.wait_until("document.querySelector('#broken').checkVisibility()")
            .await?;
        assert_eq!(page.value_in("#broken-text").await?, text);
        assert_eq!(
            page.value_of("document.querySelector('#broken').getAttribute('role')")
                .await?,
            "alert"
        );
        // It is where the person is looking, not above the top of the page.
        let in_sight = "(r => r.bottom > 0 && r.top < innerHeight)(document.querySelector('#broken').getBoundingClientRect())";
        assert_eq!(
            page.value_of(in_sight).await?,
            true,
            "the notice is out of sight"
        );
        assert!(!page.complaints().await?.is_empty());
        // The settings that it hands out open the same pass.
        page.reopen(&text).await?;
        page.expect(&Native::of(&text)).await
    });
}
