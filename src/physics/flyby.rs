//! One pass: from what is chosen (an [`Encounter`]) to all that follows (a [`Flyby`]), in both frames.
//!
//! The relations are those of the two-body hyperbola with the planet's motion added; Curtis, *Orbital Mechanics for
//! Engineering Students*, 2nd ed., sections 2.9 and 8.9 (from memory), gives each of them.

use glam::DVec3;

use super::aim::AimPlane;
use super::approach::Approach;
use super::conic::Conic;
use super::encounter::Encounter;
use super::error::FlybyError;
use super::frame::{PlanetFrame, PlanetMotion, Position, SunFrame, Velocity};
use super::outcome::{Outcome, Side, speed_at};
use super::sun_orbit::SunOrbit;
use super::units::NEWTON_G;

/// All that follows from an [`Encounter`]. When the probe strikes, what would come after is still here as the pass
/// that a smaller planet would have given; `outcome` says whether it happens.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flyby {
    /// The inputs.
    pub encounter: Encounter,
    /// Passes or strikes.
    pub outcome: Outcome,
    /// Semi-major axis a = μ/v∞² of the hyperbola, km, counted positive.
    pub semi_major_axis_km: f64,
    /// Eccentricity e = 1 + r/a.
    pub eccentricity: f64,
    /// Turn angle δ between incoming and outgoing v-infinity, rad, 0..π.
    pub turn_rad: f64,
    /// Impact parameter b = r √(1 + 2a/r), km: how far the incoming line passes from the planet's centre.
    pub impact_parameter_km: f64,
    /// The aim plane's axes S, T, R.
    pub aim_plane: AimPlane,
    /// The aim point b (cos θ, sin θ) on T and R, km.
    pub aim_point_km: [f64; 2],
    /// Unit vector from the planet's centre to periapsis.
    pub periapsis_direction: DVec3,
    /// Speed at periapsis relative to the planet, km/s.
    pub periapsis_speed_km_s: f64,
    /// v-infinity before, planet frame.
    pub velocity_in: Velocity<PlanetFrame>,
    /// v-infinity after, planet frame.
    pub velocity_out: Velocity<PlanetFrame>,
    /// Velocity round the Sun before, with the planet's pull left out.
    pub sun_velocity_in: Velocity<SunFrame>,
    /// Velocity round the Sun after, with the planet's pull left out.
    pub sun_velocity_out: Velocity<SunFrame>,
    /// Velocity change, km/s, the same vector in both frames; it points from periapsis to the planet's centre.
    pub velocity_change: DVec3,
    /// Change of energy per unit mass round the Sun, V·Δv, km²/s².
    pub energy_change_km2_s2: f64,
    /// Where periapsis lies.
    pub side: Side,
    /// Orbit round the Sun before.
    pub orbit_before: SunOrbit,
    /// Orbit round the Sun after.
    pub orbit_after: SunOrbit,
    speed_change_km_s: f64,
    motion: PlanetMotion,
    hyperbola: Conic,
}

impl Flyby {
    /// Solves an encounter.
    ///
    /// # Errors
    /// [`FlybyError`] when an input is not a number in its domain, or when the sizes lie so far apart that answers could
    /// leave the range of f64. Every answer of a pass that is solved is finite.
    pub fn solve(encounter: &Encounter) -> Result<Self, FlybyError> {
        encounter.check()?;
        Ok(Self::compute(*encounter))
    }

    fn compute(encounter: Encounter) -> Self {
        let Encounter {
            planet,
            v_infinity_km_s: v_infinity,
            periapsis_km: r,
            aim_rad,
            ..
        } = encounter;
        let approach = Approach::unchecked(&encounter);
        let (a, b) = (approach.semi_major_axis_km, approach.impact_parameter_km(r));
        let e = 1.0 + r / a;
        let aim_point_km = approach.aim_point_km(r, aim_rad);
        // From here on the aim point decides, as it does for every point of the aim plane's map: the same bits.
        let pass = approach.aimed(aim_point_km);
        let periapsis_direction = pass.periapsis_direction();
        // Along the motion at periapsis; sin(δ/2) = 1/e and cos(δ/2) = b/(a e) do not cancel as e approaches 1.
        let forward =
            approach.aim_plane.s * (b / a / e) - approach.aim_plane.direction(aim_rad) * (1.0 / e);
        let hyperbola = Conic::new(planet.gm, r, -1.0 / a, periapsis_direction, forward);
        let (sun_velocity_in, sun_velocity_out) =
            (approach.sun_velocity_in(), pass.sun_velocity_out());
        Self {
            encounter,
            outcome: Outcome::of(&planet, v_infinity, a, r, &hyperbola),
            semi_major_axis_km: a,
            eccentricity: e,
            turn_rad: 2.0 * libm::atan2(a, b),
            impact_parameter_km: b,
            aim_plane: approach.aim_plane,
            aim_point_km,
            periapsis_direction,
            periapsis_speed_km_s: speed_at(r, v_infinity, a),
            velocity_in: approach.velocity_in(),
            velocity_out: pass.velocity_out(),
            sun_velocity_in,
            sun_velocity_out,
            velocity_change: pass.velocity_change(),
            energy_change_km2_s2: pass.energy_change_km2_s2(),
            speed_change_km_s: pass.speed_change_km_s(),
            side: pass.side(),
            orbit_before: SunOrbit::through_planet(planet.orbit_km, sun_velocity_in),
            orbit_after: SunOrbit::through_planet(planet.orbit_km, sun_velocity_out),
            motion: approach.motion,
            hyperbola,
        }
    }

