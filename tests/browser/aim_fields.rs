//! The number fields of the aim point: they set exactly what they say, read it back, and take no nonsense.

use thirtyfour::prelude::*;
use two_frames::sandbox::AimChange;

use crate::aiming::after;
use crate::native::Native;
use crate::page::{Page, on_our_page};

const T: &str = "[data-aim=t]";
const R: &str = "[data-aim=r]";

/// A relative difference that rounding of angles and of the way through the periapsis may make.
const ROUNDING: f64 = 1e-10;

async fn quantity_is(page: &Page, path: &str, km: f64) -> WebDriverResult<()> {
    let value = page.quantity(path).await?;
    let size = km.abs().max(1e5);
    assert!(
        (value - km).abs() < ROUNDING * size,
        "{path} = {value}, not {km}"
    );
    Ok(())
}

#[test]
fn the_fields_set_exactly_what_they_say_and_read_it_back() {
    on_our_page("aim=30", async |page| {
        page.ready().await?;
        for (t, r) in [
            (1_234_567.25, -2_345_678.125),
            (-987_654.5, 0.5),
            (0.0, -3e6),
        ] {
            // In an order that leads past the centre, where there is no periapsis to aim for.
            page.paste_over(R, &r.to_string()).await?;
            page.paste_over(T, &t.to_string()).await?;
            quantity_is(page, "planet_frame.b_t_km", t).await?;
            quantity_is(page, "planet_frame.b_r_km", r).await?;
            // Left, both read back in seven digits.
            page.click("h1").await?;
            page.settle().await?;
            for (field, km) in [(T, t), (R, r)] {
                let text = page.value_in(field).await?;
                let shown: f64 = text.parse().expect("a number");
                assert!(
                    (shown - km).abs() <= 0.5e-6 * km.abs().max(1.0),
                    "{text} for {km}"
                );
                assert!(text.len() <= 9, "{text} for {km}");
            }
        }
        Ok(())
    });
}

#[test]
fn typed_digit_by_digit_it_is_the_library_s_aim() {
    on_our_page("aim=30", async |page| {
        page.ready().await?;
        let r = page.quantity("planet_frame.b_r_km").await?;
        page.retype(T, "2000000").await?;
        // Nearer than 47 000 km there is no periapsis to aim for, and what is typed on the way is refused.
        let typed = [2e5, 2e6];
        let mut native = after("aim=30", &[]);
        let mut r = r;
        for t in typed {
            native = after(&native.text(), &[AimChange::At([t, r])]);
            r = native.value("planet_frame.b_r_km").expect("it has an aim");
        }
        page.expect(&native).await
    });
}

#[test]
fn nonsense_changes_nothing_and_is_gone_when_the_field_is_left() {
    on_our_page("", async |page| {
        page.ready().await?;
        let before = (page.looks().await?, page.aim_looks().await?);
        let shown = [page.value_in(T).await?, page.value_in(R).await?];
        for field in [T, R] {
            for typed in ["e", "-", "fast", ""] {
                page.paste_over(field, typed).await?;
                assert_eq!(
                    (page.looks().await?, page.aim_looks().await?),
                    before,
                    "{typed}"
                );
                page.expect(&Native::at_first()).await?;
            }
        }
        page.click("h1").await?;
        page.settle().await?;
        assert_eq!([page.value_in(T).await?, page.value_in(R).await?], shown);
        Ok(())
    });
}

#[test]
fn in_the_plane_only_the_aim_stays_in_the_plane() {
    on_our_page("", async |page| {
        page.ready().await?;
        // There is nothing to type where only one value is allowed.
        assert_eq!(page.value_in(R).await?, "0");
        assert_eq!(
            page.value_of(&format!("deep('{R}')[0].disabled")).await?,
            true
        );
        page.paste_over(T, "-2000000").await?;
        page.expect(&after("", &[AimChange::At([-2e6, 0.0])]))
            .await?;
        // Half a turn in radians is rounded.
        let r = page.quantity("planet_frame.b_r_km").await?;
        assert!(r.abs() < 1e-15 * 2e6, "{r}");
        assert_eq!(
            [page.value_in(T).await?, page.value_in(R).await?],
            ["-2000000", "0"]
        );
        Ok(())
    });
}
