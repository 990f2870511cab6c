//! The page in headless Chromium, used as a person uses it. `tests/all` installs what these tests need and runs them.

mod axe;
mod driver;
mod hand;
mod harness;
mod machine;
mod opening;
mod page;
#[path = "../support/mod.rs"]
mod support;
