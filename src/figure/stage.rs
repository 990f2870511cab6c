//! One frame's picture of the pass. Called twice with one scale and one moment: once as the planet sees it, once as the
//! Sun sees it.

use glam::DVec2;

use super::label::{Words, place_near};
use super::picture::{Arrow, Dash, Grip, Handle, Head, Mark, Picture, Role, Shaft, Stroke};
use super::room::Room;
use super::ruler::{bead_note, ruler, to_the_sun};
use super::scene::Scene;
use super::track::Sample;
use super::view::View;
use crate::decimal::within;
use crate::report::{Instant, fixed, short};

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
pub fn stage(scene: &Scene<'_>, kind: FrameKind, view: &View) -> Picture {
    let name = scene.flyby.encounter.planet.name;
    let title = match kind {
        FrameKind::Planet => format!("Planet frame: {name} stands still"),
        FrameKind::Sun => format!("Sun frame: {name} moves"),
    };
    let mut stage = Stage {
        scene,
        kind,
        view,
        letter: letter_size(view.size),
        instant: Instant::of(scene.flyby, scene.now()),
        picture: Picture::new(view.size, title),
        room: Room::new(view.size),
    };
    stage.draw();
    stage.picture
}

/// Height of letters that suits a picture's size.
pub(super) fn letter_size(size: DVec2) -> f64 {
    within(size.min_element() / 28.0, 11.5, 26.0)
}

struct Stage<'a> {
    scene: &'a Scene<'a>,
    kind: FrameKind,
    view: &'a View,
    letter: f64,
    instant: Instant,
    picture: Picture,
    room: Room,
}

