//! What the plots share: lines across with numbers at their left, and ticks with numbers below.

use glam::DVec2;

use super::drawing::Drawing;
use super::label::Words;
use super::picture::{Role, Stroke};
use crate::decimal::within;

impl Drawing {
    /// A line across a plot, with its number at the left.
    pub(super) fn grid_line(&mut self, from: DVec2, to: DVec2, role: Role, text: &str) {
        self.picture.line(from, to, Stroke::solid(role, 1.0));
        let words = Words::new(text, Role::Quiet, self.letter);
        let x = from.x - 0.4 * self.letter - 0.5 * words.width();
        self.put(DVec2::new(x, from.y), words);
    }

    /// A tick below a plot, with its number, which stays inside the picture.
    pub(super) fn tick(&mut self, at: DVec2, text: &str) {
        let letter = self.letter;
        let end = at + DVec2::new(0.0, 0.3 * letter);
        self.line(at, end, Stroke::solid(Role::Quiet, 1.0));
        let words = Words::new(text, Role::Quiet, letter);
        let half = 0.5 * words.width();
        let x = within(at.x, half, self.picture.size.x - half);
        self.put(DVec2::new(x, at.y + 1.05 * letter), words);
    }
}
