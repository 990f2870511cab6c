//! One frame's picture of the pass. Called twice with one scale and one moment: once as the planet sees it, once as the
//! Sun sees it.

use glam::{DVec2, DVec3};

use super::drawing::Drawing;
use super::look::Look;
use super::picture::{Dash, Grip, Handle, Mark, Picture, Role, Stroke};
use super::scene::{Scene, Views};
use super::track::Sample;
use super::view::View;
use crate::decimal::within;
use crate::report::Instant;

/// In which frame the pass is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FrameKind {
    /// The planet stands still.
    Planet,
    /// The Sun stands still and the planet moves straight up.
    Sun,
}

/// A planet drawn smaller than this, picture units, gets a ring so that it is found.
const SMALLEST_DISC: f64 = 4.0;

/// The picture of one frame.
pub fn stage(scene: &Scene<'_>, kind: FrameKind, views: &Views) -> Picture {
    let view = match kind {
        FrameKind::Planet => &views.planet,
        FrameKind::Sun => &views.sun,
    };
    let name = scene.flyby.encounter.planet.name;
    let title = match kind {
        FrameKind::Planet => ["Planet frame: ", name, " stands still"].concat(),
        FrameKind::Sun => ["Sun frame: ", name, " moves"].concat(),
    };
    let mut stage = Stage {
        scene,
        kind,
        view,
        look: views.look,
        per_km_s: views.per_km_s(scene),
        instant: Instant::of(scene.flyby, scene.now()),
        drawing: Drawing::new(view.size, letter_size(view.size), title),
    };
    stage.draw();
    stage.drawing.picture
}

/// Height of letters that suits a picture's size.
pub(super) fn letter_size(size: DVec2) -> f64 {
    within(size.min_element() / 28.0, 11.5, 26.0)
}

pub(super) struct Stage<'a> {
    pub(super) scene: &'a Scene<'a>,
    pub(super) kind: FrameKind,
    pub(super) view: &'a View,
    /// From where it is seen.
    pub(super) look: Look,
    /// Length of a velocity arrow, picture units for each km/s.
    per_km_s: f64,
    pub(super) instant: Instant,
    pub(super) drawing: Drawing,
}

