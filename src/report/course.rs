//! How an outcome of a pass goes with one of its settings, all others kept.

use super::measure_words::MeasureWords;
use super::spread::Spread;
use crate::physics::units::{DEGREES_PER_RADIAN, RADIANS_PER_DEGREE};
use crate::physics::{Approach, Encounter, Flyby, Measure};
use crate::scenario::Field;

/// An outcome as a function of one setting, both in display units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Course {
    encounter: Encounter,
    approach: Approach,
    /// The outcome.
    pub measure: Measure,
    /// The setting: the periapsis, the approach angle or v-infinity.
    pub against: Field,
    /// The setting's values that are looked at.
    pub range: Spread,
}

impl Course {
    /// The course of an outcome through a pass. Against any other setting it is that against the periapsis.
    pub(super) fn new(flyby: &Flyby, measure: Measure, against: Field) -> Self {
        let against = match against {
            Field::Approach | Field::VInfinity => against,
            _ => Field::Periapsis,
        };
        let mut course = Self {
            encounter: flyby.encounter,
            approach: flyby.approach(),
            measure,
            against,
            range: Spread::linear(-180.0, 180.0),
        };
        let spec = against.spec();
        let (mut low, mut high) = spec.slider;
        if against != Field::Approach {
            let now = course.now();
            (low, high) = (low.min(now), high.max(now));
            if course.is_change_with_speed() {
                let circular = course.circular_speed();
                low = low.min(circular).max(spec.min.min(now));
                high = high.max(1.2 * circular).min(spec.max.max(now));
            }
            course.range = Spread::logarithmic(low, high);
        }
        course
    }

    /// The same as far out as a periapsis may be.
    pub(super) fn farther(&self) -> Self {
        Self {
            range: Spread::logarithmic(self.range.low, Field::Periapsis.spec().max),
            ..*self
        }
    }

    /// What the outcome is called.
    pub fn words(&self) -> &'static MeasureWords {
        MeasureWords::of(self.measure)
    }

    /// The setting's present value.
    pub fn now(&self) -> f64 {
        match self.against {
            Field::Approach => self.encounter.approach_rad * DEGREES_PER_RADIAN,
            Field::VInfinity => self.encounter.v_infinity_km_s,
            _ => self.encounter.periapsis_km / self.encounter.planet.radius_km,
        }
    }

    /// The outcome at a value of the setting, as if the planet were a point; only the aphelion can be infinite.
    pub fn value(&self, x: f64) -> f64 {
        let mut encounter = self.encounter;
        match self.against {
            Field::Approach => encounter.approach_rad = x * RADIANS_PER_DEGREE,
            Field::VInfinity => encounter.v_infinity_km_s = x,
            _ => encounter.periapsis_km = x * encounter.planet.radius_km,
        }
        // No value in range can be refused where the present one is not; the approach does not depend on the periapsis.
        let approach = match self.against {
            Field::Periapsis => self.approach,
            _ => Approach::of(&encounter).unwrap_or(self.approach),
        };
        let aim_point = approach.aim_point_km(encounter.periapsis_km, encounter.aim_rad);
        self.measure.of(&approach.aimed(aim_point)) * self.words().factor
    }

    /// Where in the range the probe begins to pass; `None` where it strikes everywhere.
    pub fn passes_from(&self) -> Option<f64> {
        match self.against {
            Field::Periapsis => Some(1.0),
            _ => (!self.strikes()).then_some(self.range.low),
        }
    }

    /// Whether the present pass strikes.
    pub fn strikes(&self) -> bool {
        self.encounter.periapsis_km < self.encounter.planet.radius_km
    }

    /// Whether it is the change of velocity against v-infinity, whose largest value is known: with e = 1 + r v∞²/μ it is
    /// 2 v∞/e, largest at v∞ = √(μ/r), where e = 2 and the path turns by 60°.
    pub fn is_change_with_speed(&self) -> bool {
        self.measure == Measure::VelocityChange && self.against == Field::VInfinity
    }

    /// The speed of a circular orbit at the present periapsis, √(μ/r), km/s.
    pub fn circular_speed(&self) -> f64 {
        (self.encounter.planet.gm / self.encounter.periapsis_km).sqrt()
    }

    /// Whether the probe stays in the planet's orbit plane.
    pub(super) fn is_in_plane(&self) -> bool {
        let plane = &self.approach.aim_plane;
        let aim = plane.direction(self.encounter.aim_rad);
        plane.s.z.abs() < 1e-9 && aim.z.abs() < 1e-9
    }
}
