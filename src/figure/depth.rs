//! What the planet's disc hides and what lies in front of it.

use glam::DVec3;

use super::picture::Dash;
use super::stage::Stage;
use crate::decimal::within;

impl Stage<'_> {
    /// How far a straight piece of space is in front of the planet's centre where it comes nearest to the middle of the
    /// disc, km; negative behind it, 0 where the piece does not touch the disc.
    pub(super) fn in_front_km(&self, from: DVec3, to: DVec3) -> f64 {
        let centre = self.planet_in_space(self.scene.now());
        let axes = &self.view.axes;
        let (start, run) = (from - centre, to - from);
        let (flat, flat_run) = (axes.flat(start), axes.flat(run));
        let long = flat_run.length_squared();
        let part = if long > 0.0 {
            within(-flat.dot(flat_run) / long, 0.0, 1.0)
        } else {
            0.0
        };
        if (flat + flat_run * part).length() < self.scene.radius_km() {
            (start + run * part).dot(axes.toward)
        } else {
            0.0
        }
    }

    /// Whether a piece of space belongs to what is painted over the disc.
    pub(super) fn is_in_front(&self, from: DVec3, to: DVec3) -> bool {
        self.in_front_km(from, to) > 0.0
    }

    /// Whether the disc hides a point.
    pub(super) fn is_hidden(&self, point: DVec3) -> bool {
        self.in_front_km(point, point) < 0.0
    }

    /// Dotted where the disc hides a point.
    pub(super) fn dash_at(&self, point: DVec3) -> Dash {
        if self.is_hidden(point) {
            Dash::Dotted
        } else {
            Dash::Solid
        }
    }
}
