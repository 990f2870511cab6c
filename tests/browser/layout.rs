//! The arrangement on every screen: nothing runs out of sight, nothing is cut off, nothing lies on another, everything can
//! be hit.

use serde::Deserialize;
use serde_json::json;
use thirtyfour::prelude::*;

use crate::page::{Outcome, Page, on_our_page};

/// Width and height, CSS pixels: from WCAG's narrowest page (320) over phones and a laptop to a 4K projector.
pub(crate) const SCREENS: [(u32, u32); 7] = [
    (320, 640),
    (360, 740),
    (390, 844),
    (768, 1024),
    (1280, 800),
    (1920, 1080),
    (3840, 2160),
];

/// Looks that may change sizes: forced colours draw borders of their own.
const LOOKS: [&[(&str, &str)]; 2] = [&[], &[("forced-colors", "active")]];

/// What is wrong with the page's arrangement, as a person would see it; empty lists when nothing is.
#[derive(Debug, Default, PartialEq, Deserialize)]
pub(crate) struct Faults {
    /// Elements that run out of the window sideways.
    pub(crate) outside: Vec<String>,
    /// Elements whose content does not fit into them.
    clipped: Vec<String>,
    /// Controls smaller than 24 by 24 CSS pixels.
    small: Vec<String>,
    /// Controls that lie on one another.
    pub(crate) overlapping: Vec<String>,
}

/// JavaScript: the faults.
const FIND_FAULTS: &str = r"
    const seen = e => e.checkVisibility() && !e.closest('.spoken');
    const all = [...document.querySelectorAll('#app, #app *')].filter(seen);
    const name = e => {
        const words = (e.getAttribute('aria-label') ?? e.textContent).trim().slice(0, 30);
        return `${e.localName}${e.id && '#' + e.id}${e.className && '.' + e.className} ${words}`;
    };
    const box = e => e.getBoundingClientRect();
    // A table may scroll in its own box; all else has to fit.
    const free = all.filter(e => !e.closest('.scroll') || e.matches('.scroll'));
    const outside = free.filter(e => box(e).left < -0.5 || box(e).right > innerWidth + 0.5);
    const cut = e => e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0 && getComputedStyle(e).display !== 'inline';
    const holders = free.filter(e => !e.matches('.scroll, input, select, canvas, summary') && cut(e));
    // A list shows its chosen words only as far as it is wide.
    const list = e => {
        const style = getComputedStyle(e), pen = new OffscreenCanvas(1, 1).getContext('2d');
        pen.font = style.font;
        const words = pen.measureText(e.selectedOptions[0]?.text ?? '').width;
        return words + parseFloat(style.paddingLeft) + parseFloat(style.paddingRight) > e.clientWidth;
    };
    const lists = free.filter(e => e.matches('select') && list(e));
    const numbers = free.filter(e => e.matches('input[type=number]') && e.scrollWidth > e.clientWidth + 1);
    // A label is part of the spot that reacts.
    const controls = all.filter(e => e.matches('button, select, input, summary, a[href]'));
    const spot = e => e.matches('input[type=radio], input[type=checkbox]') && e.closest('label') ? e.closest('label') : e;
    const small = controls.filter(e => box(spot(e)).width < 24 || box(spot(e)).height < 24);
    const overlapping = controls.flatMap((a, i) => controls.slice(i + 1).filter(b => {
        const [p, q] = [box(a), box(b)];
        return p.left < q.right - 1 && q.left < p.right - 1 && p.top < q.bottom - 1 && q.top < p.bottom - 1;
    }).map(b => `${name(a)} on ${name(b)}`));
    return {
        outside: outside.map(name), clipped: [...holders, ...lists, ...numbers].map(name), small: small.map(name), overlapping,
    };";

/// What is wrong with the page's arrangement now.
pub(crate) async fn faults(page: &Page) -> WebDriverResult<Faults> {
    Ok(serde_json::from_value(
        page.run(FIND_FAULTS, Vec::new()).await?,
    )?)
}

