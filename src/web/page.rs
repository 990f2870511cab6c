//! The page: one sandbox, its pictures and controls. Events change the sandbox; one animation frame shows it.

use std::cell::RefCell;

use glam::DVec2;
use wasm_bindgen::prelude::*;
use web_sys::Element;

use super::address;
use super::dom::{document, find, set_attribute, set_hidden};
use super::events;
use super::frame::Frame;
use super::listener::{Delay, Listener};
use super::palette::Palette;
use super::parts::Parts;
use super::rescue;
use crate::decimal::within;
use crate::report::refusal;
use crate::sandbox::{AimChange, Change, Input, Panel, Pictures, Sandbox, Sizes};
use crate::scenario::{Field, Notice};

/// A longer pause between two frames than this, s, is a page that was hidden: the pass does not jump ahead.
const LONGEST_TICK: f64 = 0.1;
/// With reduced motion the played pass moves on once in this time, s, instead of gliding.
const CALM_TICK: f64 = 1.0;
/// After so many ms without a change the result is said to screen readers.
const SETTLED_MS: i32 = 400;
/// The address is written at most once in so many ms.
const SAVE_MS: i32 = 300;

thread_local! {
    /// The page, once it is open, for as long as its document lives: what the browser calls finds it here.
    static OPEN: RefCell<Option<Page>> = const { RefCell::new(None) };
}

/// The page's state.
pub(super) struct Page {
    pub(super) root: Element,
    pub(super) sandbox: Sandbox,
    pub(super) parts: Parts,
    /// Where the pointer is that turns the stages.
    pub(super) turned_from: Option<DVec2>,
    /// Where a finger came down on the aim plane, if it may yet be a tap.
    pub(super) tapped_at: Option<DVec2>,
    frame: Frame,
    settle: Delay,
    save: Delay,
    /// What calls it.
    listeners: Vec<Listener>,
    sizes_observer: Option<events::SizeObserver>,
    last_frame_ms: Option<f64>,
    calm_s: f64,
}

/// Opens the page with the scenario of its address.
pub(super) fn open() -> Result<(), JsValue> {
    let html = document().document_element().ok_or("The page is empty.")?;
    let root: Element = find(&html, "#app");
    set_hidden(&root, false);
    OPEN.with_borrow_mut(|open| {
        let page = open.get_or_insert_with(|| Page::new(root));
        page.listeners = events::listen(page)?;
        page.sizes_observer = Some(events::watch_sizes(page)?);
        page.opened();
        page.show();
        Ok(())
    })
}

/// Runs something on the page, if it is open.
pub(super) fn with(run: impl FnOnce(&mut Page)) {
    OPEN.with_borrow_mut(|open| {
        if let Some(page) = open {
            run(page);
        }
    });
}

impl Page {
    fn new(root: Element) -> Self {
        Self {
            parts: Parts::find(&root),
            root,
            sandbox: Sandbox::open(&address::read()),
            turned_from: None,
            tapped_at: None,
            frame: Frame::new(|now| with(|page| page.on_frame(now))),
            settle: Delay::new(SETTLED_MS, || with(Page::on_settled)),
            save: Delay::new(SAVE_MS, || with(Page::on_save)),
            listeners: Vec::new(),
            sizes_observer: None,
            last_frame_ms: None,
            calm_s: 0.0,
        }
    }

    /// Takes an input and asks for a frame. A refused value is shown at its field and changes nothing.
    pub(super) fn apply(&mut self, input: Input) {
        let field = input.field();
        let result = self.sandbox.apply(input);
        if let Some(field) = field {
            let message = result.as_ref().err().map(Notice::text);
            self.parts.controls.show_error(field, message.as_deref());
        }
        self.changed();
    }

    /// Takes a change of the aim, if there is one.
    pub(super) fn apply_aim(&mut self, change: Option<AimChange>) {
        if let Some(change) = change {
            self.apply(Input::Aim(change));
        }
    }

    /// Something has changed: show it with the next frame, and write the address soon.
    pub(super) fn changed(&mut self) {
        self.parts.aim.wait(true);
        self.frame.request();
        self.settle.restart();
        self.save.start();
    }

    /// Only the look has changed.
    pub(super) fn redraw(&mut self) {
        self.frame.request();
    }

    /// Another theme, contrast or palette is in force.
    pub(super) fn restyle(&mut self) {
        self.parts.palette = Palette::read(&self.root);
        self.parts.aim.repaint();
        // At once: no animation frame comes between this and a sheet of paper.
        self.show();
    }

