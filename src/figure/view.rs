//! From the world to the picture and back: a centre, a scale, a size.

use glam::{DVec2, DVec3};

use super::look::{Axes, Look};

/// A direction of which less than this is seen lies too nearly along the line of sight to be pulled along.
const SHORTEST_PULL: f64 = 0.05;
/// A direction of which less than this is seen gets no arrow.
const SHORTEST_ARROW: f64 = 0.3;

/// A window on the world, seen along parallel lines of sight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    /// What runs right, up and towards the eye.
    pub axes: Axes,
    /// What lies in the middle of the picture: how far right and up it is in the world, world units (km, or km/s in the
    /// velocity diagram).
    pub centre: DVec2,
    /// World units in one picture unit.
    pub scale: f64,
    /// Size of the picture, picture units.
    pub size: DVec2,
}

impl View {
    /// The view from north that shows the rectangle from `low` to `high` with a margin, picture units, on every side.
    pub fn fitting(low: DVec2, high: DVec2, size: DVec2, margin: f64) -> Self {
        let room = (size - DVec2::splat(2.0 * margin)).max(DVec2::splat(1.0));
        let scale = ((high - low) / room).max_element();
        Self {
            axes: Look::NORTH.axes(),
            centre: 0.5 * (low + high),
            scale: if scale > 0.0 { scale } else { 1.0 },
            size,
        }
    }

    /// Where a point is in the picture that lies so far right and up in the world.
    pub fn place(&self, world: DVec2) -> DVec2 {
        let offset = (world - self.centre) / self.scale;
        0.5 * self.size + DVec2::new(offset.x, -offset.y)
    }

    /// Where a point of space is in the picture.
    #[inline(never)] // Called from many places: a call is smaller than what it does.
    pub fn place_in_space(&self, world: DVec3) -> DVec2 {
        self.place(self.axes.flat(world))
    }

    /// A direction of space as it runs in the picture, where y is down: the shorter, the more it points at the eye or
    /// away from it.
    pub fn run(&self, direction: DVec3) -> DVec2 {
        let flat = self.axes.flat(direction);
        DVec2::new(flat.x, -flat.y)
    }

    /// How much of the length of a direction, a unit vector, is seen: 0 to 1.
    pub fn seen(&self, direction: DVec3) -> f64 {
        self.axes.flat(direction).length()
    }

    /// Whether enough of a direction is seen to be pulled along it.
    pub fn can_be_pulled(&self, direction: DVec3) -> bool {
        self.seen(direction) > SHORTEST_PULL
    }

    /// Whether enough of a direction is seen for a small arrow to show it.
    pub(super) fn can_be_shown(&self, direction: DVec3) -> bool {
        self.seen(direction) > SHORTEST_ARROW
    }

    /// How far right and up in the world a point of the picture is.
    pub fn world(&self, place: DVec2) -> DVec2 {
        let offset = place - 0.5 * self.size;
        self.centre + DVec2::new(offset.x, -offset.y) * self.scale
    }

    /// How much of an arrow fits into the picture, at most all of it: from a point of space, with a run in space that is
    /// measured in picture units. All of it where the point itself is out of sight.
    pub(super) fn part_inside(&self, from: DVec3, run: DVec3) -> f64 {
        let (place, run) = (self.place_in_space(from), self.run(run));
        let edge = 0.02 * self.size.min_element();
        let mut part = 1.0_f64;
        for &(from, run, size) in &[(place.x, run.x, self.size.x), (place.y, run.y, self.size.y)] {
            let room = if run > 0.0 {
                size - edge - from
            } else {
                edge - from
            };
            if run != 0.0 {
                part = part.min(room / run);
            }
        }
        if part > 0.0 { part } else { 1.0 }
    }

    /// A length of the world in picture units.
    pub fn length(&self, world: f64) -> f64 {
        world / self.scale
    }

    /// Whether a place lies inside the picture, `margin` units from every edge.
    pub fn holds(&self, place: DVec2, margin: f64) -> bool {
        place.cmpge(DVec2::splat(margin)).all()
            && place.cmple(self.size - DVec2::splat(margin)).all()
    }
}
