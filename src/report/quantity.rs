//! The quantities that the page shows, each with the path that it has in the JSON of `two-frames solve`.

use super::solution::Solution;
use crate::physics::Flyby;

/// A quantity of a [`Solution`]: its path and its value. A test holds each path to the JSON itself.
#[derive(Clone, Copy, Debug)]
pub struct Quantity {
    /// Path in the JSON, parts joined by dots.
    pub path: &'static str,
    /// The value; `None` where the JSON has null.
    pub get: fn(&Solution) -> Option<f64>,
}

macro_rules! quantities {
    ($($(#[$doc:meta])* $name:ident = $path:literal, $get:expr;)*) => {
        impl Quantity {
            $($(#[$doc])* pub const $name: Self = Self { path: $path, get: $get };)*
            /// Every quantity that the page shows.
            pub const ALL: &'static [Self] = &[$(Self::$name),*];
        }
    };
}

quantities! {
    /// Speed relative to the planet, far away, km/s.
    V_INFINITY = "planet_frame.v_infinity_km_s", |s| Some(s.planet_frame.v_infinity_km_s);
    /// Turn angle, degrees.
    TURN = "planet_frame.turn_deg", |s| s.planet_frame.turn_deg;
    /// Eccentricity of the hyperbola.
    ECCENTRICITY = "planet_frame.eccentricity", |s| Some(s.planet_frame.eccentricity);
    /// Impact parameter, km.
    IMPACT_PARAMETER = "planet_frame.impact_parameter_km", |s| Some(s.planet_frame.impact_parameter_km);
    /// Periapsis distance, km.
    PERIAPSIS = "planet_frame.periapsis_km", |s| Some(s.planet_frame.periapsis_km);
    /// Speed at periapsis, km/s.
    PERIAPSIS_SPEED = "planet_frame.periapsis_speed_km_s", |s| s.planet_frame.periapsis_speed_km_s;
    /// Speed of the planet round the Sun, km/s.
    PLANET_SPEED = "planet.orbit_speed_km_s", |s| Some(s.planet.orbit_speed_km_s);
    /// Speed round the Sun before, km/s.
    SUN_SPEED_IN = "sun_frame.speed_in_km_s", |s| Some(s.sun_frame.speed_in_km_s);
    /// Speed round the Sun after, km/s.
    SUN_SPEED_OUT = "sun_frame.speed_out_km_s", |s| s.sun_frame.speed_out_km_s;
    /// Change of the speed round the Sun, km/s.
    SUN_SPEED_CHANGE = "sun_frame.speed_change_km_s", |s| s.sun_frame.speed_change_km_s;
    /// Length of the change of velocity, km/s.
    VELOCITY_CHANGE = "sun_frame.velocity_change_km_s", |s| s.sun_frame.velocity_change_km_s;
    /// Change of energy per unit mass round the Sun, km²/s².
    ENERGY_CHANGE = "sun_frame.energy_change_km2_s2", |s| s.sun_frame.energy_change_km2_s2;
    /// Perihelion before, AU.
    PERIHELION_BEFORE = "orbit_before.perihelion_au", |s| s.orbit_before.perihelion_au;
    /// Perihelion after, AU.
    PERIHELION_AFTER = "orbit_after.perihelion_au", |s| s.orbit_after.perihelion_au;
    /// Aphelion before, AU.
    APHELION_BEFORE = "orbit_before.aphelion_au", |s| s.orbit_before.aphelion_au;
    /// Aphelion after, AU.
    APHELION_AFTER = "orbit_after.aphelion_au", |s| s.orbit_after.aphelion_au;
    /// Period before, years.
    PERIOD_BEFORE = "orbit_before.period_yr", |s| s.orbit_before.period_yr;
    /// Period after, years.
    PERIOD_AFTER = "orbit_after.period_yr", |s| s.orbit_after.period_yr;
    /// Inclination before, degrees.
    INCLINATION_BEFORE = "orbit_before.inclination_deg", |s| s.orbit_before.inclination_deg;
    /// Inclination after, degrees.
    INCLINATION_AFTER = "orbit_after.inclination_deg", |s| s.orbit_after.inclination_deg;
    /// Speed left far from the Sun before, km/s.
    LEFT_BEFORE = "orbit_before.speed_left_at_infinity_km_s", |s| s.orbit_before.speed_left_at_infinity_km_s;
    /// Speed left far from the Sun after, km/s.
    LEFT_AFTER = "orbit_after.speed_left_at_infinity_km_s", |s| s.orbit_after.speed_left_at_infinity_km_s;
}

/// The numbers of one moment of the pass, s after periapsis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Instant {
    /// Time after periapsis, s.
    pub time_s: f64,
    /// Distance from the planet's centre, km.
    pub distance_km: f64,
    /// Speed relative to the planet, km/s.
    pub planet_speed_km_s: f64,
    /// Speed round the Sun, km/s.
    pub sun_speed_km_s: f64,
}

impl Instant {
    /// The moment `time_s` seconds after periapsis.
    pub fn of(flyby: &Flyby, time_s: f64) -> Self {
        let (position, velocity) = flyby.seen_from_planet(time_s);
        Self {
            time_s,
            distance_km: position.km.length(),
            planet_speed_km_s: velocity.speed(),
            sun_speed_km_s: flyby.motion().velocity_seen_from_sun(velocity).speed(),
        }
    }
}
