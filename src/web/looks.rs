//! The list and the two sliders that say from where the stages are seen.

use web_sys::{Element, HtmlInputElement, HtmlSelectElement};

use super::canvas::Canvas;
use super::dom::{find, set_attribute};
use crate::decimal::with_decimals;
use crate::figure::Look;
use crate::sandbox::Sandbox;

/// Two values of the list; the third, north, is also what stands for anything else.
const BEHIND: &str = "behind";
const SIDE: &str = "side";

pub(super) struct Looks {
    list: HtmlSelectElement,
    around: HtmlInputElement,
    height: HtmlInputElement,
}

impl Looks {
    pub(super) fn find(root: &Element) -> Self {
        Self {
            list: find(root, "[data-action=look]"),
            around: find(root, "[data-action=around]"),
            height: find(root, "[data-action=height]"),
        }
    }

    /// The look that a value of the list means.
    pub(super) fn named(value: &str) -> Look {
        match value {
            BEHIND => Look::BEHIND,
            SIDE => Look::SIDE,
            _ => Look::NORTH,
        }
    }

    /// The look that the two sliders say.
    pub(super) fn turned(&self) -> Look {
        Look::new(self.around.value_as_number(), self.height.value_as_number())
    }

    /// Shows the sandbox's look, and whether the stages, the first two canvases, react to keys.
    pub(super) fn show(&self, sandbox: &Sandbox, canvases: &[Canvas]) {
        let look = sandbox.look();
        self.list.set_value(match look {
            Look::NORTH => "north",
            Look::BEHIND => BEHIND,
            Look::SIDE => SIDE,
            _ => "turned",
        });
        for &(slider, degrees) in &[
            (&self.around, look.around_deg()),
            (&self.height, look.height_deg()),
        ] {
            let text = with_decimals(degrees, 0);
            slider.set_value(&text);
            set_attribute(slider, "aria-valuetext", &(text + "°"));
        }
        // A stage that cannot be turned is nothing to stop at.
        let (stop, how) = if sandbox.may_turn() {
            ("0", "turning")
        } else {
            ("-1", "")
        };
        for stage in &canvases[..2] {
            let stage = &stage.element;
            set_attribute(stage, "tabindex", stop);
            set_attribute(stage, "aria-describedby", how);
        }
    }
}
