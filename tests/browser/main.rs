//! The page in headless Chromium, used as a person uses it. `tests/all` installs what these tests need and runs them.

mod accessible;
mod accessible_aim;
mod address;
mod aim_fields;
mod aim_speed;
mod aiming;
mod axe;
mod controls;
mod dragging;
mod driver;
mod hand;
mod harness;
mod keyboard;
mod layout;
mod looks;
mod machine;
mod memory;
mod missing;
mod native;
mod opening;
mod outcomes;
mod page;
mod paper;
mod plane;
mod playback;
mod presets;
mod reading;
mod refusals;
mod same_answers;
mod same_bits;
mod screens;
mod speed;
#[path = "../support/mod.rs"]
mod support;
mod wish_refusals;
mod wishing;
