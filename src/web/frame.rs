//! Animation frames as a value: at most one is waiting, and none once it is dropped.

use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;

use super::dom::window;
use super::listener::Callback;

/// A callback for the next animation frame.
pub(super) struct Frame {
    closure: Callback,
    waiting: Option<i32>,
}

impl Frame {
    /// The callback gets the frame's time, ms.
    pub(super) fn new(mut callback: impl FnMut(f64) + 'static) -> Self {
        Self {
            closure: Callback::new(move |time: JsValue| {
                callback(time.as_f64().unwrap_or_default());
            }),
            waiting: None,
        }
    }

    /// Asks for a frame unless one is waiting.
    pub(super) fn request(&mut self) {
        if self.waiting.is_none() {
            let function = self.closure.as_ref().unchecked_ref();
            self.waiting = window().request_animation_frame(function).ok();
        }
    }

    /// To be called by the callback itself, so that the next request counts.
    pub(super) fn done(&mut self) {
        self.waiting = None;
    }
}

impl Drop for Frame {
    fn drop(&mut self) {
        if let Some(id) = self.waiting {
            // A frame that is waiting can always be cancelled.
            let _ = window().cancel_animation_frame(id);
        }
    }
}