impl Stage<'_> {
    fn draw(&mut self) {
        self.planet_path();
        let path = self.probe_path();
        self.beads();
        self.planet();
        self.periapsis();
        let tip = self.probe();
        self.labels(&path, tip);
    }

    fn role(&self) -> Role {
        match self.kind {
            FrameKind::Planet => Role::Relative,
            FrameKind::Sun => Role::RoundSun,
        }
    }

    /// A width that grows with the picture.
    fn width(&self, units: f64) -> f64 {
        units * self.letter / 13.0
    }

    fn place_sample(&self, sample: &Sample) -> DVec2 {
        self.view.place_from_north(match self.kind {
            FrameKind::Planet => sample.relative_km,
            FrameKind::Sun => sample.in_sun_frame_km,
        })
    }

    fn probe_at(&self, time_s: f64) -> DVec2 {
        self.view.place_from_north(match self.kind {
            FrameKind::Planet => self.scene.flyby.seen_from_planet(time_s).0.km,
            FrameKind::Sun => self.scene.flyby.seen_from_sun(time_s).0.km,
        })
    }

    fn planet_at(&self, time_s: f64) -> DVec2 {
        self.view.place_from_north(match self.kind {
            FrameKind::Planet => glam::DVec3::ZERO,
            FrameKind::Sun => self.scene.flyby.motion().position(time_s).km,
        })
    }

    /// The planet's straight way through the Sun frame, with its own beads.
    fn planet_path(&mut self) {
        if self.kind == FrameKind::Planet {
            return;
        }
        let half = self.scene.track.half_s;
        let (from, to) = (self.planet_at(-half), self.planet_at(half));
        let stroke = Stroke {
            role: Role::PlanetMotion,
            width: self.width(1.2),
            dash: Dash::Dotted,
        };
        self.picture.line(from, to, stroke);
        self.room.take_line(from, to);
        let tick = DVec2::new(self.width(3.0), 0.0);
        for time in self.scene.track.bead_times() {
            let at = self.planet_at(time);
            self.picture.line(
                at - tick,
                at + tick,
                Stroke::solid(Role::PlanetMotion, self.width(1.5)),
            );
        }
    }

    /// The probe's path: dashed before periapsis, solid after it. Returns points along it for its label.
    fn probe_path(&mut self) -> Vec<DVec2> {
        let stroke = Stroke::solid(self.role(), self.width(2.2));
        let before: Vec<_> = self
            .scene
            .track
            .before
            .iter()
            .map(|s| self.place_sample(s))
            .collect();
        let after: Vec<_> = self
            .scene
            .track
            .after
            .iter()
            .map(|s| self.place_sample(s))
            .collect();
        self.room.take_path(&before);
        self.room.take_path(&after);
        let inside = |place: &&DVec2| self.view.holds(**place, 0.0);
        // The ends of the path are the quiet places for its name: the incoming one first.
        let along = before
            .iter()
            .chain(after.iter().rev())
            .filter(inside)
            .step_by(6)
            .copied()
            .collect();
        self.picture.path(before, stroke.with(Dash::Dashed));
        self.picture.path(after, stroke);
        along
    }

    /// Beads at equal times: hollow before periapsis, filled from it on.
    fn beads(&mut self) {
        let role = self.role();
        let radius = self.width(2.8);
        for time in self.scene.track.bead_times() {
            let at = self.probe_at(time);
            if !self.view.holds(at, 0.0) {
                continue;
            }
            if time < 0.0 {
                self.picture
                    .hollow(at, radius, Stroke::solid(role, self.width(1.4)));
            } else {
                self.picture.dot(at, radius, role);
            }
            self.room.take_disc(at, radius);
        }
    }

    /// The planet to scale, and a ring round it where it would be too small to find.
    fn planet(&mut self) {
        let at = self.planet_at(self.scene.now());
        let radius = self.view.length(self.scene.radius_km());
        self.picture.marks.push(Mark::Disc(super::picture::Disc {
            centre: at,
            radius,
            fill: Some(Role::Planet),
            edge: Some(Stroke::solid(Role::Ink, 1.0)),
        }));
        if radius < SMALLEST_DISC {
            let ring = Stroke {
                role: Role::Ink,
                width: self.width(1.2),
                dash: Dash::Dotted,
            };
            self.picture.ring(at, self.ring_radius(), ring);
        }
        self.room.take_disc(at, radius.max(self.ring_radius()));
    }

    fn ring_radius(&self) -> f64 {
        0.7 * self.letter
    }

    /// The line from the planet's centre to periapsis, in the frame in which it stands still.
    fn periapsis(&mut self) {
        if self.kind == FrameKind::Sun {
            return;
        }
        let (centre, at) = (self.planet_at(0.0), self.probe_at(0.0));
        let stroke = Stroke {
            role: Role::Quiet,
            width: self.width(1.0),
            dash: Dash::Solid,
        };
        self.picture.line(centre, at, stroke);
        self.room.take_line(centre, at);
        let incoming = self.place_sample(&self.scene.track.before[0]);
        for (at, grip) in [(at, Grip::Periapsis), (incoming, Grip::Approach)] {
            let (radius, role) = (self.width(5.0), Role::Relative);
            let handle = Handle {
                at,
                grip,
                radius,
                role,
            };
            self.picture.marks.push(Mark::Handle(handle));
            self.room.take_disc(at, radius);
        }
    }

    /// The probe now, with its ring, and the velocity arrows. Returns the tip of the probe's arrow.
    fn probe(&mut self) -> DVec2 {
        let now = self.scene.now();
        let at = self.probe_at(now);
        let (_, relative) = self.scene.flyby.seen_from_planet(now);
        let motion = self.scene.flyby.motion();
        let velocity = match self.kind {
            FrameKind::Planet => relative.km_s,
            FrameKind::Sun => motion.velocity_seen_from_sun(relative).km_s,
        };
        if self.kind == FrameKind::Sun {
            let planet = self.planet_at(now);
            let tip = self.arrow(
                planet,
                motion.velocity().km_s,
                Role::PlanetMotion,
                Head::Filled,
                Shaft::Double,
            );
            let speed = fixed(motion.velocity().speed(), 2);
            let words = Words::new(format!("{speed} km/s"), Role::PlanetMotion, self.letter);
            place_near(
                &mut self.picture,
                &mut self.room,
                &[tip, 0.5 * (tip + planet)],
                words,
                false,
            );
        }
        let head = if self.kind == FrameKind::Planet {
            Head::Filled
        } else {
            Head::Open
        };
        let tip = self.arrow(at, velocity, self.role(), head, Shaft::Single);
        self.picture.dot(at, self.width(4.2), Role::Ink);
        self.picture.ring(
            at,
            self.width(7.5),
            Stroke::solid(Role::Ink, self.width(1.2)),
        );
        self.room.take_disc(at, self.width(8.0));
        tip
    }

    /// A velocity arrow; all arrows of both stages have one scale.
    fn arrow(
        &mut self,
        from: DVec2,
        km_s: glam::DVec3,
        role: Role,
        head: Head,
        shaft: Shaft,
    ) -> DVec2 {
        let per_km_s = 0.36 * self.view.size.min_element() / self.scene.top_speed();
        let to = from + DVec2::new(km_s.x, -km_s.y) * per_km_s;
        let stroke = Stroke::solid(role, self.width(2.4));
        self.picture.marks.push(Mark::Arrow(Arrow {
            from,
            to,
            stroke,
            head,
            shaft,
        }));
        self.room.take_line(from, to);
        self.room.take_disc(to, self.width(3.0));
        to
    }

    fn labels(&mut self, path: &[DVec2], tip: DVec2) {
        let (letter, role) = (self.letter, self.role());
        let speed = match self.kind {
            FrameKind::Planet => self.instant.planet_speed_km_s,
            FrameKind::Sun => self.instant.sun_speed_km_s,
        };
        let name = self.scene.flyby.encounter.planet.name;
        let seen = if self.kind == FrameKind::Planet {
            name
        } else {
            "the Sun"
        };
        let probe = self.probe_at(self.scene.now());
        let planet = self.planet_at(self.scene.now());
        self.words(
            &[tip, 0.5 * (tip + probe), probe],
            Words::new(format!("{} km/s", fixed(speed, 2)), role, 1.1 * letter).bold(),
            true,
        );
        self.words(
            path,
            Words::new(format!("seen from {seen}"), role, letter).bold(),
            true,
        );
        self.words(&[planet], Words::new(name, Role::Ink, letter), true);
        if self.kind == FrameKind::Planet {
            self.periapsis_label();
        }
        to_the_sun(&mut self.picture, &mut self.room, letter);
        ruler(
            &mut self.picture,
            &mut self.room,
            self.view,
            self.scene.radius_km(),
            letter,
        );
        bead_note(
            &mut self.picture,
            &mut self.room,
            self.scene.track.bead_s,
            letter,
        );
        self.words(&[probe], Words::new("now", Role::Ink, letter), false);
        if !self.view.holds(probe, 0.0) {
            let words = Words::new(
                "the probe is outside the picture: zoom out",
                Role::Ink,
                letter,
            );
            self.words(&[0.5 * self.view.size], words, false);
        }
    }

    fn periapsis_label(&mut self) {
        let radii = self.scene.flyby.encounter.periapsis_km / self.scene.radius_km();
        let words = Words::new(
            format!("periapsis {} R", short(radii, 3)),
            Role::Quiet,
            self.letter,
        );
        let at = self.probe_at(0.0);
        self.words(&[at], words, false);
    }

    fn words(&mut self, near: &[DVec2], words: Words, needed: bool) {
        place_near(&mut self.picture, &mut self.room, near, words, needed);
    }
}
