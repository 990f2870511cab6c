//! The page in headless Chromium, used as a person uses it. `tests/all` installs what these tests need and runs them.

mod address;
mod axe;
mod controls;
mod dragging;
mod driver;
mod hand;
mod harness;
mod machine;
mod missing;
mod native;
mod opening;
mod page;
mod playback;
mod presets;
mod reading;
mod refusals;
mod same_bits;
#[path = "../support/mod.rs"]
mod support;
