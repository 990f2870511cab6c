//! The page on paper.

use serde_json::json;

use crate::layout::faults;
use crate::page::on_our_page;
use crate::screens::ground;

#[test]
fn a_printed_page_has_pictures_numbers_and_no_controls() {
    on_our_page("", async |page| {
        page.resize(794, 1123, 1.0).await?;
        page.ready().await?;
        page.prefer(&[("prefers-color-scheme", "dark")]).await?;
        page.print_view().await?;
        let shown =
            |selector: &str| format!("deep('{selector}').filter(e => e.checkVisibility()).length");
        for part in [".play", ".controls", ".actions"] {
            assert_eq!(page.value_of(&shown(part)).await?, 0, "{part}");
        }
        let controls = "main button, main select, main input:not([type=checkbox])";
        assert_eq!(page.value_of(&shown(controls)).await?, 0);
        assert_eq!(page.value_of(&shown("canvas")).await?, 6);
        assert_eq!(
            page.value_of(&shown(
                ".aim, .wish, .outcome, .table, .facts, .record, .example, .signs, .model"
            ))
            .await?,
            9
        );
        assert!(page.text("[data-text=answer]").await?.contains("Saturn"));
        assert_eq!(faults(page).await?.outside, Vec::<String>::new());
        // Nothing is left of the column that the controls have on the screen.
        let left = "Math.min(...deep('main > *').filter(e => e.checkVisibility()).map(e => e.getBoundingClientRect().left))";
        let of_each = format!("deep('.pictures')[0].getBoundingClientRect().left - {left}");
        page.resize(1280, 800, 1.0).await?;
        assert_eq!(
            page.value_of(&of_each).await?,
            0,
            "the pictures leave room for controls that are not there"
        );
        Ok(())
    });
}

#[test]
fn paper_is_light_whatever_the_screen_is() {
    on_our_page("", async |page| {
        page.ready().await?;
        let dark = json!({ "media": "print", "features": [{ "name": "prefers-color-scheme", "value": "dark" }] });
        page.cdp("Emulation.setEmulatedMedia", dark).await?;
        page.settle().await?;
        assert!(ground(page).await?.1 > 650, "a dark picture on paper");
        Ok(())
    });
}
