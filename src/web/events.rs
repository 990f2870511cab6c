//! From the browser's events to inputs. A few listeners on the root serve every control below it.

use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;
use web_sys::{
    Element, Event, EventTarget, HtmlInputElement, HtmlSelectElement, ResizeObserver,
    ResizeObserverBoxOptions, ResizeObserverOptions,
};

use super::aim::Aim;
use super::aim_hand;
use super::dom::{document, set_attribute, window};
use super::hand;
use super::listener::{Callback, Listener};
use super::looks::Looks;
use super::page::{Page, with};
use crate::sandbox::{AimChange, Change, Input};
use crate::scenario::{Field, Preset};

/// One press of the zoom buttons.
const ZOOM_STEP: f64 = 1.5;

/// Watches the sizes of the pictures for as long as it lives.
pub(super) struct SizeObserver {
    observer: ResizeObserver,
    _callback: Callback,
}

impl Drop for SizeObserver {
    fn drop(&mut self) {
        self.observer.disconnect();
    }
}

/// Redraws the pictures when their size changes.
pub(super) fn watch_sizes(page: &Page) -> Result<SizeObserver, JsValue> {
    let callback = Callback::new(|_| {
        with(|page| {
            // Another screen may have other pixels at the same size.
            page.parts.aim.repaint();
            page.redraw();
        });
    });
    let observer = ResizeObserver::new(callback.as_ref().unchecked_ref())?;
    // Device pixels, so that another zoom or another screen counts too.
    let options = ResizeObserverOptions::new();
    options.set_box(ResizeObserverBoxOptions::DevicePixelContentBox);
    let parts = &page.parts;
    let more = [&parts.aim.canvas, &parts.aim.chart.canvas];
    for canvas in parts.canvases.iter().chain(more) {
        observer.observe_with_options(&canvas.element, &options);
    }
    Ok(SizeObserver {
        observer,
        _callback: callback,
    })
}

/// All listeners of the page.
pub(super) fn listen(page: &Page) -> Result<Vec<Listener>, JsValue> {
    let root = &page.root;
    let on = |target: &EventTarget, kind, react: fn(&mut Page, &Event)| {
        Listener::new(target, kind, move |event| {
            with(|page| react(page, &event));
        })
    };
    let mut listeners = vec![
        on(root, "input", on_input)?,
        on(root, "change", on_change)?,
        on(root, "click", on_click)?,
        on(&window(), "popstate", |page, _| page.follow_address())?,
    ];
    let [planet, sun, ..] = &page.parts.canvases;
    for &(canvas, reactions) in &[
        (planet, &hand::ON_STAGES),
        (sun, &hand::ON_STAGES),
        (&page.parts.aim.canvas, &aim_hand::ON_AIM_PLANE),
    ] {
        for &(kind, react) in reactions {
            listeners.push(on(&canvas.element, kind, react)?);
        }
    }
    for query in &[
        "(prefers-color-scheme: dark)",
        "(forced-colors: active)",
        "print",
    ] {
        if let Some(list) = window().match_media(query)? {
            listeners.push(on(&list, "change", |page, _| page.restyle())?);
        }
    }
    Ok(listeners)
}

/// Whether the person has asked the system for less motion.
pub(super) fn prefers_reduced_motion() -> bool {
    let list = window()
        .match_media("(prefers-reduced-motion: reduce)")
        .ok()
        .flatten();
    list.is_some_and(|list| list.matches())
}

pub(super) fn target(event: &Event) -> Option<Element> {
    event.target()?.dyn_into().ok()
}

/// The field that an element belongs to.
fn field_at(element: &Element) -> Option<Field> {
    let holder = element.closest("[data-field]").ok().flatten()?;
    Field::from_key(&holder.get_attribute("data-field")?)
}

fn attribute(element: &Element, name: &str) -> String {
    element.get_attribute(name).unwrap_or_default()
}

