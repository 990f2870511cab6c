//! Two-body orbits: elements <-> state, and the state at any time, for ellipse, parabola and hyperbola alike.

use glam::DVec3;

use super::angle::sincos;
use super::kepler;
use super::units::SECONDS_PER_YEAR;
use super::universal::Universal;

/// A tilt below this, rad, is the rounding of an orbit in the x-y plane, and its node would be noise.
const FLAT: f64 = 1e-14;

/// Position and velocity relative to the attracting body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// Position, km.
    pub r: DVec3,
    /// Velocity, km/s.
    pub v: DVec3,
}

/// Classical elements, with the periapsis distance as the size so that a parabola has them too. Angles in radians.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Elements {
    /// Periapsis distance, km, above 0.
    pub periapsis_km: f64,
    /// Eccentricity, 0 or more.
    pub eccentricity: f64,
    /// Inclination to the x-y plane, 0..π.
    pub inclination: f64,
    /// Longitude of the ascending node from +x; 0 if the orbit lies in the x-y plane.
    pub node: f64,
    /// Argument of periapsis from the node; for a circle, of the place that it was made from.
    pub argument: f64,
    /// True anomaly from periapsis; for a circle, from the place that it was made from.
    pub true_anomaly: f64,
}

/// A conic with its focus at the origin: size, shape and the direction of its periapsis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Conic {
    gm: f64,
    periapsis_km: f64,
    eccentricity: f64,
    /// Reciprocal of the semi-major axis, 1/km: positive on an ellipse, negative on a hyperbola.
    alpha: f64,
    to_periapsis: DVec3,
    forward: DVec3,
    /// The speed, km/s, that scaled speeds count in: sqrt(mu / q), the circular speed at periapsis.
    speed_unit: f64,
    /// The time, s, that scaled times count in: sqrt(q³ / mu).
    time_unit: f64,
}

impl Conic {
    /// A conic from its gravitational parameter (km³/s²), periapsis distance (km, above 0), reciprocal semi-major axis
    /// `alpha` (1/km), the unit vector from the focus to periapsis and the unit vector of the motion there.
    ///
    /// The eccentricity is `1 - alpha q`; giving `alpha` keeps all digits of a nearly parabolic orbit.
    pub fn new(
        gm: f64,
        periapsis_km: f64,
        alpha: f64,
        to_periapsis: DVec3,
        forward: DVec3,
    ) -> Self {
        let eccentricity = (1.0 - alpha * periapsis_km).max(0.0);
        let speed_unit = (gm / periapsis_km).sqrt();
        Self {
            gm,
            periapsis_km,
            eccentricity,
            alpha,
            to_periapsis,
            forward,
            speed_unit,
            time_unit: periapsis_km / speed_unit,
        }
    }

    /// The conic of a set of elements and the time since periapsis, s.
    pub fn from_elements(gm: f64, elements: &Elements) -> (Self, f64) {
        let (to_periapsis, forward) = axes(elements);
        let alpha = (1.0 - elements.eccentricity) / elements.periapsis_km;
        let conic = Self::new(gm, elements.periapsis_km, alpha, to_periapsis, forward);
        let time = conic.time_since_periapsis(conic.state_at_true_anomaly(elements.true_anomaly).r);
        (conic, time)
    }

    /// The conic through a state and the time since periapsis, s. `None` for a path straight through the focus, which
    /// has no periapsis direction.
    pub fn from_state(gm: f64, state: &State) -> Option<(Self, f64)> {
        let State { r, v } = *state;
        let distance = r.length();
        let momentum = r.cross(v);
        let normal = momentum.try_normalize()?;
        let radial = r.try_normalize()?;
        let ahead = normal.cross(radial);
        // e cos ν and e sin ν of the present place. Unlike the eccentricity vector itself they lie in the orbit's plane
        // however small e is.
        let parameter = momentum.length_squared() / gm;
        let e_cos = parameter / distance - 1.0;
        let e_sin = v.dot(radial) * momentum.length() / gm;
        let e = libm::hypot(e_cos, e_sin);
        // A circle has no periapsis of its own: the present place serves.
        let (cos, sin) = if e > 0.0 {
            (e_cos / e, e_sin / e)
        } else {
            (1.0, 0.0)
        };
        let alpha = 2.0 / distance - v.length_squared() / gm;
        let conic = Self::new(
            gm,
            parameter / (1.0 + e),
            alpha,
            radial * cos - ahead * sin,
            radial * sin + ahead * cos,
        );
        let time = conic.time_since_periapsis(r);
        Some((conic, time))
    }

    /// Periapsis distance, km.
    pub fn periapsis_km(&self) -> f64 {
        self.periapsis_km
    }

    /// Eccentricity.
    pub fn eccentricity(&self) -> f64 {
        self.eccentricity
    }

    /// Period, s, of an ellipse.
    pub fn period_s(&self) -> Option<f64> {
        (self.alpha > 0.0)
            .then(|| std::f64::consts::TAU / (self.alpha * (self.alpha * self.gm).sqrt()))
    }

    /// Position and velocity `t` seconds after periapsis (negative: before).
    ///
    /// Relative error about 1e-14 of the distance and speed. Times beyond 1e280 years are taken as that.
    pub fn state_at(&self, t: f64) -> State {
        let u = kepler::solve(self.eccentricity, self.scaled_alpha(), self.scaled_time(t)).at;
        self.state_at_anomaly(&u)
    }

    /// The universal anomaly, scaled to periapsis distance 1, at `t` seconds after periapsis. Equal steps of it take
    /// times in proportion to the distance from the focus.
    pub fn scaled_anomaly_at(&self, t: f64) -> f64 {
        kepler::solve(self.eccentricity, self.scaled_alpha(), self.scaled_time(t))
            .at
            .x
    }

