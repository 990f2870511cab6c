//! The state machine between a person and a pass: inputs change the state, and pictures, numbers and sentences are
//! read from it. It knows neither page nor command, so that both, and every test, go through the same door.

mod clock;
mod drag;
mod input;
mod panel;
mod solved;

pub use clock::{Change, Clock, Pace, PaceLaw};
pub use input::Input;
pub use panel::{Panel, Pictures, SideChoice, Sizes};
pub use solved::Solved;

use glam::DVec2;

use crate::decimal::within;
use crate::figure::{Scene, Views};
use crate::physics::FlybyError;
use crate::scenario::{Notice, PRESETS, Preset, Scenario};
use drag::Drag;

/// How far a person can zoom in and out of the fitted view.
const ZOOM: (f64, f64) = (1.0 / 16.0, 64.0);

/// Everything that a person has set, and what follows from it.
#[derive(Clone, Debug)]
pub struct Sandbox {
    scenario: Scenario,
    /// What the last text had that could not be used.
    notices: Vec<Notice>,
    /// Solved when first asked for after a change.
    solved: Option<Result<Solved, FlybyError>>,
    clock: Clock,
    zoom: f64,
    drag: Option<Drag>,
}

impl Default for Sandbox {
    fn default() -> Self {
        Self::open("")
    }
}

impl Sandbox {
    /// Opens a scenario text, taking the default of whatever it has that cannot be used (see [`Self::notices`]). The
    /// clock stands at the pass's telling moment.
    pub fn open(text: &str) -> Self {
        let reading = Scenario::read(text);
        Self {
            scenario: reading.scenario,
            notices: reading.notices,
            solved: None,
            clock: Clock::default(),
            zoom: 1.0,
            drag: None,
        }
    }

    /// Takes one input. It changes the state and nothing else; solving waits until something is asked for.
    ///
    /// # Errors
    /// A [`Notice`] when the input has a value that is not allowed; the state stays as it was.
    pub fn apply(&mut self, input: Input) -> Result<(), Notice> {
        match input {
            Input::Set(field, value) => self.change(|scenario| scenario.set(field, value)),
            Input::Type(field, text) => self.change(|scenario| scenario.set_text(field, &text)),
            Input::Slide(field, position) => {
                self.change(|scenario| scenario.set(field, field.spec().value_at(position)))
            }
            Input::Press(field, presses) => self.change(|scenario| match scenario.get(field) {
                Some(value) => scenario.set(field, field.spec().stepped(value, presses)),
                None => Ok(()),
            }),
            Input::Planet(key) => self.change(|scenario| scenario.choose_planet(&key)),
            Input::Preset(index) => {
                self.open_preset(index);
                Ok(())
            }
            Input::Open(text) => {
                *self = Self {
                    clock: self.clock.rewound(),
                    ..Self::open(&text)
                };
                Ok(())
            }
            Input::Reset => {
                *self = Self {
                    clock: self.clock.rewound(),
                    ..Self::default()
                };
                Ok(())
            }
            Input::Zoom(factor) => {
                self.zoom = within(self.zoom * factor, ZOOM.0, ZOOM.1);
                Ok(())
            }
            Input::Fit => {
                self.zoom = 1.0;
                Ok(())
            }
            Input::Grab(grip, place, sizes) => {
                self.grab(grip, place, &sizes);
                Ok(())
            }
            Input::Drag(place) => self.drag_to(place),
            Input::Release => {
                self.drag = None;
                Ok(())
            }
            Input::Clock(change) => {
                self.change_clock(change);
                Ok(())
            }
        }
    }

    /// The scenario as it is now.
    pub fn scenario(&self) -> &Scenario {
        &self.scenario
    }

    /// What the last text had that could not be used.
    pub fn notices(&self) -> &[Notice] {
        &self.notices
    }

