//! What happens when the core breaks: a notice with the scenario text to copy, instead of a dead page.

use std::cell::RefCell;

use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;

use super::dom::{document, set_hidden};

thread_local! {
    /// The scenario text as it last was; kept here because after a panic nothing else can be asked.
    static LAST_TEXT: RefCell<String> = const { RefCell::new(String::new()) };
}

/// Keeps the scenario text for the notice.
pub(super) fn remember(text: &str) {
    LAST_TEXT.with_borrow_mut(|last| text.clone_into(last));
}

/// Sets what is done on a panic: the message goes to the console, the notice to the page.
pub(super) fn install() {
    std::panic::set_hook(Box::new(|info| {
        console_error_panic_hook::hook(info);
        show_notice();
    }));
}

fn show_notice() {
    let page = document();
    if let Some(notice) = page.get_element_by_id("broken") {
        set_hidden(&notice, false);
    }
    let field = page
        .get_element_by_id("broken-text")
        .map(JsCast::unchecked_into::<HtmlInputElement>);
    if let Some(field) = field {
        // The panic may have happened while the text was being kept.
        let text = LAST_TEXT.with(|last| {
            last.try_borrow()
                .map(|text| text.clone())
                .unwrap_or_default()
        });
        field.set_value(&text);
    }
}
