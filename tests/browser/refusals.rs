//! Values that a setting may not have: a sentence at the field says why, and everything else stays as it was.

use two_frames::scenario::Field;

use crate::native::Native;
use crate::page::{Outcome, Page, on_our_page};

/// Pastes a value that is refused, all at once: typed digit by digit, each good number on the way is taken. The sentence has to name the key, the value if there is one, the rule and what to try.
async fn refused(page: &Page, field: Field, typed: &str, words: &[&str]) -> Outcome {
    let key = field.spec().key;
    let before = page.looks().await?;
    page.paste_over(&format!("#{key}-number"), typed).await?;
    let sentence = page.text(&format!("#{key}-error")).await?;
    for words in [key, "has to be", "; try "].iter().chain(words) {
        assert!(sentence.contains(words), "{typed:?}: {sentence:?}");
    }
    let invalid = format!("deep('#{key}-number')[0].getAttribute('aria-invalid')");
    assert_eq!(page.value_of(&invalid).await?, "true");
    assert_eq!(
        page.looks().await?,
        before,
        "{key}={typed} changed a picture"
    );
    page.expect(&Native::at_first()).await
}

#[test]
fn what_is_out_of_range_is_refused_with_the_range() {
    on_our_page("", async |page| {
        page.ready().await?;
        page.click("details.more summary").await?;
        refused(
            page,
            Field::VInfinity,
            "100.5",
            &["v-infinity=100.5", "0.01", "100 km/s"],
        )
        .await?;
        page.reopen("").await?;
        refused(
            page,
            Field::Approach,
            "-181",
            &["approach=-181", "-180", "180°"],
        )
        .await?;
        page.reopen("").await?;
        refused(
            page,
            Field::Periapsis,
            "1e9",
            &["periapsis=1e9", "0.01", "10000 planet radii"],
        )
        .await
    });
}

#[test]
fn nothing_and_half_a_number_are_refused() {
    on_our_page("", async |page| {
        page.ready().await?;
        // In a number field the browser hands on half a number and other text as nothing at all.
        for typed in ["", "e", "-", "7e", "fast"] {
            refused(page, Field::VInfinity, typed, &["a number", "try 9"]).await?;
        }
        Ok(())
    });
}

#[test]
fn a_refusal_ends_with_the_next_good_value() {
    on_our_page("", async |page| {
        page.ready().await?;
        refused(page, Field::Periapsis, "0", &["periapsis=0"]).await?;
        page.retype("#periapsis-number", "5").await?;
        assert_eq!(page.text("#periapsis-error").await?, "");
        page.expect(&Native::at_first().with_value(Field::Periapsis, 5.0))
            .await?;
        refused_then_moved_on(page).await
    });
}

/// A person who leaves the refused value and goes on elsewhere must not see a message about a value that is no longer
/// there, nor a value that is not the one in force.
async fn refused_then_moved_on(page: &Page) -> Outcome {
    page.reopen("").await?;
    refused(page, Field::Periapsis, "0", &["periapsis=0"]).await?;
    page.click("[data-field=approach] [data-part=more]").await?;
    page.expect(&Native::at_first().with_value(Field::Approach, 130.0))
        .await?;
    let number = page.value_in("#periapsis-number").await?;
    let message = page.text("#periapsis-error").await?;
    assert!(
        (number == "8") == message.is_empty(),
        "periapsis shows {number:?} with the message {message:?}"
    );
    Ok(())
}

#[test]
fn settings_that_have_no_flyby_together_say_so_and_can_be_left() {
    on_our_page("", async |page| {
        page.go_to("planet=custom&gm=1e-300&radius=1e300&orbit=1e300")
            .await?;
        page.wait_until("deep('#app[data-state=refused]').length == 1")
            .await?;
        let sentence = page.text("[data-text=why]").await?;
        assert!(sentence.contains("try "), "{sentence:?}");
        // No number may stay that is not one of these settings.
        let values = page.numbers().await?;
        let stale: Vec<_> = values.iter().filter(|n| n.value.is_some()).collect();
        assert!(stale.is_empty(), "{stale:?}");
        page.click("[data-action=reset]").await?;
        page.ready().await?;
        page.expect(&Native::at_first()).await
    });
}
