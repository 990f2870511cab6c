//! Short names for what the browser always has, and look-ups that say what is missing.

use wasm_bindgen::JsCast;
use web_sys::{Document, Element, HtmlElement, Window};

pub(super) fn window() -> Window {
    web_sys::window().expect("a page has a window")
}

pub(super) fn document() -> Document {
    window().document().expect("a page has a document")
}

/// The first element below `root` that a selector finds, as the type asked for.
///
/// # Panics
/// When there is none: the page and the core do not belong together.
pub(super) fn find<T: JsCast>(root: &Element, selector: &str) -> T {
    let found = root.query_selector(selector).ok().flatten();
    found
        .and_then(|element| element.dyn_into().ok())
        .unwrap_or_else(|| missing(selector))
}

fn missing(selector: &str) -> ! {
    panic!("the page has no {selector} of the right kind")
}

/// Sets an element's text if it is another one; writing the same text again would disturb selections and readers.
pub(super) fn set_text(element: &Element, text: &str) {
    if element.text_content().as_deref() != Some(text) {
        element.set_text_content(Some(text));
    }
}

/// Sets an attribute if it has another value.
pub(super) fn set_attribute(element: &Element, name: &str, value: &str) {
    if element.get_attribute(name).as_deref() != Some(value) {
        // Only a malformed name can fail, and every name here is a literal.
        let _ = element.set_attribute(name, value);
    }
}

pub(super) fn set_hidden(element: &Element, hidden: bool) {
    if let Some(element) = element.dyn_ref::<HtmlElement>() {
        element.set_hidden(hidden);
    }
}

/// Text made safe to stand in markup.
pub(super) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}
