//! A pass worked out a second way, from the conventions in the crate's documentation and the closed forms of the
//! hyperbola, so that pictures are held to something that is not the code that drew them.

use std::f64::consts::PI;

use glam::{DVec2, DVec3};
use two_frames::physics::Planet;
use two_frames::scenario::{Field, PRESETS, Preset, Scenario};

/// The inputs of a pass, with everything else computed on demand.
pub(crate) struct Own {
    pub(crate) planet: Planet,
    pub(crate) v_infinity: f64,
    pub(crate) periapsis: f64,
    pub(crate) planet_speed: f64,
    /// Unit vectors: incoming direction S, and the direction of the aim point.
    s: DVec3,
    aim: DVec3,
}

impl Own {
    pub(crate) fn of(scenario: &Scenario) -> Self {
        let planet = scenario.planet().planet().expect("a planet");
        let number = |field| scenario.get(field).expect("a number that every pass has");
        let degrees = |field| number(field) * PI / 180.0;
        let (alpha, kappa, theta) = (
            degrees(Field::Approach),
            degrees(Field::Crank),
            degrees(Field::Aim),
        );
        let s = DVec3::new(
            alpha.sin() * kappa.cos(),
            alpha.cos(),
            alpha.sin() * kappa.sin(),
        );
        let t = s.cross(DVec3::Z).normalize();
        let r = s.cross(t);
        // Source: DE440 (Park et al. 2021), GM of the Sun, km³/s² (R).
        let gm_sun = 132_712_440_041.279_f64;
        Self {
            planet,
            v_infinity: number(Field::VInfinity),
            periapsis: number(Field::Periapsis) * planet.radius_km,
            planet_speed: (gm_sun / planet.orbit_km).sqrt(),
            s,
            aim: t * theta.cos() + r * theta.sin(),
        }
    }

    pub(crate) fn preset(preset: &Preset) -> Self {
        Self::of(&preset.scenario())
    }

    /// Whether the whole pass lies in the page's plane.
    pub(crate) fn is_in_plane(&self) -> bool {
        // The sine of 180° is not quite 0.
        self.s.z.abs() < 1e-12 && self.aim.z.abs() < 1e-12
    }

    pub(crate) fn strikes(&self) -> bool {
        self.periapsis < self.planet.radius_km
    }

    fn a(&self) -> f64 {
        self.planet.gm / self.v_infinity.powi(2)
    }

    pub(crate) fn eccentricity(&self) -> f64 {
        1.0 + self.periapsis / self.a()
    }

    /// Turn angle, rad. Source: δ = 2 asin(1/e), Curtis, Orbital Mechanics for Engineering Students, 2.9 (M).
    pub(crate) fn turn(&self) -> f64 {
        2.0 * (1.0 / self.eccentricity()).asin()
    }

    /// The largest turn without a strike, rad.
    pub(crate) fn widest_turn(&self) -> f64 {
        2.0 * (1.0 / (1.0 + self.planet.radius_km / self.a())).asin()
    }

    pub(crate) fn incoming(&self) -> DVec3 {
        self.s * self.v_infinity
    }

    pub(crate) fn outgoing(&self) -> DVec3 {
        (self.s * self.turn().cos() - self.aim * self.turn().sin()) * self.v_infinity
    }

    pub(crate) fn planet_velocity(&self) -> DVec3 {
        DVec3::Y * self.planet_speed
    }

    /// Unit vector to periapsis.
    pub(crate) fn to_periapsis(&self) -> DVec3 {
        let half = 0.5 * self.turn();
        self.s * half.sin() + self.aim * half.cos()
    }

    /// Unit vector of the motion at periapsis.
    fn forward(&self) -> DVec3 {
        let half = 0.5 * self.turn();
        self.s * half.cos() - self.aim * half.sin()
    }

    /// Speed relative to the planet at a distance, km/s. Source: vis-viva, Curtis 2.9 (M).
    pub(crate) fn speed(&self, distance: f64) -> f64 {
        (self.v_infinity.powi(2) + 2.0 * self.planet.gm / distance).sqrt()
    }

    /// Time since periapsis, s, at a distance on the way out. Source: Kepler's equation for the hyperbola,
    /// t = √(a³/μ) (e sinh F − F) with r = a (e cosh F − 1), Curtis 3.6 (M).
    pub(crate) fn time(&self, distance: f64) -> f64 {
        let (a, e) = (self.a(), self.eccentricity());
        // Of the two forms of F the arcsine keeps its digits near periapsis: cosh F − 1 = (r/q − 1)(e − 1)/e.
        let excess = (distance / self.periapsis - 1.0).max(0.0) * (e - 1.0) / e;
        let f = 2.0 * (0.5 * excess).sqrt().asinh();
        (a.powi(3) / self.planet.gm).sqrt() * (e * f.sinh() - f)
    }

    /// Velocity relative to the planet at a place of the page's plane, km/s.
    pub(crate) fn velocity(&self, place: DVec2) -> DVec2 {
        let (p, q) = (self.to_periapsis().truncate(), self.forward().truncate());
        let (cos, sin) = (place.dot(p) / place.length(), place.dot(q) / place.length());
        let e = self.eccentricity();
        let unit = (self.planet.gm / self.periapsis / (1.0 + e)).sqrt();
        (q * (e + cos) - p * sin) * unit
    }

    /// Time, s, of a place of the page's plane on the path: negative on the way in.
    pub(crate) fn time_of(&self, place: DVec2) -> f64 {
        self.time(place.length())
            .copysign(place.dot(self.forward().truncate()))
    }

    /// How far a place of the page's plane is from the path, as a share of its distance from the planet.
    ///
    /// Source: the orbit equation r = p/(1 + e cos ν) as r + e r·P = q (1 + e), Curtis 2.4 (M).
    pub(crate) fn off_path(&self, place: DVec2) -> f64 {
        let e = self.eccentricity();
        let left = place.length() + e * place.dot(self.to_periapsis().truncate());
        (left - self.periapsis * (1.0 + e)).abs() / place.length() / (1.0 + e)
    }
}

/// The ready-made passes that lie in the page's plane: all but one.
pub(crate) fn in_plane() -> impl Iterator<Item = &'static Preset> {
    PRESETS
        .iter()
        .filter(|preset| Own::preset(preset).is_in_plane())
}

#[test]
fn one_ready_made_pass_leaves_the_plane() {
    assert_eq!(in_plane().count(), PRESETS.len() - 1);
}
