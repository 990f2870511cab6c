//! Where a chart has no curve, or one with nothing to choose, and what it says there.

use glam::DVec2;

use super::chart::Chart;
use super::label::Words;
use super::picture::{Dash, Role, Stroke};
use crate::report::Shape;

impl Chart<'_> {
    /// Hatches a part of the range where there is no curve.
    pub(super) fn no_curve(&mut self, [from, to]: [f64; 2]) {
        let (left, right) = (self.across(from), self.across(to));
        if right - left < 1.0 {
            return;
        }
        let stroke = Stroke::solid(Role::Faint, 1.0);
        let (height, gap) = (self.low.y - self.high.y, 0.7 * self.drawing.letter);
        let count = ((right - left + height) / gap) as u32;
        for i in 0..count {
            // A line from the lower left to the upper right, cut off at the sides.
            let foot = left - height + f64::from(i + 1) * gap;
            let (start, end) = (foot.max(left), (foot + height).min(right));
            let y = |x: f64| self.low.y - (x - foot);
            let line = [DVec2::new(start, y(start)), DVec2::new(end, y(end))];
            if end > start {
                self.drawing.picture.line(line[0], line[1], stroke);
            }
        }
        for &(part, x) in &[(from, left), (to, right)] {
            if part > 0.0 && part < 1.0 {
                let (foot, top) = (DVec2::new(x, self.low.y), DVec2::new(x, self.high.y));
                let edge = Stroke::solid(Role::Quiet, 1.0).with(Dash::Dashed);
                self.drawing.line(foot, top, edge);
            }
        }
    }

    /// Names a part without a curve: in its middle, or beside it with an arrow where that is too narrow.
    pub(super) fn name_gap(&mut self, [from, to]: [f64; 2], text: &str) {
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

    /// A sentence where there is no curve, or one that is flat.
    pub(super) fn nothing_to_choose(&mut self) {
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
