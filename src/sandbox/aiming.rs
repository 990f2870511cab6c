//! Aiming in the sandbox: the aim point, the wish and its answer, the aim plane's picture.

use glam::DVec2;

use super::aim::{self, AimChange, AimSettings, AimView};
use super::{Sandbox, Solved};
use crate::figure::{AimScene, Look, Picture, aim_place, aim_plane, aim_window_km};
use crate::physics::FlybyError;
use crate::report::{AimSolution, Aiming, ChartReading, NoAim};
use crate::scenario::Notice;

impl Sandbox {
    pub(super) fn change_aim(&mut self, change: AimChange) -> Result<(), Notice> {
        let settings = self.aim;
        match change {
            AimChange::At(point) => {
                self.take(aim::aimed_at(&self.scenario, point, settings.in_plane)?);
            }
            AimChange::Hold(place, size) => {
                if let Ok(half_km) = self.aim_window_km() {
                    self.aim_view = AimView::hold(half_km, size);
                    self.point_at(place);
                }
            }
            AimChange::Move(place) => self.point_at(place),
            AimChange::Nudge(hundredths) => self.nudge(hundredths),
            AimChange::InPlane(in_plane) => self.stay_in_plane(in_plane),
            AimChange::Wish(wish) => self.set_aim(AimSettings {
                wish: Some(wish),
                ..settings
            }),
            AimChange::NoWish => self.set_aim(AimSettings {
                wish: None,
                ..settings
            }),
            AimChange::Free(free) => self.set_aim(AimSettings { free, ..settings }),
            AimChange::Take => {
                if let Ok(answer) = self.aiming().map(|aiming| aiming.answer) {
                    self.take(answer);
                }
            }
            AimChange::Measure(measure) => self.set_aim(AimSettings {
                measure,
                ..settings
            }),
            AimChange::Against(against) => self.set_aim(AimSettings {
                against,
                ..settings
            }),
        }
        Ok(())
    }

    pub(super) fn release_aim(&mut self) {
        if self.aim_view.is_held() {
            self.aim_view = AimView::default();
            self.revision += 1;
        }
    }

    /// Aims at a place of the picture that is held.
    fn point_at(&mut self, place: DVec2) {
        if let Some(point) = self.aim_view.point(place) {
            self.take(aim::pointed_at(&self.scenario, point, self.aim.in_plane));
        }
    }

    fn nudge(&mut self, hundredths: DVec2) {
        let Ok(half_km) = self.aim_window_km() else {
            return;
        };
        let Ok(Solved { flyby, .. }) = self.solved() else {
            return;
        };
        let [t, r] = flyby.aim_point_km;
        let step = hundredths * (0.01 * half_km);
        // Right beside the centre there is no closest distance to aim for: the step grows until it leads across.
        for doublings in 0..16 {
            let step = step * f64::from(1 << doublings);
            let point = [t + step.x, r + step.y];
            let moved = aim::pointed_at(&self.scenario, point, self.aim.in_plane);
            if moved != self.scenario {
                self.take(moved);
                return;
            }
        }
    }

    fn set_aim(&mut self, aim: AimSettings) {
        if self.aim != aim {
            self.aim = aim;
            self.aiming = None;
            self.revision += 1;
        }
    }

    fn stay_in_plane(&mut self, in_plane: bool) {
        if in_plane {
            self.take(aim::brought_into_plane(&self.scenario));
            self.look = Look::NORTH;
        }
        self.set_aim(AimSettings {
            in_plane,
            ..self.aim
        });
    }

    /// Looks at the stages from elsewhere, where that is allowed.
    pub(super) fn look_from(&mut self, look: Look) {
        if self.may_turn() {
            self.look = look;
        }
    }

    /// What is set about aiming.
    pub fn aim_settings(&self) -> &AimSettings {
        &self.aim
    }

    /// A number that is another one after every change of the scenario and of what is aimed for.
    pub fn revision(&self) -> u32 {
        self.revision
    }

    /// The answer to the wish.
    ///
    /// # Errors
    /// [`NoAim`] when the wish makes no sense here, or the settings have no flyby.
    pub fn aiming(&mut self) -> Result<&Aiming, NoAim> {
        let (aim, scenario) = (self.aim, self.scenario);
        self.aiming
            .get_or_insert_with(|| aim.search(&scenario))
            .as_ref()
            .map_err(Clone::clone)
    }

    /// The answer to the wish as labelled values: what `two-frames aim` prints.
    ///
    /// # Errors
    /// As [`Self::aiming`].
    pub fn aim_solution(&mut self) -> Result<AimSolution, NoAim> {
        let scenario = self.scenario;
        self.aiming()
            .map(|aiming| AimSolution::new(&scenario, aiming))
    }

    /// Half the side, km, of the piece of the aim plane shown.
    ///
    /// # Errors
    /// As [`Self::solved`].
    pub fn aim_window_km(&mut self) -> Result<f64, FlybyError> {
        match self.aim_view.half_km() {
            Some(half_km) => Ok(half_km),
            None => self.solved().map(|solved| aim_window_km(&solved.flyby)),
        }
    }

    /// Where the aim is in the aim plane's picture of a size.
    pub fn aim_place(&mut self, size: DVec2) -> Option<DVec2> {
        let half_km = self.aim_window_km().ok()?;
        let solved = self.solved().ok()?;
        Some(aim_place(solved.flyby.aim_point_km, half_km, size))
    }

    /// What the chart of the outcome has to show.
    ///
    /// # Errors
    /// As [`Self::solved`].
    pub fn chart(&mut self) -> Result<ChartReading, FlybyError> {
        let AimSettings {
            measure, against, ..
        } = self.aim;
        self.solved()
            .map(|solved| ChartReading::of(&solved.flyby, measure, against))
    }

    /// The aim plane's picture, its map with so many cells to a side.
    ///
    /// # Errors
    /// As [`Self::solved`].
    pub fn aim_picture(&mut self, size: DVec2, columns: usize) -> Result<Picture, FlybyError> {
        let half_km = self.aim_window_km()?;
        let measure = self.aim.measure;
        let aiming = self.aiming().ok().copied();
        self.solved().map(|solved| {
            let scene = AimScene {
                flyby: &solved.flyby,
                measure,
                aiming: aiming.as_ref(),
                half_km,
                columns,
            };
            aim_plane(&scene, size)
        })
    }
}
