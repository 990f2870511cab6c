//! A table of numbers. Its lines stand in `index.html`, so that an explanation that a person has unfolded stays unfolded
//! while a slider moves; only the cells' numbers change.

use wasm_bindgen::JsCast;
use web_sys::Element;

use super::dom::{set_attribute, set_hidden, set_text};
use crate::report::Value;
use crate::scenario::print_number;

/// A table on the page.
pub(super) struct Table {
    element: Element,
    cells: Vec<Element>,
}

impl Table {
    pub(super) fn new(element: Element) -> Self {
        Self {
            cells: all(&element, "[data-cell]"),
            element,
        }
    }

    /// Shows values, one to a cell.
    pub(super) fn show<'a>(&self, values: impl Iterator<Item = &'a Value>) {
        for (cell, value) in self.cells.iter().zip(values) {
            set_text(cell, &value.text);
            set_attribute(cell, "data-quantity", &value.path);
            match value.value {
                Some(number) => set_attribute(cell, "data-value", &print_number(number)),
                // Taking away what is not there cannot fail.
                None => drop(cell.remove_attribute("data-value")),
            }
        }
        set_hidden(&self.element, false);
    }

    /// Shows nothing.
    pub(super) fn clear(&self) {
        set_hidden(&self.element, true);
        for cell in &self.cells {
            let _ = cell.remove_attribute("data-value");
        }
    }
}

/// All elements below `root` that a selector finds.
pub(super) fn all(root: &Element, selector: &str) -> Vec<Element> {
    let Ok(found) = root.query_selector_all(selector) else {
        return Vec::new();
    };
    let nodes = (0..found.length()).filter_map(|i| found.get(i));
    nodes.map(JsCast::unchecked_into).collect()
}

/// The attributes of an element that shows a value of the pass that is shown, or of its `owner`, like `page.aim.`.
pub(super) fn attributes(value: &Value, owner: &str) -> String {
    let own = if owner.is_empty() {
        &value.path
    } else {
        // What is the owner's own, or the page's, does not say so twice.
        let path = value.path.strip_prefix(owner).unwrap_or(&value.path);
        path.strip_prefix("page.").unwrap_or(path)
    };
    let path = ["data-quantity=\"", owner, own, "\""].concat();
    match value.value {
        Some(number) => [&path, " data-value=\"", &print_number(number), "\""].concat(),
        None => path,
    }
}
