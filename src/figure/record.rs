//! The speed record: speed against time in both frames, on one clock.

use glam::DVec2;

use super::label::{Words, place_near, put, text_width};
use super::picture::{Dash, Picture, Role, Stroke};
use super::room::Room;
use super::scene::Scene;
use super::stage::letter_size;
use super::ticks::{round_below, round_span};
use super::track::Sample;
use crate::decimal::within;
use crate::physics::units::{DAYS_PER_YEAR, SECONDS_PER_DAY, SECONDS_PER_HOUR};
use crate::report::{Instant, short};

/// The speed record, as large as `size` allows.
pub fn speed_record(scene: &Scene<'_>, size: DVec2) -> Picture {
    let letter = letter_size(size * DVec2::new(1.0, 1.6));
    let top = 1.12 * scene.top_speed();
    let step = round_below(top / 3.0);
    let left = 0.8 * letter + text_width(&short(top, 3), letter, false);
    let mut record = Record {
        scene,
        letter,
        low: DVec2::new(left, size.y - 1.9 * letter),
        high: DVec2::new(size.x - 0.8 * letter, 1.5 * letter),
        top,
        picture: Picture::new(size, "Speed record: speed against time in both frames"),
        room: Room::new(size),
    };
    record.draw(step);
    record.picture
}

struct Record<'a> {
    scene: &'a Scene<'a>,
    letter: f64,
    /// Lower left corner of the plot.
    low: DVec2,
    /// Upper right corner of the plot.
    high: DVec2,
    /// Speed at the upper edge, km/s.
    top: f64,
    picture: Picture,
    room: Room,
}

impl Record<'_> {
    fn draw(&mut self, step: f64) {
        self.speed_axis(step);
        self.time_axis();
        self.curve(Role::Relative, |sample| sample.relative_speed);
        self.curve(Role::RoundSun, |sample| sample.sun_speed);
        self.cursor();
        let name = self.scene.flyby.encounter.planet.name;
        self.curve_name(Role::Relative, &format!("relative to {name}"), |sample| {
            sample.relative_speed
        });
        self.curve_name(Role::RoundSun, "round the Sun", |sample| sample.sun_speed);
    }

    fn width(&self, units: f64) -> f64 {
        units * self.letter / 13.0
    }

    fn place(&self, time_s: f64, speed: f64) -> DVec2 {
        let half = self.scene.track.half_s;
        let part = DVec2::new(0.5 * (time_s / half + 1.0), speed / self.top);
        self.low + (self.high - self.low) * part
    }

    fn speed_axis(&mut self, step: f64) {
        let mut speed = 0.0;
        while speed <= self.top {
            let y = self.place(0.0, speed).y;
            let (from, to) = (DVec2::new(self.low.x, y), DVec2::new(self.high.x, y));
            self.picture.line(from, to, Stroke::solid(Role::Faint, 1.0));
            let words = Words::new(short(speed, 2), Role::Quiet, self.letter);
            let width = text_width(&words.text, self.letter, false);
            put(
                &mut self.picture,
                &mut self.room,
                DVec2::new(self.low.x - 0.4 * self.letter - 0.5 * width, y),
                words,
            );
            speed += step;
        }
        let words = Words::new("km/s", Role::Quiet, self.letter);
        let centre = DVec2::new(
            0.5 * text_width(&words.text, self.letter, false) + 2.0,
            0.65 * self.letter,
        );
        put(&mut self.picture, &mut self.room, centre, words);
    }

    /// Times at round steps on both sides of periapsis; the last one carries the unit.
    fn time_axis(&mut self) {
        let half = self.scene.track.half_s;
        let step = round_span(half, 3.0);
        let (unit_s, unit) = time_unit(step);
        let y = self.low.y + 0.85 * self.letter;
        let most = libm::floor(half / step) as i32;
        for i in -most..=most {
            let time = f64::from(i) * step;
            let at = self.place(time, 0.0);
            let tick = DVec2::new(0.0, 0.3 * self.letter);
            self.picture
                .line(at, at + tick, Stroke::solid(Role::Quiet, 1.0));
            let text = match i {
                0 => "periapsis".into(),
                i if i == most => format!("{} {unit}", signed(time / unit_s)),
                _ => signed(time / unit_s),
            };
            let words = Words::new(text, Role::Quiet, self.letter);
            let half_width = 0.5 * text_width(&words.text, self.letter, false);
            let x = within(at.x, half_width, self.picture.size.x - half_width);
            put(
                &mut self.picture,
                &mut self.room,
                DVec2::new(x, y + 0.2 * self.letter),
                words,
            );
        }
    }

    fn points(&self, samples: &[Sample], speed: impl Fn(&Sample) -> f64) -> Vec<DVec2> {
        samples
            .iter()
            .map(|sample| self.place(sample.time_s, speed(sample)))
            .collect()
    }

    fn curve(&mut self, role: Role, speed: impl Fn(&Sample) -> f64) {
        let stroke = Stroke::solid(role, self.width(2.2));
        let before = self.points(&self.scene.track.before, &speed);
        let after = self.points(&self.scene.track.after, &speed);
        self.room.take_path(&before);
        self.room.take_path(&after);
        self.picture.path(before, stroke.with(Dash::Dashed));
        self.picture.path(after, stroke);
    }

    /// The moment shown, with a dot on each curve: filled for the planet frame, hollow for the Sun frame.
    fn cursor(&mut self) {
        let now = self.scene.now();
        let instant = Instant::of(self.scene.flyby, now);
        let x = self.place(now, 0.0).x;
        let (from, to) = (DVec2::new(x, self.low.y), DVec2::new(x, self.high.y));
        self.picture
            .line(from, to, Stroke::solid(Role::Ink, self.width(1.2)));
        self.room.take_line(from, to);
        let radius = self.width(4.0);
        let (relative, sun) = (
            self.place(now, instant.planet_speed_km_s),
            self.place(now, instant.sun_speed_km_s),
        );
        self.picture.dot(relative, radius, Role::Relative);
        self.picture
            .hollow(sun, radius, Stroke::solid(Role::RoundSun, self.width(2.0)));
        self.room.take_disc(relative, radius);
        self.room.take_disc(sun, radius);
    }

    fn curve_name(&mut self, role: Role, text: &str, speed: impl Fn(&Sample) -> f64) {
        let track = self.scene.track;
        let points: Vec<_> = self
            .points(&track.after, &speed)
            .into_iter()
            .rev()
            .chain(self.points(&track.before, &speed))
            .step_by(5)
            .collect();
        let words = Words::new(text, role, self.letter).bold();
        place_near(&mut self.picture, &mut self.room, &points, words, true);
    }
}

/// The unit, in s and in words, that suits a step of the time axis.
fn time_unit(step_s: f64) -> (f64, &'static str) {
    match step_s {
        s if s < 60.0 => (1.0, "s"),
        s if s < SECONDS_PER_HOUR => (60.0, "min"),
        s if s < SECONDS_PER_DAY => (SECONDS_PER_HOUR, "h"),
        s if s < 600.0 * SECONDS_PER_DAY => (SECONDS_PER_DAY, "days"),
        _ => (DAYS_PER_YEAR * SECONDS_PER_DAY, "years"),
    }
}

/// A time on the axis, with its sign.
fn signed(value: f64) -> String {
    let text = short(value, 3);
    if value > 0.0 {
        format!("+{text}")
    } else {
        text
    }
}
