//! The two frames of reference as types: mixing them up does not compile.
//!
//! This is the only file that adds or removes the planet's velocity.

use std::marker::PhantomData;

use glam::DVec3;

/// A frame of reference. Both frames share the axes of the planet at periapsis: `y` along its motion round the Sun,
/// `z` north, `x = y × z` away from the Sun.
pub trait Frame: Copy {}

/// The frame in which the planet stands still at the origin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlanetFrame;
impl Frame for PlanetFrame {}

/// The frame in which the Sun stands still. Near the planet its origin is the planet's centre at the moment of
/// periapsis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SunFrame;
impl Frame for SunFrame {}

/// A position in frame `F`, km.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Position<F: Frame> {
    /// Components along x, y, z in km.
    pub km: DVec3,
    frame: PhantomData<F>,
}

/// A velocity in frame `F`, km/s.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Velocity<F: Frame> {
    /// Components along x, y, z in km/s.
    pub km_s: DVec3,
    frame: PhantomData<F>,
}

impl<F: Frame> Position<F> {
    /// A position from its components in km.
    pub const fn new(km: DVec3) -> Self {
        Self {
            km,
            frame: PhantomData,
        }
    }
}

impl<F: Frame> Velocity<F> {
    /// A velocity from its components in km/s.
    pub const fn new(km_s: DVec3) -> Self {
        Self {
            km_s,
            frame: PhantomData,
        }
    }

    /// The speed, km/s.
    pub fn speed(self) -> f64 {
        self.km_s.length()
    }
}

/// How the planet moves in the Sun frame during the pass: straight ahead at constant velocity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlanetMotion {
    velocity: Velocity<SunFrame>,
}

impl PlanetMotion {
    /// A planet moving forward (+y) at `speed_km_s`.
    pub fn forward(speed_km_s: f64) -> Self {
        Self {
            velocity: Velocity::new(DVec3::Y * speed_km_s),
        }
    }

    /// The planet's velocity round the Sun.
    pub fn velocity(self) -> Velocity<SunFrame> {
        self.velocity
    }

    /// Where the planet is at `t` seconds after periapsis.
    pub fn position(self, t: f64) -> Position<SunFrame> {
        Position::new(self.velocity.km_s * t)
    }

    /// A velocity relative to the planet, seen from the Sun: the planet's velocity is added.
    pub fn velocity_seen_from_sun(self, v: Velocity<PlanetFrame>) -> Velocity<SunFrame> {
        Velocity::new(v.km_s + self.velocity.km_s)
    }

    /// A velocity round the Sun, seen from the planet: the planet's velocity is taken away.
    pub fn velocity_seen_from_planet(self, v: Velocity<SunFrame>) -> Velocity<PlanetFrame> {
        Velocity::new(v.km_s - self.velocity.km_s)
    }

    /// A position relative to the planet at `t` seconds after periapsis, seen from the Sun.
    pub fn position_seen_from_sun(self, r: Position<PlanetFrame>, t: f64) -> Position<SunFrame> {
        Position::new(r.km + self.velocity.km_s * t)
    }

    /// A position in the Sun frame at `t` seconds after periapsis, seen from the planet.
    pub fn position_seen_from_planet(self, r: Position<SunFrame>, t: f64) -> Position<PlanetFrame> {
        Position::new(r.km - self.velocity.km_s * t)
    }
}
