//! The state machine between a person and a pass: inputs change the state, and pictures, numbers and sentences are
//! read from it. It knows neither page nor command, so that both, and every test, go through the same door.

mod aim;
mod aiming;
mod clock;
mod drag;
mod input;
mod panel;
mod solved;

pub use aim::{AimChange, AimSettings};
pub use clock::{Change, Clock, Pace, PaceLaw};
pub use input::Input;
pub use panel::{Panel, Pictures, SideChoice, Sizes};
pub use solved::Solved;

use glam::DVec2;

use crate::decimal::within;
use crate::figure::{Look, Views};
use crate::physics::FlybyError;
use crate::report::{Aiming, NoAim, Solution};
use crate::scenario::{Field, Notice, Preset, Scenario};
use aim::AimView;
use drag::Drag;

/// How far a person can zoom in and out of the fitted view.
const ZOOM: (f64, f64) = (1.0 / 16.0, 64.0);

/// How far a drag by one picture unit turns the stages, degrees.
const DEGREES_PER_UNIT: f64 = 0.5;

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
    look: Look,
    drag: Option<Drag>,
    aim: AimSettings,
    aim_view: AimView,
    /// Searched for when first asked for after a change.
    aiming: Option<Result<Aiming, NoAim>>,
    /// Counts the changes of the scenario and of what is aimed for.
    revision: u32,
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
        let aim = AimSettings::default().of(&reading.scenario);
        // From north an example out of the plane is hard to read.
        let is_example = Preset::index_of(&reading.scenario).is_some();
        Self {
            scenario: reading.scenario,
            notices: reading.notices,
            solved: None,
            clock: Clock::default(),
            zoom: 1.0,
            look: if is_example && !aim.in_plane {
                Look::BEHIND
            } else {
                Look::NORTH
            },
            drag: None,
            aim,
            aim_view: AimView::default(),
            aiming: None,
            revision: 0,
        }
    }

    /// Takes one input. It changes the state and nothing else; solving waits until something is asked for.
    ///
    /// # Errors
    /// A [`Notice`] when the input has a value that is not allowed; the state stays as it was.
    pub fn apply(&mut self, input: Input) -> Result<(), Notice> {
        match input {
            Input::Preset(index) => {
                if let Some((_, text)) = Preset::at(index) {
                    self.reopen(text);
                }
            }
            Input::Open(text) => self.reopen(&text),
            Input::Reset => self.reopen(""),
            Input::Zoom(factor) => self.zoom = within(self.zoom * factor, ZOOM.0, ZOOM.1),
            Input::Fit => self.zoom = 1.0,
            Input::Look(look) => self.look_from(look),
            Input::Turn(by) if by.is_finite() => {
                let eye = DVec2::new(-by.x, by.y) * DEGREES_PER_UNIT;
                self.look_from(self.look.moved(eye));
            }
            Input::Grab(grip, place, sizes) => self.grab(grip, place, &sizes),
            Input::Release => {
                self.drag = None;
                self.release_aim();
            }
            Input::Clock(change) => self.change_clock(change),
            Input::Aim(change) => self.change_aim(change)?,
            setting => {
                let scenario = self.with(setting)?;
                self.take(scenario);
            }
        }
        Ok(())
    }

    /// The scenario with one setting changed.
    fn with(&mut self, setting: Input) -> Result<Scenario, Notice> {
        let mut scenario = self.scenario;
        match setting {
            Input::Set(field, value) => scenario.set(field, value)?,
            Input::Type(field, text) => scenario.set_text(field, &text)?,
            Input::Slide(field, position) => {
                scenario.set(field, field.spec().value_at(position))?;
            }
            Input::Press(field, presses) => {
                if let Some(value) = scenario.get(field) {
                    scenario.set(field, field.spec().stepped(value, presses))?;
                }
            }
            Input::Planet(key) => scenario.choose_planet(&key)?,
            Input::Drag(place) => {
                if let Some((field, value)) = self.meant(place) {
                    scenario.set(field, value)?;
                }
            }
            _ => {}
        }
        Ok(scenario)
    }

    /// Makes a scenario the present one.
    fn take(&mut self, scenario: Scenario) {
        if self.scenario != scenario {
            self.scenario = scenario;
            self.solved = None;
            self.aiming = None;
            self.aim.in_plane &= aim::is_in_plane(&scenario);
            self.revision += 1;
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

    /// From where both stages are seen.
    pub fn look(&self) -> Look {
        self.look
    }

    /// Whether the stages may be seen from elsewhere than north: not while the probe has to stay in the orbit plane.
    pub fn may_turn(&self) -> bool {
        !self.aim.in_plane
    }

    /// Whether the clock runs.
    pub fn is_playing(&self) -> bool {
        self.clock.is_playing()
    }

    /// Whether something in the picture is held.
    pub fn is_dragging(&self) -> bool {
        self.drag.is_some() || self.aim_view.is_held()
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

    /// The pass as labelled values: what `two-frames solve` prints.
    ///
    /// # Errors
    /// As [`Self::solved`].
    pub fn solution(&mut self) -> Result<Solution, FlybyError> {
        let scenario = self.scenario;
        self.solved()
            .map(|solved| Solution::new(&scenario, &solved.flyby))
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
        let views = self.views(sizes)?;
        let clock = self.clock;
        self.solved().map(|solved| {
            let scene = solved.scene(clock.time_s(&solved.track));
            Pictures::compose(&scene, &views, sizes)
        })
    }

    /// The numbers and sentences at the moment shown.
    ///
    /// # Errors
    /// As [`Self::solved`].
    pub fn panel(&mut self) -> Result<Panel, FlybyError> {
        let (clock, look) = (self.clock, self.look);
        self.solved().map(|solved| {
            let time_s = clock.time_s(&solved.track);
            Panel::new(solved, time_s, clock.rate(solved), look)
        })
    }

    /// The views of both stages. While something is dragged they stay as they were when it was taken hold of.
    ///
    /// # Errors
    /// As [`Self::solved`].
    pub fn views(&mut self, sizes: &Sizes) -> Result<Views, FlybyError> {
        if let Some(drag) = &self.drag {
            return Ok(drag.views());
        }
        let (look, zoom, stage) = (self.look, self.zoom, sizes.stage);
        self.solved()
            .map(|solved| Views::fit(&solved.scene(0.0), look, stage, zoom))
    }

    /// Another scenario at its telling moment; the pace stays.
    fn reopen(&mut self, text: &str) {
        let opened = Self::open(text);
        *self = Self {
            clock: self.clock.rewound(),
            aim: self.aim.of(&opened.scenario),
            revision: self.revision + 1,
            ..opened
        };
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

    /// The field and value that the place of what is held stands for.
    fn meant(&mut self, place: DVec2) -> Option<(Field, f64)> {
        let drag = self.drag?;
        let solved = self.solved().ok()?;
        drag.meant(place, &solved.flyby)
    }
}
