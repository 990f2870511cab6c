//! Taking hold of the picture: from the wished place of a handle to a field's allowed value. The sliders do the same.

use glam::DVec2;

use crate::decimal::within;
use crate::figure::{Grip, Look, Views};
use crate::physics::Flyby;
use crate::physics::units::DEGREES_PER_RADIAN;
use crate::scenario::{Field, Scenario};

/// Something held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Drag {
    grip: Grip,
    from: DVec2,
    views: Views,
    approach_deg: f64,
}

impl Drag {
    /// Takes hold at a place of the planet frame's picture.
    pub(super) fn new(grip: Grip, from: DVec2, views: Views, scenario: &Scenario) -> Self {
        let approach_deg = scenario.get(Field::Approach).unwrap_or(0.0);
        Self {
            grip,
            from,
            views,
            approach_deg,
        }
    }

    /// The views while this is held.
    pub(super) fn views(&self) -> Views {
        self.views
    }

    /// The field and the value that a place of the picture stands for.
    pub(super) fn meant(&self, place: DVec2, flyby: &Flyby) -> Option<(Field, f64)> {
        let world = self.views.planet.world(place);
        if !world.is_finite() {
            return None;
        }
        match self.grip {
            Grip::Periapsis => self
                .periapsis(world, flyby)
                .map(|radii| (Field::Periapsis, radii)),
            // From elsewhere the angle does not lie in the picture's plane, and there is no handle for it.
            Grip::Approach if self.views.look != Look::NORTH => None,
            Grip::Approach => self
                .approach(world)
                .map(|degrees| (Field::Approach, degrees)),
        }
    }

    /// The approach angle when it was taken hold of, turned by as much as the place has gone round the planet.
    fn approach(&self, world: DVec2) -> Option<f64> {
        let from = self.views.planet.world(self.from);
        if from == DVec2::ZERO || world == DVec2::ZERO {
            return None;
        }
        // Angles are counted from y (forward) towards x (outward), as the approach angle is.
        let angle = |place: DVec2| libm::atan2(place.x, place.y) * DEGREES_PER_RADIAN;
        let degrees = (self.approach_deg + angle(world) - angle(from)).round();
        Some(degrees - 360.0 * (degrees / 360.0).round())
    }

    /// The distance from the planet's centre, in planet radii; none where the direction to periapsis points at the eye.
    fn periapsis(&self, world: DVec2, flyby: &Flyby) -> Option<f64> {
        let (view, direction) = (&self.views.planet, flyby.periapsis_direction);
        let radii = world.length() / view.seen(direction) / flyby.encounter.planet.radius_km;
        let spec = Field::Periapsis.spec();
        let (low, high) = spec.slider;
        view.can_be_pulled(direction)
            .then(|| spec.rounded(within(radii, low, high)))
    }
}
