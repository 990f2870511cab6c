//! The lines of a stage: the planet's way and the probe's path, each with its beads.

use glam::{DVec2, DVec3};

use super::drawing::every;
use super::picture::{Dash, Role};
use super::stage::Stage;

impl Stage<'_> {
    /// The planet's straight way through the Sun frame, with its own beads.
    pub(super) fn planet_path(&mut self) {
        let half = self.scene.track.half_s;
        let (from, to) = (self.planet_at(-half), self.planet_at(half));
        let dotted = self.drawing.stroke(Role::PlanetMotion, 1.2, Dash::Dotted);
        self.drawing.line(from, to, dotted);
        // Seen from the front or from behind, the way is a point and has no beads.
        if !self.view.can_be_shown(DVec3::Y) {
            return;
        }
        let along = self.view.run(DVec3::Y);
        let tick = along.perp() / along.length() * self.drawing.width(3.0);
        let stroke = self.drawing.stroke(Role::PlanetMotion, 1.5, Dash::Solid);
        for time in self.scene.track.bead_times() {
            let at = self.planet_at(time);
            self.drawing.line(at - tick, at + tick, stroke);
        }
    }

    /// Points along the probe's path for its label. The ends of the path are the quiet places for it: the incoming one
    /// first.
    pub(super) fn quiet_places(&self) -> Vec<DVec2> {
        let track = self.scene.track;
        let mut along = Vec::new();
        for &(samples, is_out) in &[(&track.before, false), (&track.after, true)] {
            for i in 0..samples.len() {
                let inwards = if is_out { samples.len() - 1 - i } else { i };
                let place = self.place_sample(&samples[inwards]);
                if self.view.holds(place, 0.0) {
                    along.push(place);
                }
            }
        }
        every(6, &along)
    }

    /// The probe's path, dashed before periapsis and solid after it: what lies in front of the planet's disc, or all the
    /// rest.
    pub(super) fn probe_path(&mut self, in_front: bool) {
        let track = self.scene.track;
        for &(samples, dash) in &[(&track.before, Dash::Dashed), (&track.after, Dash::Solid)] {
            let stroke = self.drawing.stroke(self.role(), 2.2, dash);
            let mut piece = Vec::new();
            for i in 1..samples.len() {
                let from = self.sample_in_space(&samples[i - 1]);
                let to = self.sample_in_space(&samples[i]);
                if self.is_in_front(from, to) != in_front {
                    self.drawing.path(std::mem::take(&mut piece), stroke);
                    continue;
                }
                if piece.is_empty() {
                    piece.push(self.view.place_in_space(from));
                }
                piece.push(self.view.place_in_space(to));
            }
            self.drawing.path(piece, stroke);
        }
    }

    /// Beads at equal times: hollow before periapsis, filled from it on.
    pub(super) fn beads(&mut self, in_front: bool) {
        let stroke = self.drawing.stroke(self.role(), 1.4, Dash::Solid);
        let radius = self.drawing.width(2.8);
        for time in self.scene.track.bead_times() {
            let bead = self.probe_in_space(time);
            let at = self.view.place_in_space(bead);
            if self.view.holds(at, 0.0) && self.is_in_front(bead, bead) == in_front {
                self.drawing.bead(at, radius, stroke, time >= 0.0);
            }
        }
    }
}
