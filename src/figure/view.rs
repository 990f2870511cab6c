//! From the world to the picture and back: a centre, a scale, a size.

use glam::{DVec2, DVec3};

/// A window on a plane of the world. The world's x runs right and y runs up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    /// What lies in the middle of the picture, world units (km, or km/s in the velocity diagram).
    pub centre: DVec2,
    /// World units in one picture unit.
    pub scale: f64,
    /// Size of the picture, picture units.
    pub size: DVec2,
}

impl View {
    /// The view that shows the world's rectangle from `low` to `high` with a margin, picture units, on every side.
    pub fn fitting(low: DVec2, high: DVec2, size: DVec2, margin: f64) -> Self {
        let room = (size - DVec2::splat(2.0 * margin)).max(DVec2::splat(1.0));
        let scale = ((high - low) / room).max_element();
        Self {
            centre: 0.5 * (low + high),
            scale: if scale > 0.0 { scale } else { 1.0 },
            size,
        }
    }

    /// Where a point of the world's x-y plane is in the picture.
    pub fn place(&self, world: DVec2) -> DVec2 {
        let offset = (world - self.centre) / self.scale;
        0.5 * self.size + DVec2::new(offset.x, -offset.y)
    }

    /// Where a point of space is, seen from north.
    pub fn place_from_north(&self, world: DVec3) -> DVec2 {
        self.place(world.truncate())
    }

    /// Which point of the world a point of the picture is.
    pub fn world(&self, place: DVec2) -> DVec2 {
        let offset = place - 0.5 * self.size;
        self.centre + DVec2::new(offset.x, -offset.y) * self.scale
    }

    /// How much of an arrow fits into the picture, at most all of it: from a point of space, with a run in picture units
    /// along the world's axes. All of it where the point itself is out of sight.
    pub(super) fn part_inside(&self, from: DVec3, run: DVec3) -> f64 {
        let (place, run) = (self.place_from_north(from), DVec2::new(run.x, -run.y));
        let edge = 0.02 * self.size.min_element();
        let mut part = 1.0_f64;
        for (from, run, size) in [(place.x, run.x, self.size.x), (place.y, run.y, self.size.y)] {
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
