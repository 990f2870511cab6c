//! One way of coming in. Each point of its aim plane is one pass, and closest distance and aim point follow from one
//! another.

use super::aim::AimPlane;
use super::angle::sincos;
use super::encounter::Encounter;
use super::error::FlybyError;
use super::frame::{PlanetFrame, PlanetMotion, SunFrame, Velocity};
use super::planet::Planet;

/// A planet and an incoming velocity: what all passes of one aim plane share. The fields follow from one another; make
/// one with [`Approach::of`].
///
/// The relations of the hyperbola are those of [`Flyby`](super::Flyby).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Approach {
    /// The planet.
    pub planet: Planet,
    /// Speed relative to the planet, far away, km/s.
    pub v_infinity_km_s: f64,
    /// Approach angle from the planet's velocity to the incoming v-infinity, rad, positive outward.
    pub approach_rad: f64,
    /// Crank angle, rad, 0 in the planet's orbit plane.
    pub crank_rad: f64,
    /// Semi-major axis a = μ/v∞² of every pass, km, counted positive.
    pub semi_major_axis_km: f64,
    /// The aim plane's axes S, T, R.
    pub aim_plane: AimPlane,
    /// The planet's motion.
    pub motion: PlanetMotion,
    /// Speed round the Sun before the pass, km/s.
    pub(super) sun_speed_in: f64,
}

impl Approach {
    /// The approach that an encounter has, whatever its periapsis and aim angle.
    ///
    /// # Errors
    /// As [`Flyby::solve`](super::Flyby::solve).
    pub fn of(encounter: &Encounter) -> Result<Self, FlybyError> {
        encounter.check()?;
        Ok(Self::unchecked(encounter))
    }

    pub(super) fn unchecked(encounter: &Encounter) -> Self {
        let Encounter {
            planet,
            v_infinity_km_s,
            approach_rad,
            crank_rad,
            ..
        } = *encounter;
        let aim_plane = AimPlane::facing(approach_rad, crank_rad);
        let motion = PlanetMotion::forward(planet.orbit_speed());
        let velocity_in = Velocity::new(aim_plane.s * v_infinity_km_s);
        Self {
            planet,
            v_infinity_km_s,
            approach_rad,
            crank_rad,
            semi_major_axis_km: planet.gm / v_infinity_km_s / v_infinity_km_s,
            aim_plane,
            motion,
            sun_speed_in: motion.velocity_seen_from_sun(velocity_in).speed(),
        }
    }

    /// v-infinity before, planet frame.
    pub fn velocity_in(&self) -> Velocity<PlanetFrame> {
        Velocity::new(self.aim_plane.s * self.v_infinity_km_s)
    }

    /// Velocity round the Sun before, with the planet's pull left out.
    pub fn sun_velocity_in(&self) -> Velocity<SunFrame> {
        self.motion.velocity_seen_from_sun(self.velocity_in())
    }

    /// Impact parameter b = r √(1 + 2a/r), km, of a pass that comes as close as `periapsis_km` to the centre.
    pub fn impact_parameter_km(&self, periapsis_km: f64) -> f64 {
        (periapsis_km * (periapsis_km + 2.0 * self.semi_major_axis_km)).sqrt()
    }

    /// Closest distance from the planet's centre, km, of a pass with impact parameter `b_km`: r = √(a² + b²) − a, without
    /// its cancellation.
    pub fn periapsis_km(&self, b_km: f64) -> f64 {
        let ratio = b_km / self.semi_major_axis_km;
        if ratio > 1.0 {
            let inverse = self.semi_major_axis_km / b_km;
            b_km / (inverse + (1.0 + inverse * inverse).sqrt())
        } else {
            b_km * (ratio / (1.0 + (1.0 + ratio * ratio).sqrt()))
        }
    }

    /// The impact parameter b = a/tan(δ/2), km, of a pass that turns by `turn_rad`.
    pub(super) fn distance_km(&self, turn_rad: f64) -> f64 {
        let (sin, cos) = sincos(0.5 * turn_rad);
        self.semi_major_axis_km * cos / sin
    }

    /// The impact parameter, km, at which a probe just grazes the surface: whatever is aimed nearer strikes.
    pub fn strike_radius_km(&self) -> f64 {
        self.impact_parameter_km(self.planet.radius_km)
    }

    /// The aim point (B·T, B·R), km, of a closest distance and an aim angle. An aim on an axis but for the rounding of its
    /// angle (π is no double) lies on it.
    pub fn aim_point_km(&self, periapsis_km: f64, aim_rad: f64) -> [f64; 2] {
        const ROUNDING: f64 = 1e-15;
        let b = self.impact_parameter_km(periapsis_km);
        let (sin, cos) = sincos(aim_rad);
        [cos, sin].map(|part| if part.abs() < ROUNDING { 0.0 } else { b * part })
    }

    /// The encounter whose aim point (B·T, B·R), km, is given. Straight at the centre the closest distance and the aim
    /// angle are both 0: no flyby, but a strike in any case.
    pub fn encounter(&self, [b_t, b_r]: [f64; 2]) -> Encounter {
        Encounter {
            planet: self.planet,
            v_infinity_km_s: self.v_infinity_km_s,
            approach_rad: self.approach_rad,
            crank_rad: self.crank_rad,
            periapsis_km: self.periapsis_km(length(b_t, b_r)),
            aim_rad: libm::atan2(b_r, b_t),
        }
    }
}

/// √(x² + y²), scaled so that the squares stay in range.
pub(super) fn length(x: f64, y: f64) -> f64 {
    let (large, small) = (x.abs().max(y.abs()), x.abs().min(y.abs()));
    if large == 0.0 {
        return 0.0;
    }
    let ratio = small / large;
    large * (1.0 + ratio * ratio).sqrt()
}
