//! Taking hold of the planet frame's picture: the same settings as the sliders', by mouse and by finger.

use glam::DVec2;
use serde_json::json;
use thirtyfour::prelude::*;
use two_frames::figure::{Grip, Mark};
use two_frames::sandbox::{Input, Sizes};
use two_frames::scenario::Field;

use crate::hand::Place;
use crate::native::Native;
use crate::page::{Outcome, Page, on_our_page};

const STAGE: &str = "[data-picture=planet] canvas";

/// The planet frame's picture: its upper left corner on the screen and its size.
async fn stage(page: &Page) -> WebDriverResult<(DVec2, Sizes)> {
    let corner = page.place_in(STAGE, 0.0, 0.0).await?;
    let size = page
        .value_of(&format!(
            "(c => [c.clientWidth, c.clientHeight])(deep('{STAGE}')[0])"
        ))
        .await?;
    let (width, height) = serde_json::from_value(size)?;
    Ok((DVec2::from(corner), Sizes::all(DVec2::new(width, height))))
}

/// Where a handle is in the picture, as the library places it.
fn handle(native: &mut Native, grip: Grip, sizes: &Sizes) -> DVec2 {
    let pictures = native.sandbox.pictures(sizes).expect("it is solved");
    let marks = pictures.planet_frame.marks.into_iter();
    let mut places = marks.filter_map(|mark| match mark {
        Mark::Handle(handle) if handle.grip == grip => Some(handle.at),
        _ => None,
    });
    places.next().expect("the picture has this handle")
}

/// What the library makes of a drag from one place of the picture to another.
fn dragged(grip: Grip, from: DVec2, to: DVec2, sizes: Sizes) -> Native {
    let mut native = Native::at_first();
    for input in [
        Input::Grab(grip, from, sizes),
        Input::Drag(to),
        Input::Release,
    ] {
        native.sandbox.apply(input).expect("a drag is not refused");
    }
    Native::of(&native.text())
}

/// Drags a handle by some way and holds the page to what the library makes of it; the value may differ by as much as a
/// pixel more or less makes.
async fn drag(page: &Page, grip: Grip, way: DVec2, finger: bool) -> WebDriverResult<f64> {
    let field = match grip {
        Grip::Periapsis => Field::Periapsis,
        Grip::Approach => Field::Approach,
    };
    let (corner, sizes) = stage(page).await?;
    let from = handle(&mut Native::at_first(), grip, &sizes);
    let before = page.looks().await?;
    let places: [Place; 2] = [(corner + from).into(), (corner + from + way).into()];
    if finger {
        page.swipe(&places).await?;
    } else {
        page.drag(&places).await?;
    }
    assert_eq!(
        stage(page).await?,
        (corner, sizes),
        "the picture moved away under the hand"
    );
    let key = field.spec().key;
    let value: f64 = page
        .value_in(&format!("#{key}-number"))
        .await?
        .parse()
        .expect("a number");
    let meant = |more: f64| {
        let to = from + way * (1.0 + more / way.length());
        dragged(grip, from, to, sizes).get(field)
    };
    let (less, more) = (meant(-1.5).min(meant(1.5)), meant(-1.5).max(meant(1.5)));
    assert!(
        less - 1.0 <= value && value <= more + 1.0,
        "{key} = {value}, not {less} to {more}"
    );
    assert!(
        (value - Native::at_first().get(field)).abs() > 2.0,
        "{key} is {value} still"
    );
    for (i, (now, then)) in page.looks().await?.iter().zip(&before).enumerate() {
        assert_ne!(now, then, "picture {i}");
    }
    page.expect(&Native::at_first().with_value(field, value))
        .await?;
    Ok(value)
}

/// The value that a drag led to can be had without dragging, and gives the same pictures.
async fn without_dragging(page: &Page, field: Field, value: f64) -> Outcome {
    let dragged = page.looks().await?;
    page.reopen("").await?;
    page.retype(&format!("#{}-number", field.spec().key), &value.to_string())
        .await?;
    page.expect(&Native::at_first().with_value(field, value))
        .await?;
    assert_eq!(page.looks().await?, dragged);
    Ok(())
}

