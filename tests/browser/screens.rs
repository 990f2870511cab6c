//! Every screen and every theme: both stages in sight at once, sharp, and in the colours that a person has asked for.

use thirtyfour::prelude::*;

use crate::layout::SCREENS;
use crate::native::Native;
use crate::page::{Page, on_our_page};

#[test]
fn both_stages_are_in_sight_at_once() {
    on_our_page("", async |page| {
        for (width, height) in SCREENS {
            page.resize(width, height, 1.0).await?;
            page.reopen("").await?;
            let stages = "['planet', 'sun'].map(name => {
                const r = deep(`[data-picture=${name}] canvas`)[0].getBoundingClientRect();
                return [r.left, r.top, r.width, r.height, r.right <= innerWidth && r.bottom <= innerHeight];
            })";
            let [planet, sun]: [(f64, f64, f64, f64, bool); 2] =
                serde_json::from_value(page.value_of(stages).await?)?;
            let screen = format!("{width}x{height}: planet {planet:?}, sun {sun:?}");
            assert!(planet.4 && sun.4, "not wholly in sight at {screen}");
            // The same scale and the same clock side by side: so the same size and the same height on the screen.
            assert!(
                (planet.2 - sun.2).abs() < 1.0 && (planet.3 - sun.3).abs() < 1.0,
                "{screen}"
            );
            assert!(
                (planet.1 - sun.1).abs() < 1.0,
                "one stands lower than the other at {screen}"
            );
            assert!(planet.0 + planet.2 <= sun.0, "{screen}");
        }
        Ok(())
    });
}

#[test]
fn on_a_phone_both_stages_stay_in_sight_and_nothing_shows_between_them() {
    on_our_page("", async |page| {
        page.resize(390, 844, 2.0).await?;
        page.ready().await?;
        page.middle_of("#periapsis-number").await?;
        let tops =
            "['planet', 'sun'].map(n => deep(`[data-picture=${n}]`)[0].getBoundingClientRect())";
        let in_sight = format!("{tops}.every(r => r.top >= 0 && r.bottom <= innerHeight / 1.5)");
        assert_eq!(page.value_of(&in_sight).await?, true);
        // Between the two, down to where their corners are round, nothing of what scrolls below may be seen.
        let gap = format!(
            "(([p, s]) => [Math.ceil(p.right) + 1, 1, Math.floor(s.left) - Math.ceil(p.right) - 2, \
             Math.floor(Math.max(p.bottom, s.bottom)) - 14])({tops})"
        );
        for scrolled in 0..6 {
            page.run("scrollBy({ top: 97, behavior: 'instant' });", Vec::new())
                .await?;
            page.settle().await?;
            let gap = serde_json::from_value(page.value_of(&gap).await?)?;
            let marks = page.marks_on_screen(gap).await?;
            assert_eq!(
                marks, 0,
                "something shows between the stages, {scrolled} steps down"
            );
        }
        Ok(())
    });
}

#[test]
fn pictures_are_sharp_on_fine_screens_and_follow_the_window() {
    on_our_page("", async |page| {
        let pixels =
            "Array.from(document.querySelectorAll('canvas'), c => c.width / c.clientWidth)";
        for (width, height, scale) in [
            (390, 844, 3.0),
            (1280, 800, 1.0),
            // One pixel wider, because Chromium without a screen tells a page nothing when only the ratio changes.
            (1281, 800, 1.5),
            (800, 600, 2.0),
        ] {
            page.resize(width, height, scale).await?;
            page.wait_until(&format!(
                "{pixels}.every(ratio => Math.abs(ratio - {scale}) < 0.02)"
            ))
            .await?;
            assert!(page.looks().await?.iter().all(|look| look.colours > 20));
        }
        Ok(())
    });
}

/// The colours of ground and ink, in the first picture and on the page.
pub(crate) async fn ground(page: &Page) -> WebDriverResult<(String, u64)> {
    let script = "
        const canvas = deep('[data-picture=planet] canvas')[0], copy = new OffscreenCanvas(4, 4);
        const pen = copy.getContext('2d');
        pen.drawImage(canvas, 0, 0);
        const [r, g, b] = pen.getImageData(1, 1, 1, 1).data;
        return [getComputedStyle(document.body).backgroundColor, r + g + b];";
    Ok(serde_json::from_value(page.run(script, Vec::new()).await?)?)
}

#[test]
fn the_page_and_its_pictures_follow_the_theme() {
    on_our_page("", async |page| {
        page.ready().await?;
        page.prefer(&[("prefers-color-scheme", "light")]).await?;
        let light = ground(page).await?;
        assert!(light.1 > 650, "{light:?}");
        page.prefer(&[("prefers-color-scheme", "dark")]).await?;
        let dark = ground(page).await?;
        assert!(dark.1 < 150, "{dark:?}");
        page.click("[data-action=theme]").await?;
        assert_eq!(ground(page).await?, light);
        page.click("[data-action=theme]").await?;
        assert_eq!(ground(page).await?, dark);
        page.prefer(&[("prefers-color-scheme", "light")]).await?;
        assert_eq!(
            ground(page).await?,
            dark,
            "the button's choice outlives the system's"
        );
        page.click("[data-action=theme]").await?;
        assert_eq!(ground(page).await?, light);
        page.expect(&Native::at_first()).await
    });
}