/// Sliders and number fields, while they move or are typed in.
fn on_input(page: &mut Page, event: &Event) {
    let Some(element) = target(event) else { return };
    let Some(input) = element.dyn_ref::<HtmlInputElement>() else {
        return;
    };
    match (
        field_at(&element),
        attribute(&element, "data-part").as_str(),
    ) {
        (Some(field), "slider") => page.apply(Input::Slide(field, input.value_as_number())),
        (Some(field), "number") => page.apply(Input::Type(field, input.value())),
        (_, "wish") => page.apply_aim(page.parts.aim.typed_wish()),
        _ if element.has_attribute("data-aim") => {
            page.apply_aim(page.parts.aim.typed_point(&element));
        }
        _ => match attribute(&element, "data-action").as_str() {
            "scrub" => {
                let position = page.parts.playback.position();
                page.apply(Input::Clock(Change::Scrub(position)));
            }
            "around" | "height" => page.apply(Input::Look(page.parts.looks.turned())),
            _ => {}
        },
    }
}

/// Lists and side buttons, when something else is chosen.
fn on_change(page: &mut Page, event: &Event) {
    let Some(element) = target(event) else { return };
    if let Some(list) = element.dyn_ref::<HtmlSelectElement>() {
        on_list(page, &attribute(&element, "data-action"), &list.value());
    } else if attribute(&element, "data-action") == "plane-only" {
        let only = element
            .dyn_ref::<HtmlInputElement>()
            .map(HtmlInputElement::checked);
        page.apply_aim(only.map(AimChange::InPlane));
    } else if element.has_attribute("data-aim") || attribute(&element, "data-part") == "wish" {
        // Typed to the end: what was refused on the way gives way to what is in force.
        page.parts.aim.repaint();
        page.redraw();
    } else if let Ok(Some(side)) = element.closest("[data-side]") {
        let aim = if attribute(&side, "data-side") == "0" {
            0.0
        } else {
            180.0
        };
        page.apply(Input::Set(Field::Aim, aim));
    }
}

fn on_list(page: &mut Page, action: &str, value: &str) {
    match action {
        "planet" => page.apply(Input::Planet(value.to_owned())),
        "preset" => {
            if let Some(index) = Preset::index_of_id(value) {
                page.apply(Input::Preset(index));
                page.opened();
                page.save_as_new();
            }
        }
        "look" => page.apply(Input::Look(Looks::named(value))),
        "law" | "whole" => {
            let pace = page.parts.playback.pace();
            page.apply(Input::Clock(Change::Pace(pace)));
        }
        _ => page.apply_aim(Aim::chosen(action, value)),
    }
}

fn on_click(page: &mut Page, event: &Event) {
    let Some(button) = target(event).and_then(|element| element.closest("button").ok().flatten())
    else {
        return;
    };
    if let Some(field) = field_at(&button) {
        let presses = if attribute(&button, "data-part") == "less" {
            -1.0
        } else {
            1.0
        };
        page.apply(Input::Press(field, presses));
        return;
    }
    let clock = |change| Some(Input::Clock(change));
    let input = match attribute(&button, "data-action").as_str() {
        "play" if page.sandbox.is_playing() => clock(Change::Pause),
        "play" => clock(Change::Play),
        "back" => clock(Change::Step(-1.0)),
        "on" => clock(Change::Step(1.0)),
        "telling" => clock(Change::Telling),
        "to-periapsis" => clock(Change::Go(0.0)),
        "closer" => Some(Input::Zoom(ZOOM_STEP)),
        "farther" => Some(Input::Zoom(1.0 / ZOOM_STEP)),
        "fit" => Some(Input::Fit),
        "take" => Some(Input::Aim(AimChange::Take)),
        "reset" => {
            page.apply(Input::Reset);
            page.opened();
            page.save_as_new();
            None
        }
        "share" => {
            page.share();
            None
        }
        "theme" => {
            switch_theme(page);
            None
        }
        _ => None,
    };
    if let Some(input) = input {
        page.apply(input);
    }
}

/// Switches between light and dark, whatever the system says.
fn switch_theme(page: &mut Page) {
    let Some(html) = document().document_element() else {
        return;
    };
    let system_dark = window()
        .match_media("(prefers-color-scheme: dark)")
        .ok()
        .flatten();
    let dark = match attribute(&html, "data-theme").as_str() {
        "dark" => true,
        "light" => false,
        _ => system_dark.is_some_and(|list| list.matches()),
    };
    set_attribute(&html, "data-theme", if dark { "light" } else { "dark" });
    page.restyle();
}
