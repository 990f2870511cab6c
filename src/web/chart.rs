//! The chart of an outcome on the page, and the sentence below it.

use web_sys::{Element, HtmlSelectElement};

use super::canvas::Canvas;
use super::dom::{find, set_attribute};
use super::palette::Palette;
use super::readout::sentence;
use crate::figure::chart_picture;
use crate::report::describe_chart;
use crate::sandbox::Sandbox;
use crate::scenario::Field;

/// The elements of the chart.
pub(super) struct Chart {
    pub(super) canvas: Canvas,
    against: HtmlSelectElement,
    sentence: Element,
}

impl Chart {
    pub(super) fn find(root: &Element) -> Self {
        Self {
            canvas: Canvas::find(root, "outcome"),
            against: find(root, "[data-action=against]"),
            sentence: find(root, "[data-text=outcome]"),
        }
    }

    /// The field that a value of the list means.
    pub(super) fn field(value: &str) -> Field {
        Field::from_key(value).unwrap_or(Field::Periapsis)
    }

    /// Shows in words that there is no outcome.
    pub(super) fn refuse(&self, words: &str) {
        self.sentence.set_inner_html("");
        set_attribute(&self.canvas.element, "aria-label", words);
    }

    pub(super) fn show(&mut self, sandbox: &mut Sandbox, palette: &Palette) {
        self.against
            .set_value(sandbox.aim_settings().against.spec().key);
        let Ok(reading) = sandbox.chart() else { return };
        let Ok(solved) = sandbox.solved() else { return };
        let pass = solved.pass();
        self.canvas
            .paint(&chart_picture(&reading, self.canvas.size()), palette);
        self.sentence
            .set_inner_html(&sentence(&reading.sentence(&pass)));
        let words = describe_chart(&pass, &reading);
        set_attribute(&self.canvas.element, "aria-label", &words);
    }
}
