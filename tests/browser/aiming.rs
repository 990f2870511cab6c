//! Aiming by hand: drag, tap, arrow keys and number fields lead to one and the same aim, and the page is the library's.

use glam::DVec2;
use serde_json::json;
use thirtyfour::prelude::*;
use two_frames::sandbox::{AimChange, Input, Sandbox};
use two_frames::scenario::Field;

use crate::hand::Place;
use crate::native::Native;
use crate::page::{Outcome, Page, on_our_page};

pub(crate) const PLANE: &str = "[data-picture=aim] canvas";

/// In the orbit plane, and out of it.
const PASSES: [&str; 2] = ["", "aim=30&periapsis=6"];

/// The aim plane's picture: its upper left corner on the screen and its size.
async fn plane(page: &Page) -> WebDriverResult<(DVec2, DVec2)> {
    let corner = page.place_in(PLANE, 0.0, 0.0).await?;
    let size = format!("(c => [c.clientWidth, c.clientHeight])(deep('{PLANE}')[0])");
    let (width, height) = serde_json::from_value(page.value_of(&size).await?)?;
    Ok((DVec2::from(corner), DVec2::new(width, height)))
}

/// Where a whole pixel of the picture is on the screen: a little inside it, because a pointer's place is cut to whole pixels.
fn on_screen(corner: DVec2, pixel: DVec2) -> Place {
    (corner + pixel + 0.02 * pixel.signum()).into()
}

/// What the library makes of a scenario text after changes of the aim.
pub(crate) fn after(text: &str, changes: &[AimChange]) -> Native {
    let mut sandbox = Sandbox::open(text);
    for change in changes {
        let input = Input::Aim(*change);
        sandbox.apply(input).expect("an aim is not refused");
    }
    let _ = sandbox.apply(Input::Release);
    Native::of(&sandbox.scenario().to_string())
}

/// The aim point, km, as the page has it, unrounded.
async fn aim_point(page: &Page) -> WebDriverResult<DVec2> {
    Ok(DVec2::new(
        page.quantity("planet_frame.b_t_km").await?,
        page.quantity("planet_frame.b_r_km").await?,
    ))
}

/// The pixel of the picture where the aim is.
fn pixel_of_aim(text: &str, size: DVec2) -> DVec2 {
    let place = Sandbox::open(text).aim_place(size);
    place.expect("the pass is solved").round()
}

async fn focus(page: &Page) -> Outcome {
    page.run("deep(arguments[0])[0].focus();", vec![json!(PLANE)])
        .await
        .map(drop)
}

/// Three coarse and two fine steps to the left, one coarse and four fine ones up, and what the library makes of them.
async fn by_keys(page: &Page, text: &str) -> WebDriverResult<Native> {
    focus(page).await?;
    let mut nudges = Vec::new();
    for (shift, key, way, count) in [
        (true, Key::Left, DVec2::new(-10.0, 0.0), 3),
        (true, Key::Up, DVec2::new(0.0, -10.0), 1),
        (false, Key::Left, DVec2::new(-1.0, 0.0), 2),
        (false, Key::Up, DVec2::new(0.0, -1.0), 4),
    ] {
        for _ in 0..count {
            let keys = [Key::Shift, key.clone()];
            page.press(if shift { &keys[..] } else { &keys[1..] })
                .await?;
            nudges.push(AimChange::Nudge(way));
        }
    }
    let native = after(text, &nudges);
    page.expect(&native).await?;
    Ok(native)
}

/// A pass as a person points at it: the periapsis has four digits, the aim angle tenths of a degree.
fn expect_rounded(native: &Native) {
    let radii = native.get(Field::Periapsis);
    let digits: String = radii
        .to_string()
        .chars()
        .filter(char::is_ascii_digit)
        .collect();
    assert!(digits.trim_matches('0').len() <= 4, "periapsis {radii}");
    let tenths = 10.0 * native.get(Field::Aim);
    assert!(
        (tenths - tenths.round()).abs() < 1e-9,
        "aim {tenths} tenths"
    );
}

