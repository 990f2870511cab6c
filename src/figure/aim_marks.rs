//! The marks of the aim plane: the planet, what a close pass would meet, the aim, periapsis, the answer to the wish.

use glam::DVec2;

use super::aim_plane::AimPicture;
use super::picture::{Dash, Role, Stroke};
use super::room::Area;
use crate::physics::Zone;
use crate::report::Aiming;

impl AimPicture<'_> {
    /// The planet, the circle inside which the probe strikes, and what a close pass would meet.
    pub(super) fn planet(&mut self) {
        let centre = self.place([0.0, 0.0]);
        let strike = self.length(self.approach.strike_radius_km());
        let planet = &self.approach.planet;
        for zone in planet.zones {
            if let Some(radius) = self.zone_radius(zone) {
                let stroke = self.drawing.stroke(Role::Quiet, 1.2, Dash::Dotted);
                self.drawing.cased_ring(centre, radius, stroke);
            }
        }
        let edge = self.drawing.stroke(Role::Ink, 1.6, Dash::Solid);
        self.drawing.picture.hollow(centre, strike, edge);
        let edge = self.drawing.stroke(Role::Ink, 1.0, Dash::Solid);
        let radius = self.length(planet.radius_km);
        self.drawing
            .picture
            .disc(centre, radius, Some(Role::Planet), Some(edge));
        self.drawing.room.take_disc(centre, radius);
    }

    /// The radius, picture units, of the aim circle inside which a pass meets something; none where that is not clear of the
    /// strike circle or does not fit into the map.
    pub(super) fn zone_radius(&self, zone: &Zone) -> Option<f64> {
        let strike = self.length(self.approach.strike_radius_km());
        let radius = self.length(self.approach.impact_parameter_km(zone.to_km));
        (2.0 * radius < self.side && radius > 1.02 * strike).then_some(radius)
    }

    /// The aim, the place of periapsis behind it, and the answer to the wish.
    pub(super) fn marks(&mut self) {
        let flyby = self.scene.flyby;
        self.answer();
        let edge = self.drawing.stroke(Role::Ink, 1.5, Dash::Solid);
        self.drawing
            .bead(self.periapsis(), self.drawing.width(3.4), edge, false);
        let at = self.place(flyby.aim_point_km);
        let edge = self.drawing.stroke(Role::Ink, 2.0, Dash::Solid);
        self.drawing.bead(at, self.drawing.width(7.0), edge, false);
        self.drawing
            .picture
            .dot(at, self.drawing.width(2.8), Role::Ink);
        // Names stay off the marks even where they may break a line.
        for &(at, radius) in &[(at, 7.0), (self.periapsis(), 4.0)] {
            let half = DVec2::splat(self.drawing.width(radius));
            self.drawing.room.take_words(Area::around(at, half));
        }
    }

    /// A cross where the answer to the wish is, or an arrow at the edge that points to where it is beyond the map.
    fn answer(&mut self) {
        let Some((place, _)) = self.answer_place() else {
            return;
        };
        let size = self.drawing.width(6.0);
        let centre = self.place([0.0, 0.0]);
        let out = (place - centre) / (0.5 * self.side);
        let far = out.abs().max_element();
        let stroke = self.drawing.stroke(Role::Ink, 1.8, Dash::Solid);
        if far > 1.0 {
            let edge = centre + out * (0.5 * self.side / far);
            let from = edge - out.normalize_or_zero() * (3.0 * size);
            let casing = Stroke::solid(Role::Ground, stroke.width + self.drawing.width(3.0));
            self.drawing.line(from, edge, casing);
            self.drawing.arrow(from, edge, stroke);
        } else {
            for &across in &[DVec2::new(size, 0.0), DVec2::new(0.0, size)] {
                self.drawing
                    .cased_line(vec![place - across, place + across], stroke);
            }
        }
    }

    /// Where the answer to the wish is and how far from the planet's centre, km, unless it is the present aim or needs
    /// another approach.
    pub(super) fn answer_place(&self) -> Option<(DVec2, f64)> {
        let aiming = self
            .scene
            .aiming
            .filter(|aiming| self.shares_approach(aiming))?;
        let place = self.place(aiming.flyby.aim_point_km);
        let aim = self.place(self.scene.flyby.aim_point_km);
        let km = aiming.flyby.impact_parameter_km;
        (place.distance(aim) > self.drawing.width(6.0)).then_some((place, km))
    }

    fn shares_approach(&self, aiming: &Aiming) -> bool {
        aiming.flyby.encounter.approach_rad.to_bits() == self.approach.approach_rad.to_bits()
    }

    /// Where periapsis lies, seen along the incoming direction.
    pub(super) fn periapsis(&self) -> DVec2 {
        let plane = &self.approach.aim_plane;
        let at = self.scene.flyby.periapsis_direction * self.scene.flyby.encounter.periapsis_km;
        self.place([at.dot(plane.t), at.dot(plane.r)])
    }
}