    /// Position and velocity at a universal anomaly scaled to periapsis distance 1; no equation to solve.
    pub fn state_at_scaled_anomaly(&self, x: f64) -> State {
        self.state_at_anomaly(&Universal::at(self.scaled_alpha(), x))
    }

    /// Time since periapsis, s, at a universal anomaly scaled to periapsis distance 1.
    pub fn time_at_scaled_anomaly(&self, x: f64) -> f64 {
        let u = Universal::at(self.scaled_alpha(), x);
        (u.x + self.eccentricity * u.u3) * self.time_unit
    }

    /// The scaled universal anomaly, 0 or more, at `distance_km` from the focus; `None` nearer than periapsis or, on
    /// an ellipse, farther than apoapsis.
    pub fn scaled_anomaly_at_distance(&self, distance_km: f64) -> Option<f64> {
        let u2 = (distance_km / self.periapsis_km - 1.0) / self.eccentricity;
        let alpha = self.scaled_alpha();
        // cosh F - 1 on a hyperbola, 1 - cos E = 2 sin²(E/2) on an ellipse.
        let c = alpha.abs() * u2;
        let half = 0.5 * c;
        match () {
            () if u2.is_nan() || u2 < 0.0 || (alpha > 0.0 && half > 1.0) => None,
            () if alpha == 0.0 => Some((2.0 * u2).sqrt()),
            () if alpha < 0.0 => {
                Some(libm::log1p(c + c.sqrt() * (c + 2.0).sqrt()) / (-alpha).sqrt())
            }
            () => Some(2.0 * libm::atan2(half.sqrt(), (1.0 - half).sqrt()) / alpha.sqrt()),
        }
    }

    /// Time since periapsis, s, of a point on the conic; on an ellipse between minus and plus half a period.
    pub fn time_since_periapsis(&self, r: DVec3) -> f64 {
        let u2 = 1.0 - r.dot(self.to_periapsis) / self.periapsis_km;
        let u1 = r.dot(self.forward) / self.periapsis_km / (1.0 + self.eccentricity).sqrt();
        let alpha = self.scaled_alpha();
        let s = alpha.abs().sqrt();
        let x = match () {
            () if alpha > 0.0 => libm::atan2(s * u1, 1.0 - alpha * u2) / s,
            () if alpha < 0.0 => libm::asinh(s * u1) / s,
            () => u1,
        };
        self.time_at_scaled_anomaly(x)
    }

    /// Position and velocity at a true anomaly, rad, within the asymptotes.
    pub fn state_at_true_anomaly(&self, true_anomaly: f64) -> State {
        let (sin, cos) = sincos(true_anomaly);
        let e = self.eccentricity;
        let parameter = self.periapsis_km * (1.0 + e);
        let distance = parameter / (1.0 + e * cos);
        let speed = (self.gm / parameter).sqrt();
        State {
            r: (self.to_periapsis * cos + self.forward * sin) * distance,
            v: (self.forward * (e + cos) - self.to_periapsis * sin) * speed,
        }
    }

    /// The classical elements at a point of the conic.
    pub fn elements_at(&self, r: DVec3) -> Elements {
        let normal = self.to_periapsis.cross(self.forward);
        let ascending = DVec3::Z.cross(normal);
        let sideways = ascending.length();
        let (node_axis, inclination) = match ascending.try_normalize() {
            Some(axis) if sideways > FLAT => (axis, libm::atan2(sideways, normal.z)),
            _ if normal.z < 0.0 => (DVec3::X, std::f64::consts::PI),
            _ => (DVec3::X, 0.0),
        };
        let across = normal.cross(node_axis);
        Elements {
            periapsis_km: self.periapsis_km,
            eccentricity: self.eccentricity,
            inclination,
            node: libm::atan2(node_axis.y, node_axis.x),
            argument: libm::atan2(
                self.to_periapsis.dot(across),
                self.to_periapsis.dot(node_axis),
            ),
            true_anomaly: libm::atan2(r.dot(self.forward), r.dot(self.to_periapsis)),
        }
    }

    fn scaled_alpha(&self) -> f64 {
        self.alpha * self.periapsis_km
    }

    /// Scaled time, with whole periods taken off on an ellipse.
    fn scaled_time(&self, t: f64) -> f64 {
        let longest = 1e280 * SECONDS_PER_YEAR;
        let t = t.max(-longest).min(longest);
        let reduced = self
            .period_s()
            .map_or(t, |period| t - period * (t / period).round());
        reduced / self.time_unit
    }

    fn state_at_anomaly(&self, u: &Universal) -> State {
        let e = self.eccentricity;
        let distance = 1.0 + e * u.u2;
        let side = (1.0 + e).sqrt();
        let speed = self.speed_unit / distance;
        State {
            r: (self.to_periapsis * (1.0 - u.u2) + self.forward * (side * u.u1))
                * self.periapsis_km,
            v: (self.forward * (side * u.u0) - self.to_periapsis * u.u1) * speed,
        }
    }
}

/// Unit vectors to periapsis and along the motion there.
fn axes(elements: &Elements) -> (DVec3, DVec3) {
    let (sin_n, cos_n) = sincos(elements.node);
    let (sin_i, cos_i) = sincos(elements.inclination);
    let (sin_w, cos_w) = sincos(elements.argument);
    let node = DVec3::new(cos_n, sin_n, 0.0);
    let across = DVec3::new(-sin_n * cos_i, cos_n * cos_i, sin_i);
    (node * cos_w + across * sin_w, across * cos_w - node * sin_w)
}
