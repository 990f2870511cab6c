//! What stands in the corners of a stage: the ruler, the direction of the Sun, the beads' interval.

use glam::DVec2;

use super::arrow::Arrow;
use super::drawing::Drawing;
use super::label::Words;
use super::picture::{Mark, Role, Stroke};
use super::room::Area;
use super::ticks::round_below;
use super::view::View;
use crate::report::{short, short_span};

impl Drawing {
    /// The ruler: a bar of a round number of planet radii, with its length in km.
    pub(super) fn ruler(&mut self, view: &View, radius_km: f64) {
        let letter = self.letter;
        let radii = round_below(0.32 * view.size.x * view.scale / radius_km);
        let bar = view.length(radii * radius_km);
        let text = format!("{} R = {}", short(radii, 1), kilometres(radii * radius_km));
        let words = Words::new(&text, Role::Quiet, letter);
        let half = DVec2::new(0.5 * bar.max(words.width()) + 2.0, 1.1 * letter);
        let Some(centre) = self.take_corner(half, Edge::Bottom) else {
            return;
        };
        let middle = centre + DVec2::new(0.0, 0.7 * letter);
        let (along, tick) = (DVec2::new(0.5 * bar, 0.0), DVec2::new(0.0, 0.3 * letter));
        let (left, right) = (middle - along, middle + along);
        for (from, to) in [
            (left, right),
            (left - tick, left + tick),
            (right - tick, right + tick),
        ] {
            self.picture.line(from, to, Stroke::solid(Role::Quiet, 1.5));
        }
        self.put(centre - DVec2::new(0.0, 0.4 * letter), words);
    }

    /// The arrow that says where the Sun is: to the left, far outside the picture.
    pub(super) fn sun_note(&mut self) {
        let words = Words::new("to the Sun", Role::Quiet, self.letter);
        let (text, arrow, gap) = (words.width(), 2.2 * self.letter, 0.5 * self.letter);
        let half = DVec2::new(0.5 * (text + arrow + gap), 0.75 * self.letter);
        let Some(centre) = self.take_corner(half, Edge::Top) else {
            return;
        };
        let left = centre.x - half.x;
        self.picture.marks.push(Mark::Arrow(Arrow::of(
            DVec2::new(left + arrow, centre.y),
            DVec2::new(left, centre.y),
            Stroke::solid(Role::Quiet, 1.5),
        )));
        self.put(DVec2::new(left + arrow + gap + 0.5 * text, centre.y), words);
    }

    /// What a step from bead to bead means.
    pub(super) fn bead_note(&mut self, bead_s: f64) {
        let text = format!("bead to bead: {}", short_span(bead_s));
        self.corner_note(Words::new(&text, Role::Quiet, self.letter));
    }

    /// Words in a corner, or along an edge.
    pub(super) fn corner_note(&mut self, words: Words<'_>) {
        let half = DVec2::new(0.5 * words.width(), 0.6 * self.letter);
        if let Some(centre) = self.take_corner(half, Edge::Bottom) {
            self.put(centre, words);
        }
    }

    /// Takes a free block in a corner or along the upper or lower edge, and says where its middle is; rows farther in
    /// are tried last.
    fn take_corner(&mut self, half: DVec2, first: Edge) -> Option<DVec2> {
        const ACROSS: [f64; 5] = [0.0, 1.0, 0.5, 0.25, 0.75];
        const DOWN: [f64; 7] = [0.0, 1.0, 0.08, 0.92, 0.16, 0.84, 0.5];
        let edge = half + DVec2::splat(0.5 * self.letter);
        let (low, run) = (edge, self.picture.size - edge - edge);
        for y in DOWN {
            let y = if first == Edge::Top { y } else { 1.0 - y };
            let row = ACROSS.map(|x| low + run * DVec2::new(x, y));
            if let Some(centre) = self.room.first_free(&row, half) {
                self.room.take(Area::around(centre, half));
                return Some(centre);
            }
        }
        None
    }
}

/// A length in km as people say it: "1.43 million km".
fn kilometres(km: f64) -> String {
    let (value, unit) = match km {
        km if km >= 1e9 => (km / 1e9, " billion km"),
        km if km >= 1e6 => (km / 1e6, " million km"),
        km => (km, " km"),
    };
    short(value, 3) + unit
}

/// Which edge to try first.
#[derive(Clone, Copy, PartialEq)]
enum Edge {
    Top,
    Bottom,
}