#[test]
fn drag_tap_and_keys_reach_the_same_aim() {
    on_our_page("", async |page| {
        for text in PASSES {
            page.touch_screen(false).await?;
            page.reopen(text).await?;
            let start = aim_point(page).await?;
            let keys = by_keys(page, text).await?;
            expect_rounded(&keys);
            let aim = aim_point(page).await?;
            assert!(aim.x < start.x, "left is left");
            let in_plane = text.is_empty();
            assert_eq!(in_plane, aim.y == 0.0, "B·R = {} km", aim.y);
            assert!(in_plane || aim.y < start.y, "up is north, against B·R");

            page.reopen(text).await?;
            let (corner, size) = plane(page).await?;
            let to = keys
                .sandbox
                .clone()
                .aim_place(size)
                .expect("it is solved")
                .round();
            let from = pixel_of_aim(text, size);
            page.drag(&[on_screen(corner, from), on_screen(corner, to)])
                .await?;
            let dragged = after(text, &[AimChange::Hold(from, size), AimChange::Move(to)]);
            page.expect(&dragged).await?;
            expect_rounded(&dragged);
            // A pixel, and what the rounding to tenths of a degree and four digits adds.
            let half_km = Sandbox::open(text).aim_window_km().expect("it is solved");
            let pixel_km = 2.0 * half_km / size.min_element();
            let off = (aim_point(page).await? - aim).length();
            assert!(off < 1.2 * pixel_km + 2e-3 * aim.length(), "{off} km off");

            page.reopen(text).await?;
            let there = on_screen(plane(page).await?.0, to);
            page.drag(&[there, there]).await?;
            page.expect(&dragged).await?;
            page.touch_screen(true).await?;
            page.reopen(text).await?;
            let there = on_screen(plane(page).await?.0, to);
            page.swipe(&[there, there]).await?;
            page.expect(&dragged).await?;
        }
        Ok(())
    });
}

#[test]
fn up_is_north_and_the_other_way_back() {
    on_our_page("aim=0.1&periapsis=3", async |page| {
        page.ready().await?;
        focus(page).await?;
        let start = aim_point(page).await?;
        for _ in 0..6 {
            page.press(&[Key::Shift, Key::Up]).await?;
        }
        let north = aim_point(page).await?;
        assert!(north.y < start.y - 1e5, "{north} from {start}");
        // Aimed over the planet's north, the probe is north of it when it is nearest.
        let ups = [AimChange::Nudge(DVec2::new(0.0, -10.0)); 6];
        let mut native = after("aim=0.1&periapsis=3", &ups);
        page.expect(&native).await?;
        let periapsis = native
            .sandbox
            .solved()
            .expect("it is solved")
            .flyby
            .periapsis_direction
            .z;
        assert!(periapsis > 0.3, "periapsis points {periapsis} north");
        for _ in 0..6 {
            page.press(&[Key::Shift, Key::Down]).await?;
        }
        let off = (aim_point(page).await? - start).length();
        assert!(off < 0.01 * start.length(), "{off} km off after going back");
        Ok(())
    });
}

#[test]
fn a_drag_far_outside_holds_on_and_ends() {
    on_our_page("aim=30&periapsis=6", async |page| {
        page.resize(1280, 800, 1.0).await?;
        page.reopen("aim=30&periapsis=6").await?;
        let (corner, size) = plane(page).await?;
        let from = pixel_of_aim("aim=30&periapsis=6", size);
        let far = DVec2::new(-(corner.x - 3.0).floor(), (795.0 - corner.y).floor());
        page.drag(&[on_screen(corner, from), on_screen(corner, far)])
            .await?;
        let native = after(
            "aim=30&periapsis=6",
            &[AimChange::Hold(from, size), AimChange::Move(far)],
        );
        page.expect(&native).await?;
        // Let go outside is let go.
        page.drag(&[(700.0, 5.0), (720.0, 9.0)]).await?;
        page.expect(&native).await
    });
}