    /// The preset that the scenario is, if it is one.
    pub fn preset(&self) -> Option<&'static Preset> {
        Preset::of(&self.scenario)
    }

    /// Whether the clock runs.
    pub fn is_playing(&self) -> bool {
        self.clock.is_playing()
    }

    /// Whether something in the picture is held.
    pub fn is_dragging(&self) -> bool {
        self.drag.is_some()
    }

    /// How fast the clock runs.
    pub fn pace(&self) -> Pace {
        self.clock.pace()
    }

    /// The pass, solved.
    ///
    /// # Errors
    /// [`FlybyError`] when the settings, each allowed by itself, have no flyby together.
    pub fn solved(&mut self) -> Result<&Solved, FlybyError> {
        let scenario = self.scenario;
        self.solved
            .get_or_insert_with(|| Solved::new(&scenario))
            .as_ref()
            .map_err(|error| *error)
    }

    /// The moment shown, s after periapsis.
    ///
    /// # Errors
    /// As [`Self::solved`].
    pub fn time_s(&mut self) -> Result<f64, FlybyError> {
        let clock = self.clock;
        self.solved().map(|solved| clock.time_s(&solved.track))
    }

    /// The four pictures at the moment shown.
    ///
    /// # Errors
    /// As [`Self::solved`].
    pub fn pictures(&mut self, sizes: &Sizes) -> Result<Pictures, FlybyError> {
        let (time_s, views) = (self.time_s()?, self.views(sizes)?);
        self.solved()
            .map(|solved| Pictures::compose(&solved.scene(time_s), &views, sizes))
    }

    /// The numbers and sentences at the moment shown.
    ///
    /// # Errors
    /// As [`Self::solved`].
    pub fn panel(&mut self) -> Result<Panel, FlybyError> {
        let time_s = self.time_s()?;
        let rate = self.clock_rate()?;
        self.solved().map(|solved| Panel::new(solved, time_s, rate))
    }

    /// The views of both stages. While something is dragged they stay as they were when it was taken hold of.
    ///
    /// # Errors
    /// As [`Self::solved`].
    pub fn views(&mut self, sizes: &Sizes) -> Result<Views, FlybyError> {
        if let Some(drag) = &self.drag {
            return Ok(drag.views());
        }
        let (zoom, stage) = (self.zoom, sizes.stage);
        self.solved()
            .map(|solved| Views::fit(&solved.scene(0.0), stage, zoom))
    }

    /// How many seconds of the pass one second of playing shows at this moment.
    fn clock_rate(&mut self) -> Result<f64, FlybyError> {
        let clock = self.clock;
        self.solved().map(|solved| clock.rate(solved))
    }

    fn change(
        &mut self,
        set: impl FnOnce(&mut Scenario) -> Result<(), Notice>,
    ) -> Result<(), Notice> {
        let before = self.scenario;
        set(&mut self.scenario)?;
        if self.scenario != before {
            self.solved = None;
        }
        Ok(())
    }

    fn open_preset(&mut self, index: usize) {
        if let Some(preset) = PRESETS.get(index) {
            *self = Self {
                clock: self.clock.rewound(),
                ..Self::open(preset.text)
            };
        }
    }

    fn change_clock(&mut self, change: clock::Change) {
        let mut clock = self.clock;
        if let Ok(solved) = self.solved() {
            clock.change(change, solved);
        }
        self.clock = clock;
    }

    fn grab(&mut self, grip: crate::figure::Grip, place: DVec2, sizes: &Sizes) {
        let Ok(views) = self.views(sizes) else { return };
        self.drag = Some(Drag::new(grip, place, views, &self.scenario));
    }

    fn drag_to(&mut self, place: DVec2) -> Result<(), Notice> {
        let Some(drag) = self.drag else { return Ok(()) };
        let flyby = self.solved().map(|solved| solved.flyby).ok();
        match flyby.and_then(|flyby| drag.wish(place, &flyby)) {
            Some((field, value)) => self.change(|scenario| scenario.set(field, value)),
            None => Ok(()),
        }
    }
}

impl Solved {
    /// The pass at one moment, ready to be drawn.
    pub fn scene(&self, time_s: f64) -> Scene<'_> {
        Scene {
            flyby: &self.flyby,
            track: &self.track,
            time_s,
        }
    }
}
