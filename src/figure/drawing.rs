//! A picture while it is drawn: its marks, the room that they take, and the one height of its letters.

use glam::DVec2;

use super::arrow::Arrow;
use super::picture::{Dash, Mark, Picture, Role, Stroke};
use super::room::Room;
use crate::physics::sincos;

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

    /// Draws a line over a map of colours: a wider one of the ground's colour under it makes it seen on every colour.
    pub(super) fn cased_line(&mut self, points: Vec<DVec2>, stroke: Stroke) {
        self.picture.path(points.clone(), self.casing(stroke));
        self.path(points, stroke);
    }

    /// Draws a circle over a map of colours, in the same way; only its edge takes room.
    pub(super) fn cased_ring(&mut self, centre: DVec2, radius: f64, edge: Stroke) {
        const PIECES: i32 = 64;
        self.picture.ring(centre, radius, self.casing(edge));
        self.picture.ring(centre, radius, edge);
        let points = curve(PIECES, &|part| {
            let (sin, cos) = sincos(std::f64::consts::TAU * part);
            centre + DVec2::new(cos, sin) * radius
        });
        self.room.take_path(&points);
    }

    /// What stands under a line over a map of colours; unbroken, so that the gaps of a dashed line are seen as well.
    fn casing(&self, stroke: Stroke) -> Stroke {
        Stroke::solid(Role::Ground, stroke.width + self.width(3.0))
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

/// Points at equal parts of a curve that runs from 0 to 1.
pub(super) fn curve(steps: i32, at: &dyn Fn(f64) -> DVec2) -> Vec<DVec2> {
    let mut points = Vec::new();
    let count = steps + 1;
    for i in 0..count {
        points.push(at(f64::from(i) / f64::from(steps)));
    }
    points
}

/// Every so many of some points, the first one included.
pub(super) fn every(step: usize, points: &[DVec2]) -> Vec<DVec2> {
    let mut some = Vec::new();
    for chunk in points.chunks(step) {
        some.push(chunk[0]);
    }
    some
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figure::room::Area;

    #[test]
    fn cased_lines_have_a_wider_one_of_the_ground_under_them() {
        let mut drawing = Drawing::new(DVec2::splat(100.0), 13.0, "A map".into());
        let stroke = drawing.stroke(Role::Ink, 1.5, Dash::Dashed);
        let points = vec![DVec2::splat(10.0), DVec2::splat(40.0)];
        drawing.cased_line(points.clone(), stroke);
        drawing.cased_ring(DVec2::splat(70.0), 20.0, stroke);
        let casing = Stroke::solid(Role::Ground, 4.5);
        let mut expected = Picture::new(DVec2::splat(100.0), "A map");
        expected.path(points.clone(), casing);
        expected.path(points, stroke);
        expected.ring(DVec2::splat(70.0), 20.0, casing);
        expected.ring(DVec2::splat(70.0), 20.0, stroke);
        assert_eq!(drawing.picture, expected);
    }

    #[test]
    fn a_cased_ring_leaves_room_inside() {
        let mut drawing = Drawing::new(DVec2::splat(100.0), 13.0, "A map".into());
        let stroke = drawing.stroke(Role::Ink, 1.5, Dash::Solid);
        drawing.cased_ring(DVec2::splat(50.0), 30.0, stroke);
        let taken = |x, y| {
            let half = DVec2::splat(4.0);
            drawing.room.taken(Area::around(DVec2::new(x, y), half))
        };
        assert_eq!(taken(50.0, 50.0), Some(0));
        for (x, y) in [(80.0, 50.0), (20.0, 50.0), (50.0, 80.0), (71.0, 71.0)] {
            assert!(taken(x, y) > Some(0), "{x}, {y}");
        }
    }
}
