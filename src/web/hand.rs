//! A hand on the stages: it takes hold of a handle, or turns both stages, by mouse, by finger or by the arrow keys.

use glam::DVec2;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, KeyboardEvent, PointerEvent};

use super::events::target;
use super::page::Page;
use crate::sandbox::Input;

/// How far from a handle, CSS pixels, a press still takes hold of it.
pub(super) const REACH: f64 = 22.0;
/// An arrow key moves the eye by so many degrees, with Shift by the second number.
const KEY_STEPS_DEG: [f64; 2] = [1.0, 15.0];

/// What is done about an event.
pub(super) type React = fn(&mut Page, &Event);

/// What both stages listen to.
pub(super) const ON_STAGES: [(&str, React); 6] = [
    ("pointerdown", on_pointer_down),
    ("pointermove", on_pointer_move),
    ("pointerup", on_pointer_up),
    ("pointercancel", on_pointer_up),
    ("touchstart", keep_from_scrolling),
    ("keydown", on_key),
];

/// The pointer of an event, unless it is a second finger.
pub(super) fn pointer(event: &Event) -> Option<&PointerEvent> {
    event
        .dyn_ref::<PointerEvent>()
        .filter(|pointer| pointer.is_primary())
}

/// Where a pointer is in the picture.
pub(super) fn place(event: &PointerEvent) -> DVec2 {
    DVec2::new(f64::from(event.offset_x()), f64::from(event.offset_y()))
}

fn on_pointer_down(page: &mut Page, event: &Event) {
    let (Some(pointer), Some(stage)) = (pointer(event), target(event)) else {
        return;
    };
    // The other buttons of a mouse have other uses.
    if pointer.button() != 0 {
        return;
    }
    let sizes = page.sizes();
    let at = place(pointer);
    let has_handles = stage == **page.parts.canvases[0].element;
    let grip = page
        .sandbox
        .pictures(&sizes)
        .ok()
        .filter(|_| has_handles)
        .and_then(|pictures| pictures.planet_frame.handle_near(at, REACH));
    if let Some(grip) = grip {
        hold(&stage, pointer);
        page.apply(Input::Grab(grip, at, sizes));
    } else if page.sandbox.may_turn() {
        hold(&stage, pointer);
        page.turned_from = Some(at);
    }
}

/// Lets a stage have a pointer's events until it is let go, wherever it goes.
pub(super) fn hold(stage: &Element, pointer: &PointerEvent) {
    // Without capture a fast drag ends at the picture's edge; that is no reason to refuse it.
    let _ = stage.set_pointer_capture(pointer.pointer_id());
}

/// A finger that holds a handle or turns the stages must not scroll the page; any other may.
fn keep_from_scrolling(page: &mut Page, event: &Event) {
    if page.sandbox.is_dragging() || page.turned_from.is_some() {
        event.prevent_default();
    }
}

fn on_pointer_move(page: &mut Page, event: &Event) {
    let Some(at) = pointer(event).map(place) else {
        return;
    };
    if page.sandbox.is_dragging() {
        page.apply(Input::Drag(at));
    } else if let Some(from) = page.turned_from.filter(|from| *from != at) {
        page.turned_from = Some(at);
        page.apply(Input::Turn(at - from));
    }
}

fn on_pointer_up(page: &mut Page, event: &Event) {
    if pointer(event).is_none() {
        return;
    }
    on_pointer_move(page, event);
    page.turned_from = None;
    if page.sandbox.is_dragging() {
        page.apply(Input::Release);
    }
}

/// The arrow keys move the eye as they move the two sliders: round, and up and down.
fn on_key(page: &mut Page, event: &Event) {
    let Some(key) = event
        .dyn_ref::<KeyboardEvent>()
        .filter(|_| page.sandbox.may_turn())
    else {
        return;
    };
    let Some(way) = arrow(key) else { return };
    event.prevent_default();
    let step = KEY_STEPS_DEG[usize::from(key.shift_key())];
    page.apply(Input::Look(page.sandbox.look().moved(way * step)));
}

/// The direction of an arrow key: x to the right, y up.
pub(super) fn arrow(key: &KeyboardEvent) -> Option<DVec2> {
    match key.key().as_str() {
        "ArrowRight" => Some(DVec2::X),
        "ArrowLeft" => Some(DVec2::NEG_X),
        "ArrowUp" => Some(DVec2::Y),
        "ArrowDown" => Some(DVec2::NEG_Y),
        _ => None,
    }
}
