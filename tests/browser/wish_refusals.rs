//! Goals that make no sense: a sentence says why, and nothing else changes.

use two_frames::physics::Free;

use crate::native::Native;
use crate::page::on_our_page;
use crate::wishing::{TAKE, VALUE, WISH, disabled, expect_answer, wishing};

const ERROR: &str = "#wish-error";

#[test]
fn a_value_that_is_not_allowed_is_answered_at_its_field() {
    on_our_page("", async |page| {
        page.ready().await?;
        for (kind, typed, words) in [
            (
                "aphelion",
                "1e9",
                ["aphelion=1e9: ", "from 0.001 to 100000 AU", "; try 9.5."],
            ),
            ("perihelion", "0", ["perihelion=0: ", "AU", "; try 1."]),
            (
                "leave",
                "-1",
                ["leave=-1: ", "from 0 to 1000 km/s", "; try 5."],
            ),
            ("turn", "180.5", ["turn=180.5: ", "180°", "; try 90."]),
            ("change", "e", ["change=: ", "a number", "; try 0."]),
        ] {
            page.choose(WISH, kind).await?;
            assert_eq!(page.text(ERROR).await?, "", "another goal, another value");
            let usual = page.value_in(VALUE).await?;
            let before = (page.looks().await?, page.aim_looks().await?);
            let answer = page.texts("[data-text=answer] li").await?;
            page.paste_over(VALUE, typed).await?;
            let sentence = page.text(ERROR).await?;
            for words in words.iter().chain(&["has to be"]) {
                assert!(sentence.contains(words), "{typed:?}: {sentence:?}");
            }
            let invalid = format!("deep('{VALUE}')[0].getAttribute('aria-invalid')");
            assert_eq!(page.value_of(&invalid).await?, "true");
            assert_eq!(
                (page.looks().await?, page.aim_looks().await?),
                before,
                "{typed}"
            );
            // What is answered is not what stands in the field: it is out of sight, and there is nothing to take.
            let hidden = page.texts("[data-text=answer] li").await?;
            assert!(hidden.iter().all(String::is_empty), "{hidden:?}");
            let visible =
                format!("deep('{TAKE}')[0].checkVisibility({{visibilityProperty: true}})");
            assert_eq!(page.value_of(&visible).await?, false);
            page.expect(&Native::at_first()).await?;
            // Left, the field has the value in force again, and no message.
            page.click("h1").await?;
            page.settle().await?;
            assert_eq!(page.value_in(VALUE).await?, usual);
            assert_eq!(page.text(ERROR).await?, "");
            assert_eq!(page.value_of(&invalid).await?, "false");
            assert_eq!(page.texts("[data-text=answer] li").await?, answer);
        }
        Ok(())
    });
}

#[test]
fn every_orbit_can_be_reached_for_and_one_s_own_needs_no_aim() {
    on_our_page("", async |page| {
        page.ready().await?;
        for planet in ["mercury", "earth", "saturn", "neptune"] {
            let wish = format!("reach={planet}");
            page.choose(WISH, &wish).await?;
            assert_eq!(
                page.value_of(&format!("deep('{VALUE}')[0].checkVisibility()"))
                    .await?,
                false
            );
            expect_answer(page, &mut wishing("", &wish, Free::AimPoint)).await?;
        }
        page.choose(WISH, "reach=jupiter").await?;
        let said = page.text("[data-text=answer]").await?;
        assert!(
            said.contains("on the orbit of Jupiter, so every path reaches that"),
            "{said}"
        );
        assert_eq!(page.value_of(&disabled()).await?, true);
        page.click(TAKE).await?;
        page.expect(&Native::at_first()).await?;
        page.choose(WISH, "").await?;
        let said = page.text("[data-text=answer]").await?;
        assert!(said.contains("No goal is set: choose one."), "{said}");
        assert_eq!(page.value_of(&disabled()).await?, true);
        Ok(())
    });
}
