//! A table whose lines are made once and whose numbers are then renewed one by one, so that an explanation that a person
//! has unfolded stays unfolded while a slider moves.

use web_sys::Element;

use super::dom::{escaped, set_attribute, set_text};
use crate::report::{Fact, Row, Value};
use crate::scenario::print_number;

/// A table on the page.
pub(super) struct Table {
    element: Element,
    /// The markup without numbers; another one means other lines.
    lines: String,
    cells: Vec<Element>,
}

const CELL: &str = "</dt><dd><span class=\"number\" data-cell></span> ";
const CELLS: &str =
    "</th><td data-cell></td><td data-cell></td><td data-cell></td><td class=\"unit\">";

impl Table {
    pub(super) fn new(element: Element) -> Self {
        Self {
            element,
            lines: String::new(),
            cells: Vec::new(),
        }
    }

    /// Shows the before / after / change rows.
    pub(super) fn show_rows(&mut self, rows: &[Row]) {
        let mut lines = String::new();
        for row in rows {
            let label = term(&row.label, row.meaning);
            lines += &[
                "<tr><th scope=\"row\">",
                &label,
                CELLS,
                row.unit,
                "</td></tr>",
            ]
            .concat();
        }
        self.set_lines(lines);
        self.set_cells(rows.iter().flat_map(|row| &row.cells));
    }

    /// Shows a list of labelled values.
    pub(super) fn show_facts(&mut self, facts: &[Fact]) {
        let mut lines = String::new();
        for fact in facts {
            let label = term(fact.label, fact.meaning);
            lines += &["<div><dt>", &label, CELL, fact.unit, "</dd></div>"].concat();
        }
        self.set_lines(lines);
        self.set_cells(facts.iter().map(|fact| &fact.value));
    }

    /// Shows nothing.
    pub(super) fn clear(&mut self) {
        self.set_lines(String::new());
    }

    fn set_lines(&mut self, lines: String) {
        if self.lines == lines {
            return;
        }
        self.element.set_inner_html(&lines);
        self.lines = lines;
        self.cells.clear();
        if let Ok(cells) = self.element.query_selector_all("[data-cell]") {
            use wasm_bindgen::JsCast;
            self.cells
                .extend((0..cells.length()).filter_map(|i| cells.get(i)?.dyn_into().ok()));
        }
    }

    fn set_cells<'a>(&self, values: impl Iterator<Item = &'a Value>) {
        for (cell, value) in self.cells.iter().zip(values) {
            set_text(cell, &value.text);
            set_attribute(cell, "data-quantity", &value.path);
            match value.value {
                Some(number) => set_attribute(cell, "data-value", &print_number(number)),
                // Taking away what is not there cannot fail.
                None => drop(cell.remove_attribute("data-value")),
            }
        }
    }
}

/// A label that unfolds its meaning, if it has one.
fn term(label: &str, meaning: &str) -> String {
    let label = escaped(label);
    if meaning.is_empty() {
        return label;
    }
    [
        "<details class=\"term\"><summary>",
        &label,
        "</summary>",
        &escaped(meaning),
        "</details>",
    ]
    .concat()
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
