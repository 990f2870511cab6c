//! A flyby as labelled values with units in their names: what `two-frames solve` prints, and the paths that every
//! number on the page carries. Changed only with a version bump.

use glam::DVec3;
use serde::Serialize;

use crate::physics::units::{DEGREES_PER_RADIAN, KM_PER_AU, SECONDS_PER_YEAR};
use crate::physics::{Flyby, Side, SunOrbit};
use crate::scenario::Scenario;

/// One solved pass. A value that does not exist is `None`, null in JSON: the aphelion of an escape, or everything that
/// would come after an impact.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[allow(
    missing_docs,
    reason = "each name says quantity and unit; the physics types say what each means"
)]
pub struct Solution {
    pub scenario: Scenario,
    pub outcome: &'static str,
    pub planet: PlanetPart,
    pub planet_frame: PlanetFramePart,
    pub sun_frame: SunFramePart,
    pub orbit_before: OrbitPart,
    pub orbit_after: OrbitPart,
}

/// The planet's numbers.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[allow(missing_docs, reason = "each name says quantity and unit")]
pub struct PlanetPart {
    pub name: &'static str,
    pub gm_km3_s2: f64,
    pub radius_km: f64,
    pub orbit_radius_km: f64,
    pub orbit_speed_km_s: f64,
}

/// The pass as the planet sees it. Vectors are along x (away from the Sun), y (forward), z (north).
#[derive(Clone, Debug, PartialEq, Serialize)]
#[allow(missing_docs, reason = "each name says quantity and unit")]
pub struct PlanetFramePart {
    pub v_infinity_km_s: f64,
    pub eccentricity: f64,
    pub semi_major_axis_km: f64,
    pub turn_deg: Option<f64>,
    pub impact_parameter_km: f64,
    pub b_t_km: f64,
    pub b_r_km: f64,
    pub periapsis_km: f64,
    pub periapsis_speed_km_s: Option<f64>,
    pub periapsis_direction: Option<[f64; 3]>,
    pub velocity_in_km_s: [f64; 3],
    pub velocity_out_km_s: Option<[f64; 3]>,
}

/// The pass as the Sun sees it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[allow(missing_docs, reason = "each name says quantity and unit")]
pub struct SunFramePart {
    pub velocity_in_km_s: [f64; 3],
    pub velocity_out_km_s: Option<[f64; 3]>,
    pub speed_in_km_s: f64,
    pub speed_out_km_s: Option<f64>,
    pub speed_change_km_s: Option<f64>,
    pub velocity_change_km_s: Option<f64>,
    pub energy_change_km2_s2: Option<f64>,
    pub side: Option<&'static str>,
}

/// An orbit round the Sun; all null after an impact.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
#[allow(missing_docs, reason = "each name says quantity and unit")]
pub struct OrbitPart {
    pub semi_major_axis_au: Option<f64>,
    pub eccentricity: Option<f64>,
    pub perihelion_au: Option<f64>,
    pub aphelion_au: Option<f64>,
    pub period_yr: Option<f64>,
    pub inclination_deg: Option<f64>,
    pub speed_left_at_infinity_km_s: Option<f64>,
}

impl Solution {
    /// The labelled values of a solved scenario.
    pub fn new(scenario: &Scenario, flyby: &Flyby) -> Self {
        let planet = flyby.encounter.planet;
        let passes = !flyby.strikes();
        Self {
            scenario: *scenario,
            outcome: if passes { "passes" } else { "strikes" },
            planet: PlanetPart {
                name: planet.name,
                gm_km3_s2: planet.gm,
                radius_km: planet.radius_km,
                orbit_radius_km: planet.orbit_km,
                orbit_speed_km_s: planet.orbit_speed(),
            },
            planet_frame: PlanetFramePart::new(flyby, passes),
            sun_frame: SunFramePart::new(flyby, passes),
            orbit_before: OrbitPart::new(&flyby.orbit_before),
            orbit_after: if passes {
                OrbitPart::new(&flyby.orbit_after)
            } else {
                OrbitPart::default()
            },
        }
    }

    /// Whether the probe strikes the planet.
    pub fn strikes(&self) -> bool {
        self.outcome == "strikes"
    }
}

impl PlanetFramePart {
    fn new(flyby: &Flyby, passes: bool) -> Self {
        let [b_t_km, b_r_km] = flyby.aim_point_km;
        Self {
            v_infinity_km_s: flyby.encounter.v_infinity_km_s,
            eccentricity: flyby.eccentricity,
            semi_major_axis_km: flyby.semi_major_axis_km,
            turn_deg: passes.then_some(flyby.turn_rad * DEGREES_PER_RADIAN),
            impact_parameter_km: flyby.impact_parameter_km,
            b_t_km,
            b_r_km,
            periapsis_km: flyby.encounter.periapsis_km,
            periapsis_speed_km_s: passes.then_some(flyby.periapsis_speed_km_s),
            periapsis_direction: passes.then(|| components(flyby.periapsis_direction)),
            velocity_in_km_s: components(flyby.velocity_in.km_s),
            velocity_out_km_s: passes.then(|| components(flyby.velocity_out.km_s)),
        }
    }
}

impl SunFramePart {
    fn new(flyby: &Flyby, passes: bool) -> Self {
        let side = match flyby.side {
            Side::Behind => "behind",
            Side::Ahead => "ahead",
            Side::Neither => "neither",
        };
        Self {
            velocity_in_km_s: components(flyby.sun_velocity_in.km_s),
            velocity_out_km_s: passes.then(|| components(flyby.sun_velocity_out.km_s)),
            speed_in_km_s: flyby.sun_velocity_in.speed(),
            speed_out_km_s: passes.then(|| flyby.sun_velocity_out.speed()),
            speed_change_km_s: passes.then(|| flyby.speed_change_km_s()),
            velocity_change_km_s: passes.then(|| flyby.velocity_change.length()),
            energy_change_km2_s2: passes.then_some(flyby.energy_change_km2_s2),
            side: passes.then_some(side),
        }
    }
}

impl OrbitPart {
    fn new(orbit: &SunOrbit) -> Self {
        let au = |km: f64| km / KM_PER_AU;
        Self {
            semi_major_axis_au: orbit.semi_major_axis_km.map(au),
            eccentricity: Some(orbit.eccentricity),
            perihelion_au: Some(au(orbit.perihelion_km)),
            aphelion_au: orbit.aphelion_km.map(au),
            period_yr: orbit.period_s.map(|s| s / SECONDS_PER_YEAR),
            inclination_deg: orbit.inclination_rad.map(|rad| rad * DEGREES_PER_RADIAN),
            speed_left_at_infinity_km_s: orbit.speed_at_infinity_km_s,
        }
    }
}

fn components(v: DVec3) -> [f64; 3] {
    v.to_array()
}
