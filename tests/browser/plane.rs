//! In the orbit plane and out of it: the switch, and what turns it.

use two_frames::physics::Free;
use two_frames::scenario::PRESETS;

use crate::native::{Native, aim_solution};
use crate::page::{Outcome, Page, on_our_page};
use crate::wishing::{TAKE, WISH, expect_answer, wishing};

#[test]
fn the_most_of_something_can_be_had_and_the_most_tilt_leaves_the_plane() {
    on_our_page("", async |page| {
        for wish in ["most=gain", "most=loss", "most=inclination"] {
            page.reopen("").await?;
            page.choose(WISH, wish).await?;
            let mut sandbox = wishing("", wish, Free::AimPoint);
            expect_answer(page, &mut sandbox).await?;
            page.click(TAKE).await?;
            let solution = aim_solution(&mut sandbox);
            page.expect(&Native::of(&solution.answer.scenario.to_string()))
                .await?;
            let path = if wish == "most=inclination" {
                "orbit_after.inclination_deg"
            } else {
                "sun_frame.speed_change_km_s"
            };
            let reached = page.quantity(path).await?;
            assert_eq!(Some(reached), solution.answer.value, "{wish}");
            let out =
                page.value_of("deep('#aim-number, #crank-number').every(f => f.checkVisibility())");
            assert_eq!(out.await?, wish == "most=inclination", "{wish}");
            let only = page.value_of("deep('[data-action=plane-only]')[0].checked");
            assert_eq!(only.await?, wish != "most=inclination", "{wish}");
        }
        let before = page.quantity("orbit_before.inclination_deg").await?;
        assert!(before.abs() < f64::MIN_POSITIVE, "{before}");
        assert!(page.quantity("orbit_after.inclination_deg").await? > 40.0);
        let rows = page.text("[data-text=rows]").await?;
        assert!(rows.contains("43.57") || rows.contains("43.6"), "{rows}");
        back_in_the_plane(page).await
    });
}

/// The switch brings the pass back into the plane, seen from north, and hides what leads out of it.
async fn back_in_the_plane(page: &Page) -> Outcome {
    page.choose("[data-action=look]", "side").await?;
    page.click("[data-action=plane-only]").await?;
    assert_eq!(page.value_in("[data-action=look]").await?, "north");
    assert_eq!(page.value_in("#crank-number").await?, "0");
    let aim = page.value_in("#aim-number").await?;
    assert!(aim == "0" || aim == "180", "{aim}");
    let visible =
        page.value_of("deep('#aim-number, #crank-number').some(f => f.checkVisibility())");
    assert_eq!(visible.await?, false);
    // Half a turn in radians is rounded.
    assert!(page.quantity("orbit_after.inclination_deg").await? < 1e-12);
    Ok(())
}

#[test]
fn what_leads_out_of_the_plane_opens_with_the_switch_off() {
    on_our_page("", async |page| {
        for text in ["aim=90", "crank=5", "aim=-179", PRESETS[4].text] {
            page.reopen(text).await?;
            let only = page.value_of("deep('[data-action=plane-only]')[0].checked");
            assert_eq!(only.await?, false, "{text}");
        }
        page.choose("[data-action=preset]", PRESETS[1].id).await?;
        let only = "deep('[data-action=plane-only]')[0].checked";
        assert_eq!(page.value_of(only).await?, true);
        page.choose("[data-action=preset]", PRESETS[4].id).await?;
        assert_eq!(page.value_of(only).await?, false);
        Ok(())
    });
}
