//! The quantities that are shown, each with its path: that of the JSON of `two-frames solve`, or `page.…` for what only
//! the page shows.

use glam::{DVec2, DVec3};

use crate::physics::units::{DEGREES_PER_RADIAN, KM_PER_AU, SECONDS_PER_HOUR, SECONDS_PER_YEAR};
use crate::physics::{Flyby, Outcome, Side, SunOrbit};

/// A solved pass as quantities are read from it.
#[derive(Clone, Copy, Debug)]
pub struct Pass<'a> {
    /// All answers of the physics.
    pub flyby: &'a Flyby,
    /// The probe's mass, kg.
    pub probe_mass_kg: f64,
}

/// A quantity: its path and its value.
#[derive(Clone, Copy, Debug)]
pub struct Quantity {
    /// Path in the JSON, parts joined by dots, or `page.…`.
    pub path: &'static str,
    /// The value; `None` where the JSON has null.
    pub get: fn(&Pass<'_>) -> Option<f64>,
}

macro_rules! quantities {
    ($($(#[$doc:meta])* $name:ident = $path:literal, $get:expr;)*) => {
        impl Quantity {
            $($(#[$doc])* pub const $name: Self = Self { path: $path, get: $get };)*
            /// Every quantity; those whose path does not start with `page.` are held to the JSON by a test.
            pub const ALL: &'static [Self] = &[$(Self::$name),*];
        }
    };
}

quantities! {
    /// Speed relative to the planet, far away, km/s.
    V_INFINITY = "planet_frame.v_infinity_km_s", |p| Some(p.flyby.encounter.v_infinity_km_s);
    /// Turn angle, degrees.
    TURN = "planet_frame.turn_deg", |p| p.after(p.flyby.turn_rad * DEGREES_PER_RADIAN);
    /// Eccentricity of the hyperbola.
    ECCENTRICITY = "planet_frame.eccentricity", |p| Some(p.flyby.eccentricity);
    /// Impact parameter, km.
    IMPACT_PARAMETER = "planet_frame.impact_parameter_km", |p| Some(p.flyby.impact_parameter_km);
    /// Periapsis distance, km.
    PERIAPSIS = "planet_frame.periapsis_km", |p| Some(p.flyby.encounter.periapsis_km);
    /// Speed at periapsis, km/s.
    PERIAPSIS_SPEED = "planet_frame.periapsis_speed_km_s", |p| p.after(p.flyby.periapsis_speed_km_s);
    /// Speed of the planet round the Sun, km/s.
    PLANET_SPEED = "planet.orbit_speed_km_s", |p| Some(p.flyby.encounter.planet.orbit_speed());
    /// Speed round the Sun before, km/s.
    SUN_SPEED_IN = "sun_frame.speed_in_km_s", |p| Some(p.flyby.sun_velocity_in.speed());
    /// Speed round the Sun after, km/s.
    SUN_SPEED_OUT = "sun_frame.speed_out_km_s", |p| p.after(p.flyby.sun_velocity_out.speed());
    /// Change of the speed round the Sun, km/s.
    SUN_SPEED_CHANGE = "sun_frame.speed_change_km_s", |p| p.after(p.flyby.speed_change_km_s());
    /// Length of the change of velocity, km/s.
    VELOCITY_CHANGE = "sun_frame.velocity_change_km_s", |p| p.after(p.flyby.velocity_change.length());
    /// Change of energy per unit mass round the Sun, km²/s².
    ENERGY_CHANGE = "sun_frame.energy_change_km2_s2", |p| p.after(p.flyby.energy_change_km2_s2);
    /// Perihelion before, AU.
    PERIHELION_BEFORE = "orbit_before.perihelion_au", |p| Some(perihelion_au(&p.flyby.orbit_before));
    /// Perihelion after, AU.
    PERIHELION_AFTER = "orbit_after.perihelion_au", |p| p.orbit_after().map(perihelion_au);
    /// Aphelion before, AU.
    APHELION_BEFORE = "orbit_before.aphelion_au", |p| aphelion_au(&p.flyby.orbit_before);
    /// Aphelion after, AU.
    APHELION_AFTER = "orbit_after.aphelion_au", |p| p.orbit_after().and_then(aphelion_au);
    /// Period before, years.
    PERIOD_BEFORE = "orbit_before.period_yr", |p| period_yr(&p.flyby.orbit_before);
    /// Period after, years.
    PERIOD_AFTER = "orbit_after.period_yr", |p| p.orbit_after().and_then(period_yr);
    /// Inclination before, degrees.
    INCLINATION_BEFORE = "orbit_before.inclination_deg", |p| inclination_deg(&p.flyby.orbit_before);
    /// Inclination after, degrees.
    INCLINATION_AFTER = "orbit_after.inclination_deg", |p| p.orbit_after().and_then(inclination_deg);
    /// Speed left far from the Sun before, km/s.
    LEFT_BEFORE = "orbit_before.speed_left_at_infinity_km_s", |p| p.flyby.orbit_before.speed_at_infinity_km_s;
    /// Speed left far from the Sun after, km/s.
    LEFT_AFTER = "orbit_after.speed_left_at_infinity_km_s",
        |p| p.orbit_after().and_then(|orbit| orbit.speed_at_infinity_km_s);
    /// Speed relative to the planet afterwards, km/s: the same as before, unless the probe has struck.
    RELATIVE_OUT = "page.speed_relative_after_km_s", |p| p.after(p.flyby.velocity_out.speed());
    /// Change of the speed relative to the planet, km/s.
    RELATIVE_CHANGE = "page.speed_relative_change_km_s",
        |p| p.after(p.flyby.velocity_out.speed() - p.flyby.velocity_in.speed());
    /// Angle between the incoming v-infinity and the planet's motion, degrees, 0..180.
    DIRECTION_IN = "page.direction_in_deg", |p| Some(from_forward(p.flyby.velocity_in.km_s));
    /// The same for the outgoing v-infinity.
    DIRECTION_OUT = "page.direction_out_deg", |p| p.after(from_forward(p.flyby.velocity_out.km_s));
    /// Energy round the Sun before, per unit mass, km²/s².
    ENERGY_BEFORE = "page.energy_before_km2_s2", |p| Some(p.flyby.orbit_before.energy_km2_s2);
    /// The same afterwards.
    ENERGY_AFTER = "page.energy_after_km2_s2", |p| p.after(p.flyby.orbit_after.energy_km2_s2);
    /// The planet's own speed afterwards, km/s.
    PLANET_SPEED_AFTER = "page.planet_speed_after_km_s", |p| p.after(p.flyby.encounter.planet.orbit_speed());
    /// Change of the planet's own speed, km/s.
    PLANET_SPEED_CHANGE = "page.planet_speed_change_km_s", |p| {
        let change = p.flyby.planet_velocity_change(p.probe_mass_kg).y;
        // On the flank only the rounding of a zero is left.
        p.after(if p.flyby.side == Side::Neither { 0.0 } else { change })
    };
    /// Height of periapsis above the surface, km.
    HEIGHT = "page.height_km", |p| Some(p.flyby.encounter.periapsis_km - p.flyby.encounter.planet.radius_km);
    /// Periapsis in planet radii.
    PERIAPSIS_RADII = "page.periapsis_radii", |p| Some(p.flyby.encounter.periapsis_km / p.flyby.encounter.planet.radius_km);
    /// Aim distance inside which the probe strikes, km.
    STRIKE_RADIUS = "page.strike_radius_km", |p| Some(p.flyby.approach().strike_radius_km());
    /// Approach angle, degrees.
    APPROACH_ANGLE = "page.approach_deg", |p| Some(p.flyby.encounter.approach_rad * DEGREES_PER_RADIAN);
    /// Aim angle, degrees.
    AIM_ANGLE = "page.aim_deg", |p| Some(p.flyby.encounter.aim_rad * DEGREES_PER_RADIAN);
    /// Speed at impact, km/s.
    STRIKE_SPEED = "page.strike_speed_km_s", |p| match p.flyby.outcome {
        Outcome::Strikes(strike) => Some(strike.speed_km_s),
        Outcome::Passes => None,
    };
    /// Time of impact, hours after what would have been periapsis: negative.
    STRIKE_TIME = "page.strike_time_h", |p| match p.flyby.outcome {
        Outcome::Strikes(strike) => Some(strike.time_s / SECONDS_PER_HOUR),
        Outcome::Passes => None,
    };
}

impl Pass<'_> {
    /// Something that comes after the pass, and not after an impact.
    fn after(&self, value: f64) -> Option<f64> {
        (!self.flyby.strikes()).then_some(value)
    }

    fn orbit_after(&self) -> Option<&SunOrbit> {
        (!self.flyby.strikes()).then_some(&self.flyby.orbit_after)
    }
}

fn perihelion_au(orbit: &SunOrbit) -> f64 {
    orbit.perihelion_km / KM_PER_AU
}

fn aphelion_au(orbit: &SunOrbit) -> Option<f64> {
    orbit.aphelion_km.map(|km| km / KM_PER_AU)
}

fn period_yr(orbit: &SunOrbit) -> Option<f64> {
    orbit.period_s.map(|s| s / SECONDS_PER_YEAR)
}

fn inclination_deg(orbit: &SunOrbit) -> Option<f64> {
    orbit.inclination_rad.map(|rad| rad * DEGREES_PER_RADIAN)
}

/// The angle of a velocity from the planet's direction of motion, degrees: with the sign of the approach angle in the
/// orbit plane (positive outward), without one out of it.
fn from_forward(velocity: DVec3) -> f64 {
    let size = DVec2::new(velocity.x, velocity.z).length();
    let in_plane = velocity.z.abs() < IN_PLANE * velocity.length();
    let across = if in_plane && velocity.x < 0.0 {
        -size
    } else {
        size
    };
    libm::atan2(across, velocity.y) * DEGREES_PER_RADIAN
}

/// A direction whose north component is smaller than this lies in the orbit plane.
const IN_PLANE: f64 = 1e-9;

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