    /// A whole scenario was opened: from the address, a preset or a reset.
    pub(super) fn opened(&mut self) {
        for &field in &Field::ALL {
            self.parts.controls.show_error(field, None);
        }
        let pace = self.parts.playback.pace();
        self.apply(Input::Clock(Change::Pace(pace)));
        self.parts.readout.show_notices(self.sandbox.notices());
        // Whatever is being typed belongs to the scenario that was shown before.
        self.parts.controls.show(&self.sandbox, None);
        let Parts { aim, palette, .. } = &mut self.parts;
        aim.repaint();
        aim.show(&self.root, &mut self.sandbox, palette, None);
    }

    /// Opens the scenario of the address, unless it is the one shown.
    pub(super) fn follow_address(&mut self) {
        let text = address::read();
        if text != self.sandbox.scenario().text() {
            self.apply(Input::Open(text));
            self.opened();
        }
    }

    /// Writes the address now, as a new entry of the history.
    pub(super) fn save_as_new(&mut self) {
        address::write(&self.sandbox.scenario().text(), true);
    }

    /// Shows the link to these settings.
    pub(super) fn share(&mut self) {
        self.on_save();
        self.parts.link.share();
        let said = "The link is in the field, and copied where the browser allows it.";
        self.parts.readout.say_only(said);
    }

    /// The sizes that the pictures have on the page.
    pub(super) fn sizes(&self) -> Sizes {
        let [stage, _, diagram, record] = &self.parts.canvases;
        Sizes {
            stage: stage.size(),
            diagram: diagram.size(),
            record: record.size(),
        }
    }

    fn on_frame(&mut self, now_ms: f64) {
        self.frame.done();
        if self.sandbox.is_playing() {
            let elapsed = self
                .last_frame_ms
                .map_or(0.0, |last| (now_ms - last) / 1000.0);
            self.tick(within(elapsed, 0.0, LONGEST_TICK));
            self.last_frame_ms = Some(now_ms);
            self.frame.request();
            self.settle.restart();
        } else {
            self.last_frame_ms = None;
        }
        self.show();
    }

    /// Moves the clock on: evenly, or once a second for those who have asked for less motion.
    fn tick(&mut self, seconds: f64) {
        self.calm_s += seconds;
        let calm = events::prefers_reduced_motion();
        if !calm || self.calm_s >= CALM_TICK {
            let passed = std::mem::take(&mut self.calm_s);
            // Ticking the clock cannot be refused.
            let _ = self.sandbox.apply(Input::Clock(Change::Tick(passed)));
        }
    }

    /// Shows the sandbox as it is: pictures, numbers, controls.
    fn show(&mut self) {
        rescue::remember(&self.sandbox.scenario().text());
        let typing = document().active_element();
        self.parts.controls.show(&self.sandbox, typing.as_ref());
        let Parts {
            looks,
            canvases,
            aim,
            palette,
            ..
        } = &mut self.parts;
        looks.show(&self.sandbox, canvases);
        aim.show(&self.root, &mut self.sandbox, palette, typing.as_ref());
        let chosen = self.parts.controls.chosen_preset();
        self.parts.readout.show_preset(&chosen);
        let sizes = self.sizes();
        match (self.sandbox.pictures(&sizes), self.sandbox.panel()) {
            (Ok(pictures), Ok(panel)) => self.show_pass(&pictures, &panel),
            (Err(error), _) | (_, Err(error)) => {
                self.parts.readout.show_refusal(&refusal(&error));
                self.mark("refused");
            }
        }
    }

    fn show_pass(&mut self, pictures: &Pictures, panel: &Panel) {
        let Parts {
            canvases,
            controls,
            playback,
            readout,
            palette,
            looks: _,
            aim: _,
            link: _,
        } = &mut self.parts;
        let all = [
            &pictures.planet_frame,
            &pictures.sun_frame,
            &pictures.diagram,
            &pictures.record,
        ];
        for (canvas, picture) in canvases.iter_mut().zip(all) {
            canvas.paint(picture, palette);
        }
        controls.show_sides(panel);
        playback.show(&self.sandbox, panel);
        readout.show(panel);
        self.mark("shown");
    }

    /// Marks whether a pass is shown or refused: what is refused cannot be played and its pictures are dimmed.
    fn mark(&self, state: &str) {
        set_attribute(&self.root, "data-state", state);
        self.parts.playback.allow(state == "shown");
    }

    fn on_settled(&mut self) {
        self.settle.done();
        self.parts.aim.wait(false);
        match self.sandbox.panel() {
            Ok(panel) => {
                self.parts.readout.say(&panel);
                // Whoever moves the aim wants to hear where it is.
                if let Some(aim) = self.parts.aim.words_if_held() {
                    let outcome = panel.sun_sentence.text();
                    self.parts.readout.say_only(&[&aim, " ", &outcome].concat());
                }
            }
            Err(error) => self.parts.readout.say_refusal(&refusal(&error)),
        }
    }

    fn on_save(&mut self) {
        self.save.done();
        address::write(&self.sandbox.scenario().text(), false);
        self.parts.link.renew();
    }
}