/// Looks at a scenario on every screen and in every look, and gathers what is wrong.
async fn look_everywhere(page: &Page, scenario: &str) -> WebDriverResult<Vec<String>> {
    let mut wrong = Vec::new();
    for (width, height) in SCREENS {
        page.resize(width, height, 1.0).await?;
        page.reopen(scenario).await?;
        for look in LOOKS {
            page.prefer(look).await?;
            let found = faults(page).await?;
            if found != Faults::default() {
                wrong.push(format!("{width}x{height} {look:?}: {found:#?}"));
            }
        }
    }
    Ok(wrong)
}

fn fits_everywhere(scenario: &'static str) {
    on_our_page("", async |page| {
        let wrong = look_everywhere(page, scenario).await?;
        assert!(wrong.is_empty(), "{}", wrong.join("\n"));
        Ok(())
    });
}

#[test]
fn the_first_state_fits_everywhere() {
    fits_everywhere("");
}

#[test]
fn the_custom_planet_with_everything_unfolded_fits_everywhere() {
    fits_everywhere(
        "planet=custom&gm=126686531.9&radius=71492&orbit=5.202887&aim=90&crank=-179&v-infinity=99.9",
    );
}

#[test]
fn a_strike_and_notices_fit_everywhere() {
    fits_everywhere(
        "periapsis=0.6&v-infinity=fast&flavour_that_is_a_very_long_word_without_any_place_to_break_it=3",
    );
}

#[test]
fn an_answer_out_of_the_plane_fits_everywhere() {
    fits_everywhere("periapsis=19.24&aim=-126.5&crank=-178.1&v-infinity=13.31");
}

/// Each picture as it stands on the page.
#[derive(Debug, Deserialize)]
struct Standing {
    name: String,
    width: f64,
    height: f64,
}

#[test]
fn pictures_keep_their_shape_on_every_screen() {
    on_our_page("", async |page| {
        for (width, height) in SCREENS {
            page.resize(width, height, 1.0).await?;
            page.reopen("").await?;
            let pictures = "deep('[data-picture]').map(f => { const r = f.querySelector('canvas').getBoundingClientRect(); \
                 return { name: f.dataset.picture, width: r.width, height: r.height }; })";
            let all: Vec<Standing> = serde_json::from_value(page.value_of(pictures).await?)?;
            assert_eq!(all.len(), 6);
            for picture in all {
                let ratio = picture.width / picture.height;
                let bounds = match picture.name.as_str() {
                    "aim" => (0.86, 0.88),
                    "outcome" => (1.77, 1.79),
                    "record" => (1.98, 2.02),
                    // The stages and the diagram fill their column.
                    _ => (0.4, 4.0),
                };
                assert!(
                    bounds.0 < ratio && ratio < bounds.1 && picture.width > 100.0,
                    "{width}x{height}: {picture:?}"
                );
            }
        }
        Ok(())
    });
}

/// Wide text of one's own (WCAG 2.2, 1.4.12): what it says has to stay readable.
const TEXT_SPACING: &str = "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
    p { margin-bottom: 2em !important; }";

#[test]
fn wider_text_still_fits() {
    on_our_page("", async |page| {
        for (width, height) in [(390, 844), (1280, 800)] {
            page.resize(width, height, 1.0).await?;
            page.reopen("").await?;
            spread_text(page).await?;
            let found = faults(page).await?;
            assert_eq!(
                (&found.outside, &found.overlapping),
                (&vec![], &vec![]),
                "{width}"
            );
        }
        Ok(())
    });
}

async fn spread_text(page: &Page) -> Outcome {
    let add = "
        const style = document.createElement('style');
        style.textContent = arguments[0];
        document.head.append(style);";
    page.run(add, vec![json!(TEXT_SPACING)]).await?;
    page.settle().await
}
