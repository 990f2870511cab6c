//! The chart of an outcome against a setting: that closer is not always better, and what is best.

use glam::DVec2;

use super::chart_axes::{digits, heights, round_numbers};
use super::drawing::{Drawing, every};
use super::label::{Words, text_width};
use super::picture::{Dash, Picture, Role, Stroke};
use super::stage::letter_size;
use crate::decimal::within;
use crate::physics::{Flyby, Measure};
use crate::report::{Best, ChartReading, Place, Shape, Spread, short};
use crate::scenario::Field;

/// The chart of an outcome against the periapsis, the approach angle or v-infinity (whatever else is asked for counts as
/// the periapsis), as large as `size` allows.
pub fn outcome_chart(flyby: &Flyby, measure: Measure, against: Field, size: DVec2) -> Picture {
    chart_picture(&ChartReading::of(flyby, measure, against), size)
}

/// The chart that has been read.
pub fn chart_picture(reading: &ChartReading, size: DVec2) -> Picture {
    let letter = letter_size(size * DVec2::new(1.0, 1.6));
    let heights = heights(reading);
    let numbers = round_numbers(&heights, 0.25 * size.y / letter);
    let digits = if heights.is_logarithmic() {
        1
    } else {
        digits(&numbers)
    };
    let texts: Vec<_> = numbers
        .iter()
        .map(|number| short(*number, digits))
        .collect();
    let width = |text: &String| text_width(text, letter, false);
    let left = 0.8 * letter + texts.iter().map(width).fold(2.0 * letter, f64::max);
    let title = [
        reading.course.words().label,
        " against ",
        reading.course.against.spec().label,
    ];
    let mut chart = Chart {
        reading,
        heights,
        low: DVec2::new(left, size.y - 3.1 * letter),
        high: DVec2::new(size.x - 1.2 * letter, 2.0 * letter),
        drawing: Drawing::new(size, letter, title.concat()),
    };
    chart.outcome_axis(&numbers, &texts);
    chart.setting_axis();
    chart.draw();
    chart.drawing.picture
}

struct Chart<'a> {
    reading: &'a ChartReading,
    heights: Spread,
    /// Lower left corner of the plot.
    low: DVec2,
    /// Upper right corner of the plot.
    high: DVec2,
    drawing: Drawing,
}