#[test]
fn the_right_button_and_a_second_finger_do_not_aim() {
    on_our_page("", async |page| {
        page.touch_screen(true).await?;
        page.ready().await?;
        let (x, y) = page.place_in(PLANE, 0.2, 0.3).await?;
        for kind in ["mousePressed", "mouseReleased"] {
            let event = json!({ "type": kind, "x": x, "y": y, "button": "right", "clickCount": 1 });
            page.cdp("Input.dispatchMouseEvent", event).await?;
        }
        page.settle().await?;
        page.expect(&Native::at_first()).await?;
        // Two fingers are about to zoom: neither has tapped.
        let finger = |id: u32, x: f64| json!({ "x": x, "y": y, "id": id });
        for (kind, fingers) in [
            ("touchStart", vec![finger(0, x)]),
            ("touchStart", vec![finger(0, x), finger(1, x + 60.0)]),
            ("touchEnd", vec![]),
        ] {
            let event = json!({ "type": kind, "touchPoints": fingers });
            page.cdp("Input.dispatchTouchEvent", event).await?;
            page.settle().await?;
        }
        page.expect(&Native::at_first()).await
    });
}

#[test]
fn a_finger_scrolls_or_aims_but_never_both() {
    on_our_page("", async |page| {
        page.touch_screen(true).await?;
        page.resize(390, 844, 2.0).await?;
        page.ready().await?;
        let scrolled = async || Ok::<_, WebDriverError>(page.value_of("scrollY").await?.as_f64());
        // Away from the aim: the page scrolls, whatever lies under the finger.
        let (corner, size) = plane(page).await?;
        let before = scrolled().await?;
        let start = on_screen(corner, DVec2::new(40.0, 200.0));
        page.swipe(&[start, (start.0, start.1 - 120.0)]).await?;
        let before = before.expect("a number");
        page.wait_until(&format!("scrollY > {before} + 50")).await?;
        page.expect(&Native::at_first()).await?;
        // On the aim: the aim moves, and the page does not.
        page.reopen("").await?;
        let (corner, _) = plane(page).await?;
        let before = scrolled().await?;
        let from = pixel_of_aim("", size);
        let to = from + DVec2::new(-30.0, 90.0);
        page.swipe(&[on_screen(corner, from), on_screen(corner, to)])
            .await?;
        assert_eq!(scrolled().await?, before);
        page.expect(&after(
            "",
            &[AimChange::Hold(from, size), AimChange::Move(to)],
        ))
        .await
    });
}

#[test]
fn a_cancelled_touch_lets_go() {
    on_our_page("periapsis=9", async |page| {
        page.touch_screen(true).await?;
        page.ready().await?;
        let (corner, size) = plane(page).await?;
        let from = pixel_of_aim("periapsis=9", size);
        let to = from + DVec2::new(-40.0, 0.0);
        let finger = |pixel| {
            let (x, y) = on_screen(corner, pixel);
            json!([{ "x": x, "y": y }])
        };
        for (kind, fingers) in [
            ("touchStart", finger(from)),
            ("touchMove", finger(to)),
            ("touchCancel", json!([])),
        ] {
            let event = json!({ "type": kind, "touchPoints": fingers });
            page.cdp("Input.dispatchTouchEvent", event).await?;
            page.settle().await?;
        }
        let native = after(
            "periapsis=9",
            &[AimChange::Hold(from, size), AimChange::Move(to)],
        );
        page.expect(&native).await?;
        // The picture fits the new aim again, as it does when a link with it is opened.
        let now = page.aim_looks().await?;
        page.reopen(&native.text()).await?;
        assert_eq!(page.aim_looks().await?, now);
        Ok(())
    });
}
