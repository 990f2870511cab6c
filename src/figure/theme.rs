//! The colour of each role. The hues are the published Okabe-Ito set (Okabe & Ito 2008, "Color Universal Design"):
//! blue #0072B2, vermillion #D55E00, green #009E73, each darkened or lightened until strokes have a contrast of 3:1 and
//! text 4.5:1 with the ground (WCAG 2.2, 1.4.3 and 1.4.11). Tests compute the contrast and hold the page's style sheet
//! to this table.

use super::picture::Role;

/// Which ground the picture stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    /// Dark marks on a light ground.
    Light,
    /// Light marks on a dark ground.
    Dark,
}

/// The CSS custom property that may replace a role's colour.
pub fn css_name(role: Role) -> &'static str {
    match role {
        Role::Relative => "--relative",
        Role::PlanetMotion => "--planet-motion",
        Role::RoundSun => "--round-sun",
        Role::Planet => "--planet",
        Role::Ink => "--ink",
        Role::Quiet => "--quiet",
        Role::Faint => "--faint",
        Role::Ground => "--ground",
    }
}

/// A role's colour, as six hexadecimal digits.
pub fn color(theme: Theme, role: Role) -> &'static str {
    let (light, dark) = match role {
        Role::Relative => ("#00629b", "#56b0e8"),
        Role::PlanetMotion => ("#b34700", "#f08642"),
        Role::RoundSun => ("#007153", "#2fc79c"),
        Role::Planet => ("#8a7a66", "#b7a78f"),
        Role::Ink => ("#1b1f1d", "#eef1ee"),
        Role::Quiet => ("#565e5a", "#a9b2ad"),
        Role::Faint => ("#d5dad6", "#39413d"),
        Role::Ground => ("#fcfdfa", "#14181a"),
    };
    match theme {
        Theme::Light => light,
        Theme::Dark => dark,
    }
}
