//! Two Frames.
#[cfg(all(feature = "command", not(target_arch = "wasm32")))]
pub mod cli;
pub mod decimal;
pub mod figure;
pub mod physics;
pub mod report;
pub mod sandbox;
pub mod scenario;
#[cfg(target_arch = "wasm32")]
pub mod web;
