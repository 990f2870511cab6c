//! The words of a stage: what moves how fast, from where it is seen, and the notes in the corners.

use glam::{DVec2, DVec3};

use super::label::Words;
use super::look::Look;
use super::picture::Role;
use super::stage::{FrameKind, Stage};
use crate::report::{fixed, short};

impl Stage<'_> {
    /// The planet's speed beside its arrow, where there is room left.
    pub(super) fn planet_speed(&mut self, tip: DVec2) {
        let planet = self.planet_at(self.scene.now());
        let mut speed = fixed(self.scene.flyby.motion().velocity().speed(), 2) + " km/s";
        if !self.view.can_be_shown(DVec3::Y) {
            let away = self.view.axes.toward.y < 0.0;
            speed += if away {
                ", away from you"
            } else {
                ", towards you"
            };
        }
        let words = Words::new(&speed, Role::PlanetMotion, self.drawing.letter);
        self.drawing
            .place_near(&[tip, 0.5 * (tip + planet)], words, false);
    }

    /// The names of what is drawn.
    pub(super) fn labels(&mut self, path: &[DVec2], tip: DVec2) {
        let (letter, role) = (self.drawing.letter, self.role());
        let name = self.scene.flyby.encounter.planet.name;
        let (speed, seen) = match self.kind {
            FrameKind::Planet => (self.instant.planet_speed_km_s, name),
            FrameKind::Sun => (self.instant.sun_speed_km_s, "the Sun"),
        };
        let probe = self.probe_at(self.scene.now());
        let planet = self.planet_at(self.scene.now());
        let speed = fixed(speed, 2) + " km/s";
        let seen = String::from("seen from ") + seen;
        self.drawing.place_near(
            &[tip, 0.5 * (tip + probe), probe],
            Words::bold(&speed, role, 1.1 * letter),
            true,
        );
        self.drawing
            .place_near(path, Words::bold(&seen, role, letter), true);
        if self.scene.flyby.strikes() {
            let at = self.probe_at(self.scene.track.end_s);
            let words = Words::new("strikes", Role::Ink, letter);
            self.drawing.place_near(&[at], words, true);
        }
        // Beside the disc, whose edge may be far from its centre.
        let radius = self.view.length(self.scene.radius_km());
        let beside = [(1.0, 0.0), (-1.0, 0.0), (0.0, -1.0), (0.0, 1.0)]
            .map(|(x, y)| planet + DVec2::new(x, y) * radius);
        // Seen from elsewhere the planet may stand in a corner that has no room for its name.
        let needed = self.look == Look::NORTH;
        self.drawing
            .place_near(&beside, Words::new(name, Role::Ink, letter), needed);
        if self.kind == FrameKind::Planet {
            let radii = self.scene.flyby.encounter.periapsis_km / self.scene.radius_km();
            let text = ["periapsis ", &short(radii, 3), " R"].concat();
            let words = Words::new(&text, Role::Quiet, letter);
            self.drawing.place_near(&[self.probe_at(0.0)], words, false);
        }
    }

    /// Says so where the probe is out of sight.
    pub(super) fn outside_note(&mut self) {
        if !self.view.holds(self.probe_at(self.scene.now()), 0.0) {
            let text = "probe outside";
            self.drawing
                .corner_note(Words::new(text, Role::Ink, self.drawing.letter));
        }
    }

    /// The notes in the corners, and what they leave room for.
    pub(super) fn notes(&mut self) {
        let letter = self.drawing.letter;
        if self.look == Look::NORTH {
            self.drawing.sun_note();
        } else {
            let name = self.scene.flyby.encounter.planet.name;
            self.drawing.compass(self.view, self.look, name);
        }
        self.drawing.ruler(self.view, self.scene.radius_km());
        self.drawing.bead_note(self.scene.track.bead_s);
        let probe = self.probe_at(self.scene.now());
        if self.view.holds(probe, 0.0) {
            let hidden = self.is_hidden(self.probe_in_space(self.scene.now()));
            let text = if hidden { "now, hidden" } else { "now" };
            let words = Words::new(text, Role::Ink, letter);
            self.drawing.place_near(&[probe], words, false);
        }
    }
}
