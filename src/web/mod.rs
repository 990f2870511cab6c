//! The browser's side: elements, listeners and the canvas painter. It turns events into [`Input`]s and what the sandbox
//! answers into pixels and text; it decides nothing about the pass.
//!
//! [`Input`]: crate::sandbox::Input

mod address;
mod aim;
mod aim_hand;
mod canvas;
mod chart;
mod controls;
mod dom;
mod easel;
mod events;
mod frame;
mod hand;
mod listener;
mod looks;
mod page;
mod palette;
mod parts;
mod playback;
mod readout;
mod rescue;
mod table;

use wasm_bindgen::prelude::*;

/// Starts the page: called by the module loader once the core is there.
///
/// # Errors
/// When the browser refuses a listener; the loader then shows the still figure. An element that the core needs and the page
/// lacks is a panic, told in the console and on the page.
#[wasm_bindgen(start)]
pub fn start() -> Result<(), JsValue> {
    rescue::install();
    page::open()
}
