//! The marks of a chart: its curve, the present pass, and the best there is.

use glam::DVec2;

use super::chart::Chart;
use super::label::Words;
use super::picture::{Dash, Role};
use crate::physics::{Measure, boundary};
use crate::report::{Best, Place, Shape};
use crate::scenario::Field;

impl Chart<'_> {
    pub(super) fn curve(&mut self) {
        let stroke = self.drawing.stroke(self.role(), 2.2, Dash::Solid);
        let points = &self.reading.points;
        let mut piece = Vec::with_capacity(points.len());
        for (i, point) in points.iter().enumerate() {
            let here = self.place(point.x, point.y);
            if point.y <= self.heights.high {
                // Where it comes in from beyond the top, it begins at the top.
                if piece.is_empty() && i > 0 {
                    piece.push(self.crossing(points[i - 1], *point));
                }
                piece.push(here);
            } else if !piece.is_empty() {
                piece.push(self.crossing(*point, points[i - 1]));
                self.drawing.path(std::mem::take(&mut piece), stroke);
            }
        }
        self.drawing.path(piece, stroke);
    }

    /// Where the curve meets the top between a point beyond it and one below.
    fn crossing(&self, beyond: DVec2, below: DVec2) -> DVec2 {
        let (course, top) = (&self.reading.course, self.heights.high);
        let is_beyond = |part| course.value(course.range.at(part)) > top;
        self.place(boundary([beyond.x, below.x], &is_beyond), top)
    }

    /// The colour of the outcome: the turn and the change of velocity belong to both frames.
    fn role(&self) -> Role {
        match self.reading.course.measure {
            Measure::Turn | Measure::VelocityChange => Role::Ink,
            _ => Role::RoundSun,
        }
    }

    /// The present pass: a line at its setting, and a dot on the curve. The dot's place, or another to name it at.
    pub(super) fn now(&mut self) -> DVec2 {
        let course = &self.reading.course;
        let [foot, top] = self.line_now();
        let line = self.drawing.stroke(Role::Ink, 1.0, Dash::Dotted);
        self.drawing.line(foot, top, line);
        match self.reading.now {
            Some(now) if now.is_finite() => {
                let at = self.place(course.range.part(course.now()), now);
                let radius = self.drawing.width(4.5);
                let stroke = self.drawing.stroke(Role::Ink, 2.0, Dash::Solid);
                self.drawing.bead(at, radius, stroke, true);
                at
            }
            _ => foot.lerp(top, 0.5),
        }
    }

    fn line_now(&self) -> [DVec2; 2] {
        let course = &self.reading.course;
        let part = course.range.part(course.now());
        [self.heights.low, self.heights.high].map(|height| self.place(part, height))
    }

    pub(super) fn name_now(&mut self, at: DVec2) {
        let text = match self.reading.now {
            Some(now) if now.is_finite() => self.reading.outcome_text(now),
            Some(_) => "leaves".into(),
            None => "strikes".into(),
        };
        let text = String::from("now ") + &text;
        let words = Words::bold(&text, Role::Ink, self.drawing.letter);
        let [foot, top] = self.line_now();
        let along = [0.5, 0.3, 0.7, 0.15, 0.85].map(|part| foot.lerp(top, part));
        self.drawing.place_first(at, &along, words);
    }

    pub(super) fn best(&mut self, best: &Best) {
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
            Place::Surface if name == "closest: " => [name, &outcome].concat(),
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
        let near = self.along_curve(course.range.part(best.x));
        self.drawing.place_first(at, &near, words);
    }

    /// Points of the curve, those nearest to a part of the range first.
    fn along_curve(&self, part: f64) -> Vec<DVec2> {
        let points = &self.reading.points;
        let middle = points.partition_point(|point| point.x < part);
        let mut near = Vec::new();
        let mut step = 0;
        while step < points.len() {
            for &at in &[middle + step, middle.wrapping_sub(step)] {
                if let Some(point) = points.get(at) {
                    near.push(self.place(point.x, point.y));
                }
            }
            step += 10;
        }
        near
    }

    /// Where the change of velocity is largest, from the closed form.
    pub(super) fn sixty_degrees(&mut self) {
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
}