impl Stage<'_> {
    fn draw(&mut self) {
        if self.kind == FrameKind::Sun {
            self.planet_path();
        }
        let path = self.quiet_places();
        for &in_front in &[false, true] {
            self.probe_path(in_front);
            self.beads(in_front);
            if !in_front {
                self.planet();
            }
        }
        self.impact();
        if self.kind == FrameKind::Planet {
            self.periapsis();
        }
        let planet_tip = (self.kind == FrameKind::Sun).then(|| self.planet_velocity());
        let tip = self.probe();
        self.labels(&path, tip);
        self.outside_note();
        self.notes();
        if let Some(tip) = planet_tip {
            self.planet_speed(tip);
        }
    }

    pub(super) fn role(&self) -> Role {
        match self.kind {
            FrameKind::Planet => Role::Relative,
            FrameKind::Sun => Role::RoundSun,
        }
    }

    pub(super) fn sample_in_space(&self, sample: &Sample) -> DVec3 {
        match self.kind {
            FrameKind::Planet => sample.relative_km,
            FrameKind::Sun => sample.in_sun_frame_km,
        }
    }

    pub(super) fn place_sample(&self, sample: &Sample) -> DVec2 {
        self.view.place_in_space(self.sample_in_space(sample))
    }

    /// Where the probe is in this stage's frame, km.
    pub(super) fn probe_in_space(&self, time_s: f64) -> DVec3 {
        match self.kind {
            FrameKind::Planet => self.scene.flyby.seen_from_planet(time_s).0.km,
            FrameKind::Sun => self.scene.flyby.seen_from_sun(time_s).0.km,
        }
    }

    pub(super) fn probe_at(&self, time_s: f64) -> DVec2 {
        self.view.place_in_space(self.probe_in_space(time_s))
    }

    /// Where the planet's centre is in this stage's frame, km.
    pub(super) fn planet_in_space(&self, time_s: f64) -> DVec3 {
        match self.kind {
            FrameKind::Planet => DVec3::ZERO,
            FrameKind::Sun => self.scene.flyby.motion().position(time_s).km,
        }
    }

    pub(super) fn planet_at(&self, time_s: f64) -> DVec2 {
        self.view.place_in_space(self.planet_in_space(time_s))
    }

    /// The planet to scale, and a ring round it where it would be too small to find.
    fn planet(&mut self) {
        let at = self.planet_at(self.scene.now());
        let radius = self.view.length(self.scene.radius_km());
        let edge = Stroke::solid(Role::Ink, 1.0);
        self.drawing
            .picture
            .disc(at, radius, Some(Role::Planet), Some(edge));
        let ring_radius = 0.7 * self.drawing.letter;
        if radius < SMALLEST_DISC {
            let ring = self.drawing.stroke(Role::Ink, 1.2, Dash::Dotted);
            self.drawing.picture.ring(at, ring_radius, ring);
        }
        self.drawing.room.take_disc(at, radius.max(ring_radius));
    }

    /// The line from the planet's centre to periapsis, in the frame in which it stands still, and the handles: periapsis
    /// where its distance is seen well enough to be dragged, the approach where its angle lies in the picture's plane.
    fn periapsis(&mut self) {
        let (centre, at) = (self.planet_at(0.0), self.probe_at(0.0));
        let stroke = self.drawing.stroke(Role::Quiet, 1.0, Dash::Solid);
        self.drawing.line(centre, at, stroke);
        if self
            .view
            .can_be_pulled(self.scene.flyby.periapsis_direction)
        {
            self.handle(at, Grip::Periapsis);
        }
        if self.look == Look::NORTH {
            let incoming = self.place_sample(&self.scene.track.before[0]);
            self.handle(incoming, Grip::Approach);
        }
    }

    fn handle(&mut self, at: DVec2, grip: Grip) {
        let (radius, role) = (self.drawing.width(5.0), Role::Relative);
        self.drawing.picture.marks.push(Mark::Handle(Handle {
            at,
            grip,
            radius,
            role,
        }));
        self.drawing.room.take_disc(at, radius);
    }

    /// A cross where the probe strikes the planet, dotted on the side that is not seen.
    fn impact(&mut self) {
        if !self.scene.flyby.strikes() {
            return;
        }
        let strike = self.probe_in_space(self.scene.track.end_s);
        let at = self.view.place_in_space(strike);
        let arm = self.drawing.width(6.0);
        let dash = self.dash_at(strike);
        let stroke = self.drawing.stroke(Role::Ink, 2.2, dash);
        for &across in &[DVec2::splat(arm), DVec2::new(arm, -arm)] {
            self.drawing.line(at - across, at + across, stroke);
        }
    }

    /// The planet's velocity, in the frame in which it moves. Returns the tip of its arrow.
    fn planet_velocity(&mut self) -> DVec2 {
        let velocity = self.scene.flyby.motion().velocity();
        let planet = self.planet_at(self.scene.now());
        self.arrow(planet, velocity.km_s, Role::PlanetMotion)
    }

    /// The probe now, with its ring (dotted while the disc hides the probe) and its velocity. Returns the tip of the velocity's arrow.
    fn probe(&mut self) -> DVec2 {
        let now = self.scene.now();
        let (flyby, at) = (self.scene.flyby, self.probe_at(now));
        let velocity = match self.kind {
            FrameKind::Planet => flyby.seen_from_planet(now).1.km_s,
            FrameKind::Sun => flyby.seen_from_sun(now).1.km_s,
        };
        let tip = self.arrow(at, velocity, self.role());
        let (dot, ring) = (self.drawing.width(4.2), self.drawing.width(7.5));
        let dash = self.dash_at(self.probe_in_space(now));
        let stroke = self.drawing.stroke(Role::Ink, 1.2, dash);
        self.drawing.picture.dot(at, dot, Role::Ink);
        self.drawing.picture.ring(at, ring, stroke);
        self.drawing.room.take_disc(at, self.drawing.width(8.0));
        tip
    }

    /// A velocity arrow; all arrows of both stages have one scale. Returns its tip.
    fn arrow(&mut self, from: DVec2, km_s: DVec3, role: Role) -> DVec2 {
        let to = from + self.view.run(km_s) * self.per_km_s;
        let stroke = self.drawing.stroke(role, 2.4, Dash::Solid);
        self.drawing.arrow(from, to, stroke);
        to
    }
}
