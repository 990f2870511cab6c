//! Which planet: one of the eight, or one of the reader's own.

use super::notice::Notice;
use crate::physics::units::KM_PER_AU;
use crate::physics::{Body, FlybyError, Planet};

/// The planet that a scenario names.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PlanetChoice {
    /// One of the Sun's eight planets.
    Known(Body),
    /// A planet made of three numbers.
    Custom(CustomPlanet),
}

/// A planet of the reader's own.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CustomPlanet {
    /// Gravitational parameter, km³/s².
    pub gm_km3_s2: f64,
    /// Radius, km.
    pub radius_km: f64,
    /// Radius of its circular orbit, AU.
    pub orbit_au: f64,
}

impl PlanetChoice {
    /// The eight planets with the key that the scenario text uses, in order from the Sun.
    pub const KNOWN: [(&'static str, Body); 8] = [
        ("mercury", Body::Mercury),
        ("venus", Body::Venus),
        ("earth", Body::Earth),
        ("mars", Body::Mars),
        ("jupiter", Body::Jupiter),
        ("saturn", Body::Saturn),
        ("uranus", Body::Uranus),
        ("neptune", Body::Neptune),
    ];
    /// The key of a planet of the reader's own.
    pub const CUSTOM: &'static str = "custom";

    /// The key in the scenario text.
    pub fn key(&self) -> &'static str {
        match self {
            Self::Custom(_) => Self::CUSTOM,
            Self::Known(body) => Self::KNOWN
                .iter()
                .find(|(_, known)| known == body)
                .map_or("", |(key, _)| key),
        }
    }

    /// The planet that a key names, if it is one of the eight.
    pub(super) fn known(key: &str) -> Result<Self, Notice> {
        Self::KNOWN
            .iter()
            .find(|(known, _)| *known == key)
            .map(|(_, body)| Self::Known(*body))
            .ok_or_else(|| Notice::UnknownPlanet(key.into()))
    }

    /// The planet in core units.
    ///
    /// # Errors
    /// A custom planet's number that is not finite and above 0.
    pub fn planet(&self) -> Result<Planet, FlybyError> {
        match *self {
            Self::Known(body) => Ok(Planet::of(body)),
            Self::Custom(own) => {
                Planet::custom(own.gm_km3_s2, own.radius_km, own.orbit_au * KM_PER_AU)
            }
        }
    }
}

impl From<Planet> for CustomPlanet {
    /// A custom planet to start from: the same numbers under one's own control.
    fn from(planet: Planet) -> Self {
        Self {
            gm_km3_s2: planet.gm,
            radius_km: planet.radius_km,
            orbit_au: planet.orbit_km / KM_PER_AU,
        }
    }
}
