//! Short names for what the browser always has, and look-ups that say what is missing.

use wasm_bindgen::prelude::*;
use web_sys::{Document, Element, HtmlElement, Window};

#[wasm_bindgen]
extern "C" {
    #[wasm_bindgen(thread_local_v2, js_name = window)]
    static WINDOW: Window;
    #[wasm_bindgen(thread_local_v2, js_name = document)]
    static DOCUMENT: Document;
}

pub(super) fn window() -> Window {
    WINDOW.with(Window::clone)
}

pub(super) fn document() -> Document {
    DOCUMENT.with(Document::clone)
}

/// The first element below `root` that a selector finds, as the type asked for: the selector has to find nothing else.
/// (Asking the browser for each kind of element would add to the download.)
///
/// # Panics
/// When there is none: the page and the core do not belong together.
pub(super) fn find<T: JsCast>(root: &Element, selector: &str) -> T {
    first(root, selector).unchecked_into()
}

fn first(root: &Element, selector: &str) -> Element {
    let found = root.query_selector(selector).ok().flatten();
    found.unwrap_or_else(|| panic!("the page has no {selector}"))
}

/// What the browser gives when it cannot refuse. (`expect` would do, but brings along how to print whatever may be thrown.)
///
/// # Panics
/// When it refuses.
pub(super) fn certain<T>(given: Result<T, JsValue>, why: &str) -> T {
    given.unwrap_or_else(|_| panic!("{why}"))
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
    element.unchecked_ref::<HtmlElement>().set_hidden(hidden);
}

/// Text made safe to stand in markup.
pub(super) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}
