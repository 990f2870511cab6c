//! Passes worked out a second way for the tests of aiming: angles and rotations instead of closed forms.
//!
//! Nothing here calls the core's physics; only inputs (a planet, angles) and the constant GM of the Sun are shared.

use fastrand::Rng;
use glam::DVec3;
use std::f64::consts::PI;
use two_frames::physics::units::GM_SUN;
use two_frames::physics::{Approach, Encounter, Planet};

use crate::common::{BODIES, angle_between, logarithmic};

/// What an aim point leads to.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Route {
    /// Turn angle, rad.
    pub(crate) turn: f64,
    /// Unit vector from the planet to periapsis.
    pub(crate) periapsis: DVec3,
    /// Velocity round the Sun before and after, km/s.
    pub(crate) before: DVec3,
    pub(crate) after: DVec3,
    /// Distance of the planet from the Sun, km.
    orbit_km: f64,
}

impl Route {
    /// The pass of an encounter's approach that misses the centre by `b_km` in the direction `aim` from T towards R.
    ///
    /// The incoming direction is turned about the orbit's normal by Rodrigues' formula (T), the turn is 2 atan(a/b).
    pub(crate) fn of(encounter: &Encounter, b_km: f64, aim: f64) -> Self {
        let (v, planet) = (encounter.v_infinity_km_s, encounter.planet);
        let (sin_a, cos_a) = encounter.approach_rad.sin_cos();
        let (sin_k, cos_k) = encounter.crank_rad.sin_cos();
        let s = DVec3::new(sin_a * cos_k, cos_a, sin_a * sin_k);
        let t = s.cross(DVec3::Z).normalize();
        let miss = t * aim.cos() + s.cross(t) * aim.sin();
        let turn = 2.0 * (planet.gm / (v * v)).atan2(b_km);
        let normal = miss.cross(s);
        let outgoing = rodrigues(s, normal, turn);
        // At periapsis half of the turn is done, and the planet lies a right angle to the side.
        let along = rodrigues(s, normal, 0.5 * turn);
        let forward = DVec3::Y * (GM_SUN / planet.orbit_km).sqrt();
        Self {
            turn,
            periapsis: rodrigues(along, normal, -0.5 * PI),
            before: forward + s * v,
            after: forward + outgoing * v,
            orbit_km: planet.orbit_km,
        }
    }

    /// Change of the speed round the Sun, km/s.
    pub(crate) fn speed_change(&self) -> f64 {
        self.after.length() - self.before.length()
    }

    /// Twice the energy per unit mass round the Sun afterwards, km²/s².
    pub(crate) fn twice_energy(&self) -> f64 {
        self.after.length_squared() - 2.0 * GM_SUN / self.orbit_km
    }

    /// Eccentricity vector v × h / μ − r/r of the orbit afterwards. Any textbook of celestial mechanics. M
    pub(crate) fn eccentricity(&self) -> DVec3 {
        self.after.cross(self.momentum()) / GM_SUN - DVec3::X
    }

    /// Angular momentum round the Sun afterwards, km²/s.
    pub(crate) fn momentum(&self) -> DVec3 {
        (DVec3::X * self.orbit_km).cross(self.after)
    }

    /// p/(1 + e), km.
    pub(crate) fn perihelion(&self) -> f64 {
        self.momentum().length_squared() / GM_SUN / (1.0 + self.eccentricity().length())
    }

    /// One over the farthest distance, 1/km, from the two distances' product −h²/(2E): below 0 for a path that leaves.
    pub(crate) fn inverse_aphelion(&self) -> f64 {
        -self.twice_energy() * self.perihelion() / self.momentum().length_squared()
    }

    /// Angle between the orbit's normal and north, rad.
    pub(crate) fn inclination(&self) -> f64 {
        angle_between(self.momentum(), DVec3::Z)
    }
}

/// Rodrigues' formula: `v` turned about the unit vector `axis` by an angle, rad.
pub(crate) fn rodrigues(v: DVec3, axis: DVec3, angle: f64) -> DVec3 {
    let (sin, cos) = angle.sin_cos();
    v * cos + axis.cross(v) * sin + axis * (axis.dot(v) * (1.0 - cos))
}

/// One of the eight planets or, a third of the time, a planet that nobody has.
pub(crate) fn any_planet(rng: &mut Rng) -> Planet {
    if rng.u8(..3) > 0 {
        return Planet::of(BODIES[rng.usize(..BODIES.len())]);
    }
    let gm = logarithmic(rng, 1.0, 1e9);
    let radius = logarithmic(rng, 300.0, 1e6);
    let orbit = logarithmic(rng, 1e7, 1e10);
    Planet::custom(gm, radius, orbit).expect("positive numbers")
}

pub(crate) fn any_angle(rng: &mut Rng) -> f64 {
    (rng.f64() * 2.0 - 1.0) * PI
}

/// Any pass above the surface: any planet, approach, crank and aim, v-infinity 0.1 to 60 km/s.
pub(crate) fn any_pass(rng: &mut Rng) -> Encounter {
    let planet = any_planet(rng);
    Encounter {
        planet,
        v_infinity_km_s: logarithmic(rng, 0.1, 60.0),
        approach_rad: any_angle(rng),
        crank_rad: any_angle(rng),
        periapsis_km: planet.radius_km * logarithmic(rng, 1.0, 1e3),
        aim_rad: any_angle(rng),
    }
}

pub(crate) fn approach(encounter: &Encounter) -> Approach {
    Approach::of(encounter).unwrap_or_else(|error| panic!("{error:?} for {encounter:?}"))
}
