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
