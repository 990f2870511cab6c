//! The aim plane (the trade's B-plane): where a probe is aimed, seen along its incoming direction.

use super::angle::sincos;
use glam::DVec3;

/// Below this distance between the incoming direction and the pole, north cannot serve as the reference direction.
const POLAR: f64 = 1e-9;

/// The plane through the planet's centre, perpendicular to the incoming direction, with its two axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AimPlane {
    /// Direction of the incoming v-infinity, unit vector S.
    pub s: DVec3,
    /// First axis, unit vector T = S × north, in the planet's orbit plane.
    pub t: DVec3,
    /// Second axis, unit vector R = S × T, pointing south for an approach in the orbit plane.
    pub r: DVec3,
}

impl AimPlane {
    /// The plane for an incoming direction given by the approach angle (from the planet's velocity, positive outward)
    /// and the crank angle (0 in the orbit plane), both in radians.
    pub fn facing(approach_rad: f64, crank_rad: f64) -> Self {
        let (sin_a, cos_a) = sincos(approach_rad);
        let (sin_k, cos_k) = sincos(crank_rad);
        let s = DVec3::new(sin_a * cos_k, cos_a, sin_a * sin_k);
        let polar = (s - DVec3::Z).length() < POLAR || (s + DVec3::Z).length() < POLAR;
        let reference = if polar { DVec3::X } else { DVec3::Z };
        let t = s.cross(reference).normalize();
        Self {
            s,
            t,
            r: s.cross(t),
        }
    }

    /// The unit vector of the aim angle `aim_rad`, measured from T towards R.
    pub fn direction(&self, aim_rad: f64) -> DVec3 {
        let (sin, cos) = sincos(aim_rad);
        self.t * cos + self.r * sin
    }
}
