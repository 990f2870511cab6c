//! What all four pictures share: the pass, the moment, one scale for both stages.

use glam::DVec2;

use super::look::Look;
use super::track::{Sample, Track};
use super::view::View;
use crate::physics::Flyby;

/// The pass at one moment, ready to be drawn.
#[derive(Clone, Copy, Debug)]
pub struct Scene<'a> {
    /// The solved pass.
    pub flyby: &'a Flyby,
    /// The same pass, sampled.
    pub track: &'a Track,
    /// The moment shown, s after periapsis.
    pub time_s: f64,
}

impl Scene<'_> {
    /// The moment, kept within what is shown.
    pub fn now(&self) -> f64 {
        self.track.clamp(self.time_s)
    }

    /// The highest speed in either frame during what is shown, km/s: velocity arrows are drawn in proportion to it.
    pub fn top_speed(&self) -> f64 {
        let fastest =
            |top: f64, sample: &Sample| top.max(sample.relative_speed).max(sample.sun_speed);
        self.track
            .samples()
            .fold(self.flyby.motion().velocity().speed(), fastest)
    }

    /// The planet's radius, km.
    pub fn radius_km(&self) -> f64 {
        self.flyby.encounter.planet.radius_km
    }
}

/// The views of the two stages: each has its own centre, both have one scale and are seen from one side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Views {
    /// From where both are seen.
    pub look: Look,
    /// The planet frame's view.
    pub planet: View,
    /// The Sun frame's view.
    pub sun: View,
}

/// How much larger than the path in the planet frame the scene may become to take in the path in the Sun frame.
const LARGEST_SHRINK: f64 = 1.8;

impl Views {
    /// Views that show the whole pass, or as much of it in the Sun frame as fits without making the planet frame tiny;
    /// `zoom` above 1 comes closer.
    pub fn fit(scene: &Scene<'_>, look: Look, size: DVec2, zoom: f64) -> Self {
        let axes = look.axes();
        let radius = DVec2::splat(scene.radius_km());
        let mut planet = Bounds::of(-radius, radius);
        let mut sun = Bounds::of(-radius, radius);
        let mut near = Bounds::of(-radius, radius);
        let motion = scene.flyby.motion();
        let close = 4.0 * scene.flyby.encounter.periapsis_km;
        for sample in scene.track.samples() {
            planet.add(axes.flat(sample.relative_km));
            for &place in &[sample.in_sun_frame_km, motion.position(sample.time_s).km] {
                let place = axes.flat(place);
                sun.add(place);
                if sample.relative_km.length() < close {
                    near.add(place);
                }
            }
        }
        let margin = 0.06 * size.min_element();
        let whole = planet.view(size, margin);
        let wanted = sun.view(size, margin);
        let close_up = near.view(size, margin);
        let scale = wanted
            .scale
            .min((LARGEST_SHRINK * whole.scale).max(close_up.scale))
            .max(whole.scale);
        // When the Sun frame's path does not fit, its middle part is the one to see.
        let sun_centre = if scale < wanted.scale {
            close_up.centre
        } else {
            wanted.centre
        };
        let at = |centre| View {
            axes,
            centre,
            scale: scale / zoom,
            size,
        };
        Self {
            look,
            planet: at(whole.centre),
            sun: at(sun_centre),
        }
    }
}

impl Views {
    /// Length of a velocity arrow, picture units for each km/s: one for both stages and for the whole pass, so that lengths
    /// can be compared, and so short that at the telling moment every arrow ends inside its picture.
    pub(super) fn per_km_s(&self, scene: &Scene<'_>) -> f64 {
        let (time_s, motion) = (scene.track.telling_s, scene.flyby.motion());
        let (place, velocity) = scene.flyby.seen_from_planet(time_s);
        let longest = 0.36 * self.planet.size.min_element() / scene.top_speed();
        let (sun_place, sun_velocity) = (
            motion.position_seen_from_sun(place, time_s),
            motion.velocity_seen_from_sun(velocity),
        );
        let mut part: f64 = 1.0;
        for &(view, place, velocity) in &[
            (&self.planet, place.km, velocity.km_s),
            (&self.sun, sun_place.km, sun_velocity.km_s),
            (
                &self.sun,
                motion.position(time_s).km,
                motion.velocity().km_s,
            ),
        ] {
            part = part.min(view.part_inside(place, velocity * longest));
        }
        longest * part
    }
}

/// A growing rectangle.
struct Bounds {
    low: DVec2,
    high: DVec2,
}

impl Bounds {
    fn of(low: DVec2, high: DVec2) -> Self {
        Self { low, high }
    }

    fn add(&mut self, place: DVec2) {
        self.low = self.low.min(place);
        self.high = self.high.max(place);
    }

    fn view(&self, size: DVec2, margin: f64) -> View {
        View::fitting(self.low, self.high, size, margin)
    }
}
