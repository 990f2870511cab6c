//! The colour of each role as the page's style sheet has it now: theme, forced colours and author's overrides included.

use web_sys::Element;

use super::dom::window;
use crate::figure::{Role, Theme, color, css_name};

/// A colour for each role, as CSS text; in the order of [`Role::ALL`], which is that of the roles.
pub(super) struct Palette([String; Role::ALL.len()]);

impl Palette {
    /// Reads the custom properties that an element sees; one that is not set has the light theme's colour.
    pub(super) fn read(element: &Element) -> Self {
        let style = window().get_computed_style(element).ok().flatten();
        let value = |role| {
            let own = style
                .as_ref()
                .and_then(|style| style.get_property_value(css_name(role)).ok())
                .unwrap_or_default();
            if own.is_empty() {
                color(Theme::Light, role).into()
            } else {
                own
            }
        };
        Self(Role::ALL.map(value))
    }

    pub(super) fn get(&self, role: Role) -> &str {
        &self.0[role as usize]
    }
}
