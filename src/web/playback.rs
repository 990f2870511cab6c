//! The row of playing controls.

use web_sys::{Element, HtmlInputElement, HtmlSelectElement};

use super::dom::{find, set_attribute, set_text};
use crate::decimal::{parse, with_decimals};
use crate::sandbox::{Pace, PaceLaw, Panel, Sandbox};
use crate::scenario::print_number;

/// Positions of the time slider.
const POSITIONS: f64 = 1000.0;

/// Play, step, scrub and pace.
pub(super) struct Playback {
    section: Element,
    play: Element,
    scrub: HtmlInputElement,
    moment: Element,
    rate: Element,
    law: HtmlSelectElement,
    whole: HtmlSelectElement,
}

impl Playback {
    pub(super) fn find(root: &Element) -> Self {
        Self {
            section: find(root, ".play"),
            play: find(root, "[data-action=play]"),
            scrub: find(root, "[data-action=scrub]"),
            moment: find(root, "[data-text=moment]"),
            rate: find(root, "[data-text=rate]"),
            law: find(root, "[data-action=law]"),
            whole: find(root, "[data-action=whole]"),
        }
    }

    /// Whether there is something to play.
    pub(super) fn allow(&self, allowed: bool) {
        if allowed {
            // Taking away what is not there cannot fail.
            let _ = self.section.remove_attribute("inert");
        } else {
            set_attribute(&self.section, "inert", "");
            for element in &[&self.moment, &self.rate] {
                set_text(element, "");
                let _ = element.remove_attribute("data-value");
            }
        }
    }

    pub(super) fn show(&self, sandbox: &Sandbox, panel: &Panel) {
        set_text(
            &self.play,
            if sandbox.is_playing() {
                "❚❚ Pause"
            } else {
                "▶ Play"
            },
        );
        let position = with_decimals(panel.position * POSITIONS, 0);
        if self.scrub.value() != position {
            self.scrub.set_value(&position);
        }
        set_attribute(&self.scrub, "aria-valuetext", &panel.moment);
        set_text(&self.moment, &panel.moment);
        set_attribute(&self.moment, "data-value", &print_number(panel.time_d));
        set_text(&self.rate, &panel.rate);
        set_attribute(&self.rate, "data-value", &print_number(panel.rate_s));
    }

    /// Where the time slider stands, 0..1.
    pub(super) fn position(&self) -> f64 {
        self.scrub.value_as_number() / POSITIONS
    }

    /// The pace that the two lists say.
    pub(super) fn pace(&self) -> Pace {
        let law = if self.law.value() == "even" {
            PaceLaw::Even
        } else {
            PaceLaw::SlowerNear
        };
        Pace {
            law,
            whole_s: parse(&self.whole.value()).unwrap_or(16.0),
        }
    }
}