    /// The planet's motion in the Sun frame.
    pub fn motion(&self) -> PlanetMotion {
        self.motion
    }

    /// The hyperbola round the planet.
    pub fn hyperbola(&self) -> &Conic {
        &self.hyperbola
    }

    /// Whether the probe strikes the planet.
    pub fn strikes(&self) -> bool {
        matches!(self.outcome, Outcome::Strikes(_))
    }

    /// Position and velocity relative to the planet, `t` seconds after periapsis.
    pub fn seen_from_planet(&self, t: f64) -> (Position<PlanetFrame>, Velocity<PlanetFrame>) {
        let state = self.hyperbola.state_at(t);
        (Position::new(state.r), Velocity::new(state.v))
    }

    /// Position and velocity in the Sun frame, `t` seconds after periapsis.
    pub fn seen_from_sun(&self, t: f64) -> (Position<SunFrame>, Velocity<SunFrame>) {
        let (r, v) = self.seen_from_planet(t);
        (
            self.motion.position_seen_from_sun(r, t),
            self.motion.velocity_seen_from_sun(v),
        )
    }

    /// Time after periapsis, s, at which the outgoing probe is `distance_km` from the planet's centre; `None` nearer
    /// than periapsis. The incoming probe is there at minus this time.
    pub fn time_at_distance(&self, distance_km: f64) -> Option<f64> {
        self.hyperbola
            .scaled_anomaly_at_distance(distance_km)
            .map(|x| self.hyperbola.time_at_scaled_anomaly(x))
    }

    /// Change of the speed round the Sun, km/s: positive is a gain.
    pub fn speed_change_km_s(&self) -> f64 {
        self.speed_change_km_s
    }

    /// The approach of this pass: every other aim point of its aim plane.
    pub fn approach(&self) -> Approach {
        Approach::unchecked(&self.encounter)
    }

    /// What the planet's own velocity changes by for a probe of `probe_kg`, km/s: minus the change of their relative
    /// velocity, times the probe's share of the mass of both (conservation of momentum).
    pub fn planet_velocity_change(&self, probe_kg: f64) -> DVec3 {
        let probe = probe_kg * NEWTON_G;
        self.velocity_change * (-probe / (self.encounter.planet.gm + probe))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::{Body, Planet, units::RADIANS_PER_DEGREE};

    fn jupiter(v_infinity: f64, approach_deg: f64, radii: f64, aim_deg: f64) -> Flyby {
        let planet = Planet::of(Body::Jupiter);
        Flyby::solve(&Encounter {
            planet,
            v_infinity_km_s: v_infinity,
            approach_rad: approach_deg * RADIANS_PER_DEGREE,
            crank_rad: 0.0,
            periapsis_km: radii * planet.radius_km,
            aim_rad: aim_deg * RADIANS_PER_DEGREE,
        })
        .expect("an ordinary encounter")
    }

    #[test]
    fn periapsis_behind_gains_and_ahead_loses() {
        let (behind, ahead) = (
            jupiter(9.0, 129.0, 8.0, 0.0),
            jupiter(9.0, 129.0, 8.0, 180.0),
        );
        assert_eq!((behind.side, ahead.side), (Side::Behind, Side::Ahead));
        assert!(behind.speed_change_km_s() > 10.0 && ahead.speed_change_km_s() < 0.0);
    }

    #[test]
    fn a_head_on_approach_gains_on_both_sides() {
        for aim in [0.0, 90.0, 180.0, -90.0] {
            assert_eq!(
                jupiter(9.0, 180.0, 8.0, aim).side,
                Side::Behind,
                "aim angle {aim}"
            );
        }
    }

    #[test]
    fn a_low_periapsis_strikes_before_time_zero() {
        let flyby = jupiter(9.0, 129.0, 0.5, 0.0);
        let Outcome::Strikes(strike) = flyby.outcome else {
            panic!("half a radius is inside the planet")
        };
        let (r, v) = flyby.seen_from_planet(strike.time_s);
        assert!(strike.time_s < 0.0);
        assert!(
            (r.km.length() / 71_492.0 - 1.0).abs() < 1e-13
                && (v.speed() / strike.speed_km_s - 1.0).abs() < 1e-13
        );
    }

    #[test]
    fn sizes_beyond_numbers_are_refused() {
        let planet = Planet::custom(1e300, 1e200, 1e8).expect("allowed one by one");
        let encounter = Encounter {
            planet,
            ..jupiter(9.0, 129.0, 8.0, 0.0).encounter
        };
        let refusal = Flyby::solve(&encounter);
        assert!(matches!(refusal, Err(FlybyError::OutOfNumbers { .. })));
    }
}
