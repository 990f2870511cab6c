//! The speed record: speed against time in both frames, on one clock.

use glam::DVec2;

use super::drawing::{Drawing, every};
use super::label::{Words, text_width};
use super::picture::{Dash, Picture, Role};
use super::scene::Scene;
use super::stage::letter_size;
use super::ticks::{round_below, round_span};
use super::track::Sample;
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
        low: DVec2::new(left, size.y - 1.9 * letter),
        high: DVec2::new(size.x - 0.8 * letter, 1.7 * letter),
        top,
        drawing: Drawing::new(
            size,
            letter,
            "Speed record: speed against time in both frames".into(),
        ),
    };
    record.draw(step);
    record.drawing.picture
}

struct Record<'a> {
    scene: &'a Scene<'a>,
    /// Lower left corner of the plot.
    low: DVec2,
    /// Upper right corner of the plot.
    high: DVec2,
    /// Speed at the upper edge, km/s.
    top: f64,
    drawing: Drawing,
}

impl Record<'_> {
    fn draw(&mut self, step: f64) {
        self.speed_axis(step);
        self.time_axis();
        self.curve(Role::Relative);
        self.curve(Role::RoundSun);
        self.cursor();
        let name = self.scene.flyby.encounter.planet.name;
        self.curve_name(Role::Relative, &["relative to ", name].concat());
        self.curve_name(Role::RoundSun, "round the Sun");
    }

    fn place(&self, time_s: f64, speed: f64) -> DVec2 {
        let half = self.scene.track.half_s;
        let part = DVec2::new(0.5 * (time_s / half + 1.0), speed / self.top);
        self.low + (self.high - self.low) * part
    }

    fn speed_axis(&mut self, step: f64) {
        let letter = self.drawing.letter;
        let mut speed = 0.0;
        while speed <= self.top {
            let y = self.place(0.0, speed).y;
            let (from, to) = (DVec2::new(self.low.x, y), DVec2::new(self.high.x, y));
            self.drawing
                .grid_line(from, to, Role::Faint, &short(speed, 2));
            speed += step;
        }
        let words = Words::new("km/s", Role::Quiet, letter);
        let centre = DVec2::new(0.5 * words.width() + 2.0, 0.65 * letter);
        self.drawing.put(centre, words);
    }

    /// Times at round steps on both sides of periapsis; the last one carries the unit.
    fn time_axis(&mut self) {
        let half = self.scene.track.half_s;
        let step = round_span(half, 3.0);
        let (unit_s, unit) = time_unit(step);
        let most = (half / step).floor() as i32;
        let end = most + 1;
        for i in -most..end {
            let time = f64::from(i) * step;
            let at = self.place(time, 0.0);
            let text = match i {
                0 => "periapsis".into(),
                i if i == most => signed(time / unit_s) + " " + unit,
                _ => signed(time / unit_s),
            };
            self.drawing.tick(at, &text);
        }
    }

    /// A curve's points: the speed relative to the planet, or round the Sun.
    fn points(&self, samples: &[Sample], role: Role) -> Vec<DVec2> {
        let mut points = Vec::new();
        for sample in samples {
            let speed = match role {
                Role::Relative => sample.relative_speed,
                _ => sample.sun_speed,
            };
            points.push(self.place(sample.time_s, speed));
        }
        points
    }

    fn curve(&mut self, role: Role) {
        let track = self.scene.track;
        for &(samples, dash) in &[(&track.before, Dash::Dashed), (&track.after, Dash::Solid)] {
            let stroke = self.drawing.stroke(role, 2.2, dash);
            self.drawing.path(self.points(samples, role), stroke);
        }
    }

    /// The moment shown, with a dot on each curve: filled for the planet frame, hollow for the Sun frame.
    fn cursor(&mut self) {
        let now = self.scene.now();
        let instant = Instant::of(self.scene.flyby, now);
        let x = self.place(now, 0.0).x;
        let (from, to) = (DVec2::new(x, self.low.y), DVec2::new(x, self.high.y));
        let line = self.drawing.stroke(Role::Ink, 1.2, Dash::Solid);
        self.drawing.line(from, to, line);
        let radius = self.drawing.width(4.0);
        for &(role, speed) in &[
            (Role::Relative, instant.planet_speed_km_s),
            (Role::RoundSun, instant.sun_speed_km_s),
        ] {
            let stroke = self.drawing.stroke(role, 2.0, Dash::Solid);
            let at = self.place(now, speed);
            self.drawing
                .bead(at, radius, stroke, role == Role::Relative);
        }
    }

    /// A curve's name, near one of its points, the latest first.
    fn curve_name(&mut self, role: Role, text: &str) {
        let track = self.scene.track;
        let mut points = self.points(&track.after, role);
        points.reverse();
        points.append(&mut self.points(&track.before, role));
        let words = Words::bold(text, role, self.drawing.letter);
        self.drawing.place_near(&every(5, &points), words, true);
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
        String::from("+") + &text
    } else {
        text
    }
}
