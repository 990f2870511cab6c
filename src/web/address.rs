//! The page's address: the scenario text lives after the `#`.

use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::Closure;
use web_sys::{Element, HtmlInputElement};

use super::dom::{find, set_hidden, window};

/// The scenario text of the page's address.
pub(super) fn read() -> String {
    window()
        .location()
        .hash()
        .map(|hash| hash.trim_start_matches('#').to_owned())
        .unwrap_or_default()
}

/// Writes the text into the address. `new_entry` makes Back lead to what was there before.
pub(super) fn write(text: &str, new_entry: bool) {
    if read() == text {
        return;
    }
    let address = format!("#{text}");
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

/// What a refused clipboard calls.
pub(super) type Refused = Closure<dyn FnMut(JsValue)>;

/// Shows the page's whole address in a field and puts it on the clipboard where the browser allows that.
///
/// `refused` is called when the browser does not: there is nothing to do then, the field is for copying by hand.
pub(super) fn share(root: &Element, refused: &Refused) -> Result<(), JsValue> {
    let address = window().location().href()?;
    let field: HtmlInputElement = find(root, "[data-part=link]")?;
    set_hidden(&find(root, ".link")?, false);
    field.set_value(&address);
    field.select();
    let navigator = window().navigator();
    // Not there on pages without a secure origin.
    if js_sys::Reflect::has(&navigator, &"clipboard".into())? {
        let _ = navigator.clipboard().write_text(&address).catch(refused);
    }
    Ok(())
}
