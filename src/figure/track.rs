//! The pass sampled for drawing: how long a piece of it is shown, and points along it. Computed once an encounter.

use glam::DVec3;

use crate::decimal::within;

use super::ticks::{multiples, round_span};
use crate::physics::{Flyby, Outcome};

/// Points on each side of periapsis; at equal steps of the anomaly they lie closest where the path bends most.
const SIDE: i32 = 56;

/// One sampled point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// Time after periapsis, s.
    pub time_s: f64,
    /// Position relative to the planet, km.
    pub relative_km: DVec3,
    /// Position in the Sun frame, km.
    pub in_sun_frame_km: DVec3,
    /// Speed relative to the planet, km/s.
    pub relative_speed: f64,
    /// Speed round the Sun, km/s.
    pub sun_speed: f64,
}

/// The sampled pass.
#[derive(Clone, Debug, PartialEq)]
pub struct Track {
    /// Half the time shown, s: the pass is shown from minus to plus this time.
    pub half_s: f64,
    /// The scaled universal anomaly at `half_s`.
    pub half_anomaly: f64,
    /// When the track ends, s: at `half_s`, or at the impact.
    pub end_s: f64,
    /// Time between two beads, s.
    pub bead_s: f64,
    /// Points in the order of time, up to periapsis and from it; one point stands in both parts.
    pub before: Vec<Sample>,
    /// Points from periapsis on; empty when the probe strikes.
    pub after: Vec<Sample>,
    /// The moment to show first, s: where the probe, on its way out, is three times as far as at periapsis; for a strike
    /// on its way in, two planet radii from the centre.
    pub telling_s: f64,
}

impl Track {
    /// Samples a pass.
    pub fn of(flyby: &Flyby) -> Self {
        let periapsis = flyby.encounter.periapsis_km;
        // Far enough to see both straight ends, near enough to see the bend.
        let reach = within(
            3.0 * flyby.impact_parameter_km,
            6.0 * periapsis,
            40.0 * periapsis,
        );
        let reach = if flyby.strikes() {
            reach.max(6.0 * flyby.encounter.planet.radius_km)
        } else {
            reach
        };
        let hyperbola = flyby.hyperbola();
        let last = hyperbola.scaled_anomaly_at_distance(reach).unwrap_or(1.0);
        let half_s = hyperbola.time_at_scaled_anomaly(last);
        let impact = hyperbola
            .scaled_anomaly_at_distance(flyby.encounter.planet.radius_km)
            .filter(|_| flyby.strikes());
        let before = samples(flyby, -last, -impact.unwrap_or(0.0));
        let after = match impact {
            Some(_) => Vec::new(),
            None => samples(flyby, 0.0, last),
        };
        let bead_s = round_span(2.0 * half_s, 30.0);
        Self {
            half_s,
            half_anomaly: last,
            end_s: end(flyby, half_s),
            bead_s,
            before,
            after,
            telling_s: telling(flyby, half_s),
        }
    }

    /// All points in the order of time.
    pub fn samples(&self) -> impl Iterator<Item = &Sample> {
        self.before.iter().chain(self.after.iter())
    }

    /// The times of the beads, s: whole multiples of the bead interval within the track.
    pub fn bead_times(&self) -> Vec<f64> {
        multiples(self.bead_s, -self.half_s, self.end_s)
    }

    /// The time at a position, 0 at the beginning and 1 at the end of the pass as it would be without an impact.
    pub fn time_at(&self, position: f64) -> f64 {
        self.clamp((2.0 * position - 1.0) * self.half_s)
    }

    /// The position, 0..1, of a time.
    pub fn position_of(&self, time_s: f64) -> f64 {
        within(0.5 * (time_s / self.half_s + 1.0), 0.0, 1.0)
    }

    /// A time kept within what is shown.
    pub fn clamp(&self, time_s: f64) -> f64 {
        within(time_s, -self.half_s, self.end_s)
    }
}

/// Points at equal steps of the anomaly.
fn samples(flyby: &Flyby, from: f64, to: f64) -> Vec<Sample> {
    let mut samples = Vec::new();
    let count = SIDE + 1;
    for i in 0..count {
        let part = f64::from(i) / f64::from(SIDE);
        samples.push(Sample::of(flyby, from + (to - from) * part));
    }
    samples
}

impl Sample {
    fn of(flyby: &Flyby, x: f64) -> Self {
        let hyperbola = flyby.hyperbola();
        let state = hyperbola.state_at_scaled_anomaly(x);
        let time_s = hyperbola.time_at_scaled_anomaly(x);
        let motion = flyby.motion();
        let (position, velocity) = (
            crate::physics::Position::new(state.r),
            crate::physics::Velocity::new(state.v),
        );
        Self {
            time_s,
            relative_km: state.r,
            in_sun_frame_km: motion.position_seen_from_sun(position, time_s).km,
            relative_speed: state.v.length(),
            sun_speed: motion.velocity_seen_from_sun(velocity).speed(),
        }
    }
}

fn end(flyby: &Flyby, half_s: f64) -> f64 {
    match flyby.outcome {
        Outcome::Passes => half_s,
        Outcome::Strikes(strike) => strike.time_s.max(-half_s),
    }
}

fn telling(flyby: &Flyby, half_s: f64) -> f64 {
    let time = |distance| flyby.time_at_distance(distance).unwrap_or(0.0).min(half_s);
    if flyby.strikes() {
        -time(2.0 * flyby.encounter.planet.radius_km)
    } else {
        time(3.0 * flyby.encounter.periapsis_km)
    }
}
