//! Event listeners and timers as values: dropping one takes it away.

use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;
use web_sys::{AddEventListenerOptions, Event, EventTarget};

use super::dom::window;

/// What the browser calls. One kind for all: it gets an event, a time, something else or nothing; each kind of its own
/// would add to the download.
pub(super) type Callback = Closure<dyn FnMut(JsValue)>;

/// A listener on a target, for as long as it lives.
#[must_use = "a listener listens only as long as it is kept"]
pub(super) struct Listener {
    target: EventTarget,
    kind: &'static str,
    closure: Callback,
}

impl Listener {
    /// Listens to events of a kind. Not passive: the callback may keep the browser from its own reaction.
    pub(super) fn new(
        target: &EventTarget,
        kind: &'static str,
        mut callback: impl FnMut(Event) + 'static,
    ) -> Result<Self, JsValue> {
        let closure = Callback::new(move |event: JsValue| callback(event.unchecked_into()));
        let options = AddEventListenerOptions::new();
        options.set_passive(false);
        target.add_event_listener_with_callback_and_add_event_listener_options(
            kind,
            closure.as_ref().unchecked_ref(),
            &options,
        )?;
        Ok(Self {
            target: target.clone(),
            kind,
            closure,
        })
    }
}

impl Drop for Listener {
    fn drop(&mut self) {
        let function = self.closure.as_ref().unchecked_ref();
        // Taking away a listener that is there cannot fail.
        let _ = self
            .target
            .remove_event_listener_with_callback(self.kind, function);
    }
}

/// A callback that runs once, some time after it was last asked for.
pub(super) struct Delay {
    closure: Callback,
    milliseconds: i32,
    waiting: Option<i32>,
}

impl Delay {
    pub(super) fn new(milliseconds: i32, mut callback: impl FnMut() + 'static) -> Self {
        Self {
            closure: Callback::new(move |_| callback()),
            milliseconds,
            waiting: None,
        }
    }

    /// Asks for the callback; a request that is still waiting starts anew.
    pub(super) fn restart(&mut self) {
        self.stop();
        let function = self.closure.as_ref().unchecked_ref();
        self.waiting = window()
            .set_timeout_with_callback_and_timeout_and_arguments_0(function, self.milliseconds)
            .ok();
    }

    /// Asks for the callback unless it is waiting already.
    pub(super) fn start(&mut self) {
        if self.waiting.is_none() {
            self.restart();
        }
    }

    /// To be called by the callback itself, so that the next request counts.
    pub(super) fn done(&mut self) {
        self.waiting = None;
    }

    fn stop(&mut self) {
        if let Some(id) = self.waiting.take() {
            window().clear_timeout_with_handle(id);
        }
    }
}

impl Drop for Delay {
    fn drop(&mut self) {
        self.stop();
    }
}
