//! The page's address: the scenario text lives after the `#`.

use wasm_bindgen::JsValue;
use web_sys::{Element, HtmlInputElement};

use super::dom::{find, set_hidden, window};
use super::listener::Callback;

/// The scenario text of the page's address.
pub(super) fn read() -> String {
    let hash = window().location().hash().unwrap_or_default();
    hash.get(1..).unwrap_or_default().to_owned()
}

/// Writes the text into the address. `new_entry` makes Back lead to what was there before.
pub(super) fn write(text: &str, new_entry: bool) {
    if read() == text {
        return;
    }
    let address = ["#", text].concat();
    let Ok(history) = window().history() else {
        return;
    };
    // A browser may refuse when asked too often, or in a sandboxed frame: then the link is a little behind, no more.
    let _ = if new_entry {
        history.push_state_with_url(&JsValue::NULL, "", Some(&address))
    } else {
        history.replace_state_with_url(&JsValue::NULL, "", Some(&address))
    };
}

/// The field that shows the page's whole address, once a person has asked for it.
pub(super) struct Link {
    holder: Element,
    field: HtmlInputElement,
    /// What a refused clipboard calls: nothing is to be done then, the field is for copying by hand.
    refused: Callback,
}

impl Link {
    pub(super) fn find(root: &Element) -> Self {
        Self {
            holder: find(root, ".link"),
            field: find(root, "[data-part=link]"),
            refused: Callback::new(|_| {}),
        }
    }

    /// Shows the address and puts it on the clipboard where the browser allows that.
    pub(super) fn share(&self) {
        set_hidden(&self.holder, false);
        self.renew();
        self.field.select();
        let navigator = window().navigator();
        // Not there on pages without a secure origin.
        if js_sys::Reflect::has(&navigator, &"clipboard".into()) == Ok(true) {
            let _ = navigator
                .clipboard()
                .write_text(&self.field.value())
                .catch(&self.refused);
        }
    }

    /// Shows the address as it is now.
    pub(super) fn renew(&self) {
        self.field
            .set_value(&window().location().href().unwrap_or_default());
    }
}
