//! The chart of an outcome against a setting: that closer is not always better, and what is best.

use glam::DVec2;

use super::chart_axes::{digits, heights, round_numbers};
use super::drawing::Drawing;
use super::label::{Words, text_width};
use super::picture::{Picture, Role, Stroke};
use super::room::Area;
use super::stage::letter_size;
use super::ticks::multiples;
use crate::decimal::within;
use crate::physics::{Flyby, Measure};
use crate::report::{ChartReading, Shape, Spread, short};
use crate::scenario::Field;

/// The chart of an outcome against the periapsis, the approach angle or v-infinity (whatever else is asked for counts as
/// the periapsis), as large as `size` allows.
pub fn outcome_chart(flyby: &Flyby, measure: Measure, against: Field, size: DVec2) -> Picture {
    chart_picture(&ChartReading::of(flyby, measure, against), size)
}

/// The chart that has been read.
pub fn chart_picture(reading: &ChartReading, size: DVec2) -> Picture {
    let letter = letter_size(size * DVec2::new(1.0, 1.3));
    let heights = heights(reading);
    let numbers = match reading.shape {
        Shape::Strikes | Shape::Leaves => Vec::new(),
        _ => round_numbers(&heights, 0.25 * size.y / letter),
    };
    let digits = if heights.is_logarithmic() {
        1
    } else {
        digits(&numbers)
    };
    let (mut texts, mut widest) = (Vec::new(), 2.0 * letter);
    for number in &numbers {
        let text = short(*number, digits);
        widest = text_width(&text, letter, false).max(widest);
        texts.push(text);
    }
    let left = 0.8 * letter + widest;
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
    chart.keep_margins_free();
    chart.outcome_axis(&numbers, &texts);
    chart.setting_axis();
    chart.draw();
    chart.drawing.picture
}

pub(super) struct Chart<'a> {
    pub(super) reading: &'a ChartReading,
    pub(super) heights: Spread,
    /// Lower left corner of the plot.
    pub(super) low: DVec2,
    /// Upper right corner of the plot.
    pub(super) high: DVec2,
    pub(super) drawing: Drawing,
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
        let now = self.now();
        if let Some(best) = self.reading.best {
            self.best(&best);
        }
        self.name_now(now);
        self.sixty_degrees();
        if self.reading.shape == Shape::Curve {
            self.name_gap(strikes, "strikes");
        }
        for part in &self.reading.leaves {
            self.name_gap(*part, "leaves");
        }
        self.nothing_to_choose();
    }

    /// Takes the room beside the axes, for the numbers.
    fn keep_margins_free(&mut self) {
        let size = self.drawing.picture.size;
        let corners = [
            (DVec2::ZERO, DVec2::new(self.low.x, size.y)),
            (DVec2::new(0.0, self.low.y), size),
        ];
        for (low, high) in corners {
            self.drawing.room.take(Area { low, high });
        }
    }

    pub(super) fn across(&self, part: f64) -> f64 {
        self.low.x + (self.high.x - self.low.x) * part
    }

    pub(super) fn place(&self, part: f64, outcome: f64) -> DVec2 {
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
            self.drawing.grid_line(from, to, role, text);
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
        let course = &self.reading.course;
        let width = (self.high.x - self.low.x) / self.drawing.letter;
        let (numbers, unit) = if course.against == Field::Approach {
            let step = if width > 34.0 { 45.0 } else { 90.0 };
            (multiples(step, -180.0, 180.0), "°")
        } else {
            (round_numbers(&course.range, width / 2.4), "")
        };
        for number in numbers {
            let at = DVec2::new(self.across(course.range.part(number)), self.low.y);
            self.drawing.tick(at, &(short(number, 3) + unit));
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
        let y = bottom - 0.75 * self.drawing.letter;
        self.name_axis(&full, brief, y);
    }
}