async fn both_handles(page: &Page, finger: bool) -> Outcome {
    page.reopen("").await?;
    // Away from the planet, which lies above periapsis: farther out.
    let radii = drag(page, Grip::Periapsis, DVec2::new(3.0, 40.0), finger).await?;
    assert!(radii > 8.0);
    without_dragging(page, Field::Periapsis, radii).await?;
    page.reopen("").await?;
    let degrees = drag(page, Grip::Approach, DVec2::new(10.0, -25.0), finger).await?;
    assert!(
        degrees > 129.0,
        "the probe comes from farther ahead: {degrees}"
    );
    without_dragging(page, Field::Approach, degrees).await
}

#[test]
fn both_handles_follow_the_mouse() {
    on_our_page("", async |page| both_handles(page, false).await);
}

#[test]
fn both_handles_follow_a_finger() {
    on_our_page("", async |page| {
        page.touch_screen(true).await?;
        page.resize(390, 844, 2.0).await?;
        both_handles(page, true).await
    });
}

#[test]
fn an_angle_that_was_dragged_is_on_the_slider_too() {
    on_our_page("", async |page| {
        page.ready().await?;
        let degrees = drag(page, Grip::Approach, DVec2::new(10.0, -25.0), false).await?;
        let dragged = page.looks().await?;
        page.reopen("").await?;
        let presses = (degrees - 129.0).round() as usize;
        let slider = "[data-field=approach] [data-part=slider]";
        page.type_into(slider, Key::Right + "").await?;
        for _ in 1..presses {
            page.press(&[Key::Right]).await?;
        }
        page.expect(&Native::at_first().with_value(Field::Approach, degrees))
            .await?;
        assert_eq!(page.looks().await?, dragged);
        Ok(())
    });
}

#[test]
fn a_drag_that_takes_hold_of_nothing_does_nothing() {
    on_our_page("", async |page| {
        page.ready().await?;
        let before = page.looks().await?;
        for (picture, from, to) in [
            ("planet", (0.9, 0.1), (0.1, 0.3)),
            ("sun", (0.5, 0.5), (0.2, 0.2)),
            ("diagram", (0.5, 0.5), (0.2, 0.2)),
            ("record", (0.5, 0.5), (0.2, 0.2)),
        ] {
            let canvas = format!("[data-picture={picture}] canvas");
            let places = [
                page.place_in(&canvas, from.0, from.1).await?,
                page.place_in(&canvas, to.0, to.1).await?,
            ];
            page.drag(&places).await?;
            assert_eq!(page.looks().await?, before, "{picture}");
        }
        page.expect(&Native::at_first()).await
    });
}

#[test]
fn a_drag_that_leaves_the_picture_still_holds_and_ends() {
    on_our_page("", async |page| {
        page.ready().await?;
        let (corner, sizes) = stage(page).await?;
        let from = corner + handle(&mut Native::at_first(), Grip::Approach, &sizes);
        // Down to the left of the planet, out over the picture's edge: the probe now comes from behind.
        let outside = corner + DVec2::new(-30.0, sizes.stage.y - 20.0);
        page.drag(&[from.into(), outside.into()]).await?;
        let degrees: f64 = page
            .value_in("#approach-number")
            .await?
            .parse()
            .expect("a number");
        assert!(degrees < 100.0, "{degrees}");
        // Let go outside is let go: the mouse moves nothing any more.
        page.drag(&[(600.0, 700.0), (650.0, 720.0)]).await?;
        page.expect(&Native::at_first().with_value(Field::Approach, degrees))
            .await
    });
}

#[test]
fn a_finger_scrolls_the_page_everywhere_but_on_the_planet_stage() {
    on_our_page("", async |page| {
        page.touch_screen(true).await?;
        page.resize(390, 844, 2.0).await?;
        page.ready().await?;
        for picture in ["sun", "diagram", "record"] {
            page.run("scrollTo({ top: 0, behavior: 'instant' });", Vec::new())
                .await?;
            let (x, y) = page
                .middle_of(&format!("[data-picture={picture}] canvas"))
                .await?;
            let before = page.value_of("scrollY").await?.as_f64().unwrap_or_default();
            page.swipe(&[(x, y), (x, y - 200.0)]).await?;
            page.wait_until(&format!("scrollY > {before} + 50")).await?;
        }
        let scenario = page.value_of("location.hash").await?;
        assert_eq!(scenario, json!(format!("#{}", Native::at_first().text())));
        Ok(())
    });
}
