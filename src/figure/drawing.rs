//! A picture while it is drawn: its marks, the room that they take, and the one height of its letters.

use glam::DVec2;

use super::arrow::Arrow;
use super::picture::{Dash, Mark, Picture, Role, Stroke};
use super::room::Room;

pub(super) struct Drawing {
    pub(super) picture: Picture,
    pub(super) room: Room,
    /// Height of letters, picture units; widths grow with it.
    pub(super) letter: f64,
}

impl Drawing {
    pub(super) fn new(size: DVec2, letter: f64, title: String) -> Self {
        Self {
            picture: Picture::new(size, title),
            room: Room::new(size),
            letter,
        }
    }

    /// A width that grows with the picture.
    #[inline(never)] // Called from many places: a call is smaller than what it does. So is the next one.
    pub(super) fn width(&self, units: f64) -> f64 {
        units * self.letter / 13.0
    }

    /// A line's looks, its width growing with the picture.
    #[inline(never)]
    pub(super) fn stroke(&self, role: Role, units: f64, dash: Dash) -> Stroke {
        Stroke {
            role,
            width: self.width(units),
            dash,
        }
    }

    /// Draws a line through points that no label may cover.
    pub(super) fn path(&mut self, points: Vec<DVec2>, stroke: Stroke) {
        self.room.take_path(&points);
        self.picture.path(points, stroke);
    }

    /// Draws a straight line that no label may cover.
    pub(super) fn line(&mut self, from: DVec2, to: DVec2, stroke: Stroke) {
        self.path(vec![from, to], stroke);
    }

    /// Draws a velocity arrow that no label may cover.
    pub(super) fn arrow(&mut self, from: DVec2, to: DVec2, stroke: Stroke) {
        let arrow = Arrow::of(from, to, stroke);
        for [from, to] in arrow.shaft_lines() {
            self.room.take_line(from, to);
        }
        if let Some([left, right]) = arrow.head_corners() {
            self.room.take_path(&[left, to, right]);
        }
        self.picture.marks.push(Mark::Arrow(arrow));
    }

    /// Draws a bead, a dot or, before periapsis, a ring, that no label may cover.
    pub(super) fn bead(&mut self, at: DVec2, radius: f64, stroke: Stroke, filled: bool) {
        if filled {
            self.picture.dot(at, radius, stroke.role);
        } else {
            self.picture.hollow(at, radius, stroke);
        }
        self.room.take_disc(at, radius);
    }
}

/// Every so many of some points, the first one included.
pub(super) fn every(step: usize, points: &[DVec2]) -> Vec<DVec2> {
    points.chunks(step).map(|chunk| chunk[0]).collect()
}
