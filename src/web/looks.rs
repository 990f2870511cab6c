//! The list and the two sliders that say from where the stages are seen.

use web_sys::{Element, HtmlInputElement, HtmlSelectElement};

use super::dom::{find, set_attribute};
use crate::decimal::with_decimals;
use crate::figure::Look;
use crate::sandbox::Sandbox;

/// The looks of the list, by their values.
const NAMED: [(&str, Look); 3] = [
    ("north", Look::NORTH),
    ("behind", Look::BEHIND),
    ("side", Look::SIDE),
];

pub(super) struct Looks {
    list: HtmlSelectElement,
    around: HtmlInputElement,
    height: HtmlInputElement,
    stages: [Element; 2],
}

impl Looks {
    pub(super) fn find(root: &Element) -> Self {
        Self {
            list: find(root, "[data-action=look]"),
            around: find(root, "[data-action=around]"),
            height: find(root, "[data-action=height]"),
            stages: ["planet", "sun"]
                .map(|name| find(root, &format!("[data-picture={name}] canvas"))),
        }
    }

    /// The look that a value of the list means.
    pub(super) fn named(value: &str) -> Look {
        let found = NAMED.into_iter().find(|(name, _)| *name == value);
        found.map_or(Look::NORTH, |(_, look)| look)
    }

    /// The look that the two sliders say.
    pub(super) fn turned(&self) -> Look {
        Look::new(self.around.value_as_number(), self.height.value_as_number())
    }

    pub(super) fn show(&self, sandbox: &Sandbox) {
        let look = sandbox.look();
        let found = NAMED.into_iter().find(|(_, named)| *named == look);
        self.list
            .set_value(found.map_or("turned", |(name, _)| name));
        for (slider, degrees) in [
            (&self.around, look.around_deg()),
            (&self.height, look.height_deg()),
        ] {
            let text = with_decimals(degrees, 0);
            if slider.value() != text {
                slider.set_value(&text);
            }
            set_attribute(slider, "aria-valuetext", &(text + "°"));
        }
        // A stage that cannot be turned is nothing to stop at.
        let (stop, how) = if sandbox.may_turn() {
            ("0", "turning")
        } else {
            ("-1", "")
        };
        for stage in &self.stages {
            set_attribute(stage, "tabindex", stop);
            set_attribute(stage, "aria-describedby", how);
        }
    }
}
