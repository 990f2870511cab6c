//! A hand on the aim plane: a press, a drag, a tap or the arrow keys move the aim.

use glam::DVec2;
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent};

use super::events::target;
use super::hand::{REACH, React, arrow, hold, place, pointer};
use super::page::Page;
use crate::figure::aim_square;
use crate::sandbox::{AimChange, Input};

/// An arrow key moves the aim by so many hundredths of the way from the middle to the edge, with Shift by the second
/// number.
const KEY_STEPS: [f64; 2] = [1.0, 10.0];

/// What the aim plane listens to.
pub(super) const ON_AIM_PLANE: [(&str, React); 6] = [
    ("pointerdown", on_pointer_down),
    ("pointermove", on_pointer_move),
    ("pointerup", on_pointer_up),
    ("pointercancel", on_pointer_cancel),
    ("touchstart", keep_from_scrolling),
    ("keydown", on_key),
];

/// A mouse takes the aim along at once. A finger does so only where the aim is: elsewhere it may be about to scroll, and
/// aims when it is lifted without having done so.
fn on_pointer_down(page: &mut Page, event: &Event) {
    let (Some(pointer), Some(canvas)) = (pointer(event), target(event)) else {
        // With a second finger the first one does not tap.
        page.tapped_at = None;
        return;
    };
    if pointer.button() != 0 {
        return;
    }
    let (at, size) = (place(pointer), page.parts.aim.canvas.size());
    // The legend and the margin are no place to aim at; a drag may lead there.
    let (corner, side) = aim_square(size);
    let part = (at - corner) / side;
    if part.min_element() < 0.0 || part.max_element() > 1.0 {
        return;
    }
    let near = page
        .sandbox
        .aim_place(size)
        .is_some_and(|aim| aim.distance(at) < REACH);
    if pointer.pointer_type() == "mouse" || near {
        hold(&canvas, pointer);
        page.apply(Input::Aim(AimChange::Hold(at, size)));
    } else {
        page.tapped_at = Some(at);
    }
}

fn on_pointer_move(page: &mut Page, event: &Event) {
    let Some(at) = pointer(event).map(place) else {
        return;
    };
    if page.sandbox.is_dragging() {
        page.apply(Input::Aim(AimChange::Move(at)));
    }
    // A finger that has gone somewhere has not tapped.
    page.tapped_at = page.tapped_at.filter(|from| from.distance(at) < REACH);
}

fn on_pointer_up(page: &mut Page, event: &Event) {
    if pointer(event).is_none() {
        return;
    }
    let size = page.parts.aim.canvas.size();
    if let Some(at) = page.tapped_at.take() {
        page.apply(Input::Aim(AimChange::Hold(at, size)));
    } else {
        on_pointer_move(page, event);
    }
    on_pointer_cancel(page, event);
}

fn on_pointer_cancel(page: &mut Page, event: &Event) {
    if pointer(event).is_none() {
        return;
    }
    page.tapped_at = None;
    if page.sandbox.is_dragging() {
        page.apply(Input::Release);
    }
}

fn keep_from_scrolling(page: &mut Page, event: &Event) {
    if page.sandbox.is_dragging() {
        event.prevent_default();
    }
}

/// The arrow keys move the aim as the picture shows it: up is up.
fn on_key(page: &mut Page, event: &Event) {
    let Some(key) = event.dyn_ref::<KeyboardEvent>() else {
        return;
    };
    let Some(way) = arrow(key) else { return };
    event.prevent_default();
    let step = KEY_STEPS[usize::from(key.shift_key())];
    let way = DVec2::new(way.x, -way.y) * step;
    page.apply(Input::Aim(AimChange::Nudge(way)));
}