impl Chart<'_> {
    fn draw(&mut self) {
        let course = &self.reading.course;
        let strikes = match (course.against, self.reading.shape) {
            (Field::Periapsis, _) => [0.0, course.range.part(1.0)],
            (_, Shape::Strikes) => [0.0, 1.0],
            _ => [0.0, 0.0],
        };
        self.no_curve(strikes);
        for part in &self.reading.leaves {
            self.no_curve(*part);
        }
        self.curve();
        self.now();
        if let Some(best) = self.reading.best {
            self.best(&best);
        }
        self.sixty_degrees();
        if self.reading.shape == Shape::Curve {
            self.name_gap(strikes, "strikes");
        }
        for part in &self.reading.leaves {
            self.name_gap(*part, "leaves");
        }
        self.nothing_to_choose();
    }

    fn across(&self, part: f64) -> f64 {
        self.low.x + (self.high.x - self.low.x) * part
    }

    fn place(&self, part: f64, outcome: f64) -> DVec2 {
        let up = self.heights.part(outcome);
        DVec2::new(
            self.across(part),
            self.low.y + (self.high.y - self.low.y) * up,
        )
    }

    fn outcome_axis(&mut self, numbers: &[f64], texts: &[String]) {
        let letter = self.drawing.letter;
        for (number, text) in numbers.iter().zip(texts) {
            let (from, to) = (self.place(0.0, *number), self.place(1.0, *number));
            // Only a linear axis has a zero, and only a curve that changes its sign makes it a line to look at.
            let role = if *number == 0.0 {
                Role::Quiet
            } else {
                Role::Faint
            };
            self.drawing
                .picture
                .line(from, to, Stroke::solid(role, 1.0));
            let words = Words::new(text, Role::Quiet, letter);
            let x = from.x - 0.4 * letter - 0.5 * words.width();
            self.drawing.put(DVec2::new(x, from.y), words);
        }
        let words = self.reading.course.words();
        let scale = if self.heights.is_logarithmic() {
            " (log)"
        } else {
            ""
        };
        let full = [words.label, ", ", words.unit, scale].concat();
        let brief = [words.unit, scale].concat();
        self.name_axis(&full, &brief, 0.75 * letter);
    }

    /// Names an axis, in full where there is room, at the left of the picture's top or bottom.
    fn name_axis(&mut self, full: &str, brief: &str, y: f64) {
        let letter = self.drawing.letter;
        let width = self.drawing.picture.size.x - 4.0;
        let fits = text_width(full, letter, false) <= width;
        let words = Words::new(if fits { full } else { brief }, Role::Quiet, letter);
        let x = within(self.low.x, 2.0, width + 2.0 - words.width());
        self.drawing
            .put(DVec2::new(x + 0.5 * words.width(), y), words);
    }

    fn setting_axis(&mut self) {
        let (letter, course) = (self.drawing.letter, &self.reading.course);
        let width = self.high.x - self.low.x;
        let numbers = if course.against == Field::Approach {
            let step = if width > 34.0 * letter { 45.0 } else { 90.0 };
            (-4..=4)
                .map(|i| f64::from(i) * step)
                .filter(|x| x.abs() <= 180.0)
                .collect()
        } else {
            round_numbers(&course.range, width / letter / 2.4)
        };
        let unit = if course.against == Field::Approach {
            "°"
        } else {
            ""
        };
        let y = self.low.y + 1.05 * letter;
        for number in numbers {
            let at = DVec2::new(self.across(course.range.part(number)), self.low.y);
            let tick = DVec2::new(0.0, 0.3 * letter);
            self.drawing
                .line(at, at + tick, Stroke::solid(Role::Quiet, 1.0));
            let text = short(number, 3) + unit;
            let words = Words::new(&text, Role::Quiet, letter);
            let half = 0.5 * words.width();
            let x = within(at.x, half, self.drawing.picture.size.x - half);
            self.drawing.put(DVec2::new(x, y), words);
        }
        let (from, to) = (self.low, DVec2::new(self.high.x, self.low.y));
        self.drawing
            .picture
            .line(from, to, Stroke::solid(Role::Quiet, 1.0));
        let spec = course.against.spec();
        let (full, brief) = match course.against {
            Field::Approach => (
                "Approach angle: 0° from behind, 180° head-on".into(),
                spec.label,
            ),
            _ => ([spec.label, ", ", spec.unit].concat(), spec.unit),
        };
        let bottom = self.drawing.picture.size.y;
        self.name_axis(&full, brief, bottom - 0.75 * letter);
    }

    /// Hatches a part of the range where there is no curve.
    fn no_curve(&mut self, [from, to]: [f64; 2]) {
        let (left, right) = (self.across(from), self.across(to));
        if right - left < 1.0 {
            return;
        }
        let stroke = Stroke::solid(Role::Faint, 1.0);
        let (height, gap) = (self.low.y - self.high.y, 0.7 * self.drawing.letter);
        let count = ((right - left + height) / gap) as u32;
        for i in 1..=count {
            // A line from the lower left to the upper right, cut off at the sides.
            let foot = left - height + f64::from(i) * gap;
            let (start, end) = (foot.max(left), (foot + height).min(right));
            let y = |x: f64| self.low.y - (x - foot);
            let line = [DVec2::new(start, y(start)), DVec2::new(end, y(end))];
            if end > start {
                self.drawing.picture.line(line[0], line[1], stroke);
            }
        }
        for (part, x) in [(from, left), (to, right)] {
            if part > 0.0 && part < 1.0 {
                let (foot, top) = (DVec2::new(x, self.low.y), DVec2::new(x, self.high.y));
                let edge = Stroke::solid(Role::Quiet, 1.0).with(Dash::Dashed);
                self.drawing.line(foot, top, edge);
            }
        }
    }

    /// Names a part without a curve: in its middle, or beside it with an arrow where that is too narrow.
    fn name_gap(&mut self, [from, to]: [f64; 2], text: &str) {
        let (left, right) = (self.across(from), self.across(to));
        if right - left < 1.0 {
            return;
        }
        let letter = self.drawing.letter;
        let aside = String::from("← ") + text;
        let mut words = Words::new(text, Role::Quiet, letter);
        let mut x = 0.5 * (left + right);
        if words.width() + letter > right - left {
            words.text = &aside;
            x = right + 0.5 * (words.width() + letter);
        }
        let rows = [0.12, 0.88, 0.3, 0.7, 0.5];
        let centres = rows.map(|row| DVec2::new(x, self.high.lerp(self.low, row).y));
        let half = words.half_box();
        match self.drawing.room.first_free(&centres, half) {
            Some(free) => self.drawing.put(free, words),
            None => {
                self.drawing.place_near(&centres, words, true);
            }
        }
    }

    fn curve(&mut self) {
        let stroke = self.drawing.stroke(self.role(), 2.2, Dash::Solid);
        let points = &self.reading.points;
        let mut piece = Vec::with_capacity(points.len());
        for (i, point) in points.iter().enumerate() {
            let here = self.place(point.x, point.y);
            if point.y <= self.heights.high {
                // Where it comes in from beyond the top, it begins at the top.
                if piece.is_empty() && i > 0 {
                    piece.extend(self.crossing(points[i - 1], *point));
                }
                piece.push(here);
            } else if !piece.is_empty() {
                piece.extend(self.crossing(*point, points[i - 1]));
                self.drawing.path(std::mem::take(&mut piece), stroke);
            }
        }
        self.drawing.path(piece, stroke);
    }

    /// Where the curve meets the top between a point beyond it and one below.
    fn crossing(&self, beyond: DVec2, below: DVec2) -> Option<DVec2> {
        let top = self.heights.high;
        let (mut out, mut inside) = (beyond.x, below.x);
        for _ in 0..12 {
            let middle = 0.5 * (out + inside);
            let course = &self.reading.course;
            if course.value(course.range.at(middle)) > top {
                out = middle;
            } else {
                inside = middle;
            }
        }
        Some(self.place(inside, top))
    }

    /// The colour of the outcome: the turn and the change of velocity belong to both frames.
    fn role(&self) -> Role {
        match self.reading.course.measure {
            Measure::Turn | Measure::VelocityChange => Role::Ink,
            _ => Role::RoundSun,
        }
    }

    /// The present pass: a line at its setting, and a dot on the curve.
    fn now(&mut self) {
        let reading = self.reading;
        let course = &reading.course;
        let part = course.range.part(course.now());
        let (foot, top) = (
            self.place(part, self.heights.low),
            self.place(part, self.heights.high),
        );
        let line = self.drawing.stroke(Role::Ink, 1.0, Dash::Dotted);
        self.drawing.line(foot, top, line);
        let (text, at) = match reading.now {
            Some(now) if now.is_finite() => (reading.outcome_text(now), self.place(part, now)),
            Some(_) => ("leaves the Sun".into(), top),
            None => ("strikes".into(), foot.lerp(top, 0.5)),
        };
        if reading.now.is_some_and(f64::is_finite) {
            let radius = self.drawing.width(4.5);
            let stroke = self.drawing.stroke(Role::Ink, 2.0, Dash::Solid);
            self.drawing.bead(at, radius, stroke, true);
        }
        let text = String::from("now ") + &text;
        let words = Words::bold(&text, Role::Ink, self.drawing.letter);
        let along = [0.5, 0.3, 0.7, 0.15, 0.85].map(|part| foot.lerp(top, part));
        self.drawing.place_first(at, &along, words);
    }

    fn best(&mut self, best: &Best) {
        let course = &self.reading.course;
        let at = self.place(course.range.part(best.x), best.value);
        let radius = self.drawing.width(6.5);
        let stroke = self.drawing.stroke(self.role(), 2.2, Dash::Solid);
        // A ring, so that a present pass that is the best shows inside.
        self.drawing.picture.ring(at, radius, stroke);
        self.drawing.room.take_disc(at, radius);
        let name = match (course.measure, best.place) {
            (Measure::Turn | Measure::VelocityChange, Place::Surface) => "closest: ",
            (Measure::SpeedChange | Measure::EnergyChange, _) if best.is_loss => "most loss ",
            (Measure::SpeedChange | Measure::EnergyChange, _) => "best ",
            (Measure::Aphelion, _) => "farthest ",
            (Measure::Perihelion, _) => "nearest ",
            _ => "most ",
        };
        let outcome = self.reading.outcome_text(best.value);
        let text = match best.place {
            Place::Surface => [name, &outcome].concat(),
            // Where that is has a label of its own.
            _ if course.is_change_with_speed() => [name, &outcome].concat(),
            _ => {
                let at = if course.against == Field::VInfinity {
                    " at v∞ = "
                } else {
                    " at "
                };
                [name, &outcome, at, &self.reading.place_text(best.x)].concat()
            }
        };
        let words = Words::bold(&text, self.role(), self.drawing.letter);
        let points = self.reading.points.iter();
        let shown = points.filter(|point| point.y <= self.heights.high);
        let curve: Vec<_> = shown.map(|point| self.place(point.x, point.y)).collect();
        self.drawing.place_first(at, &every(12, &curve), words);
    }

    /// Where the change of velocity is largest, from the closed form.
    fn sixty_degrees(&mut self) {
        let course = &self.reading.course;
        let speed = course.circular_speed();
        if !course.is_change_with_speed()
            || self.reading.shape != Shape::Curve
            || course.range.at(course.range.part(speed)) < speed * 0.999
        {
            return;
        }
        let part = course.range.part(speed);
        let (foot, top) = (self.place(part, 0.0), self.place(part, course.value(speed)));
        let line = self.drawing.stroke(Role::Quiet, 1.0, Dash::Dashed);
        self.drawing.line(foot, top, line);
        let words = Words::new("v∞ = √(μ/r): turn 60°", Role::Ink, self.drawing.letter);
        let along = [0.5, 0.25, 0.75, 0.1].map(|part| foot.lerp(top, part));
        self.drawing.place_near(&along, words, true);
    }

    /// A sentence where there is no curve, or one that is flat.
    fn nothing_to_choose(&mut self) {
        let reading = self.reading;
        let text = match reading.shape {
            Shape::Curve => return,
            Shape::Strikes => "every pass here strikes".into(),
            Shape::Leaves => "every pass here leaves the Sun".into(),
            Shape::Flat { middle, within } => reading.flat_text(middle, within),
        };
        let words = Words::new(&text, Role::Ink, self.drawing.letter);
        let row = |part: f64| {
            DVec2::new(
                0.5 * (self.low.x + self.high.x),
                self.low.lerp(self.high, part).y,
            )
        };
        let rows = [0.75, 0.25, 0.9, 0.1, 0.6].map(row);
        self.drawing.place_near(&rows, words, true);
    }
}
