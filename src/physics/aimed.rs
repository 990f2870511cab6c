//! What becomes of a probe that is aimed at a point of the aim plane. Closed forms: no angle is taken on the way to a
//! velocity, so that a map of many thousand aim points can follow a slider.

use glam::DVec3;

use super::approach::{Approach, length};
use super::frame::{PlanetFrame, SunFrame, Velocity};
use super::outcome::Side;
use super::sun_path::SunPath;
use super::units::GM_SUN;

/// One aim point of an approach, passed as if the planet were a point: whether the probe strikes first is for
/// [`Aimed::periapsis_km`] to say.
///
/// With u = (B·T T + B·R R)/a and w = 2/(1 + u²), the outgoing direction is S' = S − w (S + u): the half-angle formulas
/// of tan(δ/2) = a/b, written with the aim point itself. It is the inverse stereographic projection of the aim plane
/// onto the sphere of outgoing directions. Own derivation from those formulas; a test rotates S by the turn instead.
#[derive(Clone, Copy, Debug)]
pub struct Aimed<'a> {
    approach: &'a Approach,
    aim_point_km: [f64; 2],
    /// S + u, along the line from the planet to periapsis.
    lean: DVec3,
    /// w = 2 sin²(δ/2).
    weight: f64,
    outgoing: DVec3,
}

impl Approach {
    /// The pass aimed at (B·T, B·R), km.
    #[inline]
    pub fn aimed(&self, [b_t, b_r]: [f64; 2]) -> Aimed<'_> {
        let (t, r) = (b_t / self.semi_major_axis_km, b_r / self.semi_major_axis_km);
        let plane = &self.aim_plane;
        let miss = plane.t * t + plane.r * r;
        let weight = 2.0 / (1.0 + (t * t + r * r));
        Aimed {
            approach: self,
            aim_point_km: [b_t, b_r],
            lean: plane.s + miss,
            weight,
            outgoing: plane.s * (1.0 - weight) - miss * weight,
        }
    }
}

impl Aimed<'_> {
    /// The approach that it is aimed on.
    pub fn approach(&self) -> &Approach {
        self.approach
    }

    /// The part of the outgoing unit vector along the planet's motion, S'·y.
    #[inline]
    pub fn forward_part(&self) -> f64 {
        self.outgoing.y
    }

    /// v-infinity after, planet frame.
    #[inline]
    pub fn velocity_out(&self) -> Velocity<PlanetFrame> {
        Velocity::new(self.outgoing * self.approach.v_infinity_km_s)
    }

    /// Velocity round the Sun after, with the planet's pull left out.
    #[inline]
    pub fn sun_velocity_out(&self) -> Velocity<SunFrame> {
        self.approach
            .motion
            .velocity_seen_from_sun(self.velocity_out())
    }

    /// Speed round the Sun after, km/s.
    #[inline]
    pub fn sun_speed_km_s(&self) -> f64 {
        self.sun_velocity_out().speed()
    }

    /// Change of velocity, km/s, the same vector in both frames: from periapsis to the planet's centre.
    pub fn velocity_change(&self) -> DVec3 {
        self.lean * (-self.approach.v_infinity_km_s * self.weight)
    }

    /// Change of energy per unit mass round the Sun, V·Δv, km²/s².
    #[inline]
    pub fn energy_change_km2_s2(&self) -> f64 {
        let along = self.approach.v_infinity_km_s * self.weight * self.lean.y;
        -self.approach.motion.velocity().km_s.y * along
    }

    /// Change of the speed round the Sun, km/s: positive is a gain.
    ///
    /// From the energy, 2 V·Δv / (v + v'), because the difference of two nearly equal speeds would lose digits.
    #[inline]
    pub fn speed_change_km_s(&self) -> f64 {
        let sum = self.approach.sun_speed_in + self.sun_speed_km_s();
        if sum > 0.0 {
            2.0 * self.energy_change_km2_s2() / sum
        } else {
            0.0
        }
    }

    /// Energy round the Sun after, per unit mass, km²/s²; negative where the Sun keeps the probe.
    pub fn energy_km2_s2(&self) -> f64 {
        -0.5 * self.sun_path().inverse_semi_major_axis() * GM_SUN
    }

    /// The orbit round the Sun after, as far as its distances go.
    #[inline]
    pub fn sun_path(&self) -> SunPath {
        SunPath::through_planet(self.approach.planet.orbit_km, self.sun_velocity_out())
    }

    /// Inclination of the orbit after, rad, 0..π; the only outcome beside the turn that takes an arctangent. 0 for a
    /// path straight through the Sun, which has none.
    #[inline]
    pub fn inclination_rad(&self) -> f64 {
        let v = self.sun_velocity_out().km_s;
        libm::atan2(v.z.abs(), v.y)
    }

    /// Length of the change of velocity, km/s: 2 v∞ sin(δ/2).
    #[inline]
    pub fn velocity_change_km_s(&self) -> f64 {
        2.0 * self.approach.v_infinity_km_s * self.sin_half()
    }

    /// Turn angle δ, rad, 0..π, from tan(δ/2) = a/b: 1 − w would cancel near the axis.
    pub fn turn_rad(&self) -> f64 {
        2.0 * libm::atan2(self.approach.semi_major_axis_km, self.impact_parameter_km())
    }

    /// Impact parameter b, km.
    pub fn impact_parameter_km(&self) -> f64 {
        let [b_t, b_r] = self.aim_point_km;
        length(b_t, b_r)
    }

    /// Closest distance from the planet's centre, km: a (1/sin(δ/2) − 1) would cancel, so it is taken from the aim point.
    pub fn periapsis_km(&self) -> f64 {
        self.approach.periapsis_km(self.impact_parameter_km())
    }

    /// Unit vector from the planet's centre to periapsis. Scaled, because far out the square of a miss may be out of range.
    pub fn periapsis_direction(&self) -> DVec3 {
        let longest = self.lean.abs().max_element();
        (self.lean / longest).normalize()
    }

    /// Where periapsis lies.
    pub fn side(&self) -> Side {
        Side::of(self.periapsis_direction())
    }

    #[inline]
    fn sin_half(&self) -> f64 {
        (0.5 * self.weight).sqrt()
    }
}
