//! The aim points that give the probe one speed round the Sun: a circle of the aim plane, known in closed form.

use super::approach::Approach;

/// Closer to the planet's motion than this (rad) an approach counts as along it: all aim angles are alike.
const ALIKE: f64 = 1e-12;

/// All aim points whose outgoing direction has a given part c along the planet's motion, and so one speed and one
/// energy round the Sun: a circle on the sphere of outgoing directions, whose stereographic image in the aim plane is
/// `(S_y − c) u² − 2 u·t − (S_y + c) = 0` with u the aim point over a and `t = (T_y, R_y)`: a circle, or a straight line
/// where nothing changes (c = `S_y`). Own derivation: the outgoing direction of an aim point (`Aimed`) put equal to c.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedCircle {
    a: f64,
    /// `S_y − c`.
    bend: f64,
    /// `S_y + c`.
    sum: f64,
    /// `(T_y, R_y)`.
    t: [f64; 2],
    /// √(1 − c²).
    across: f64,
}

impl SpeedCircle {
    /// The aim points with S'·y = `forward_part`; `None` beyond ±1, where there are none.
    pub fn new(approach: &Approach, forward_part: f64) -> Option<Self> {
        let plane = &approach.aim_plane;
        (forward_part.abs() <= 1.0).then(|| Self {
            a: approach.semi_major_axis_km,
            bend: plane.s.y - forward_part,
            sum: plane.s.y + forward_part,
            t: [plane.t.y, plane.r.y],
            across: ((1.0 - forward_part) * (1.0 + forward_part)).sqrt(),
        })
    }

    /// Whether it is a straight line.
    pub fn is_line(&self) -> bool {
        self.bend == 0.0
    }

    /// Centre (B·T, B·R) and radius, km; `None` for a straight line.
    pub fn centre_and_radius_km(&self) -> Option<([f64; 2], f64)> {
        let unit = self.a / self.bend;
        (!self.is_line()).then(|| (self.t.map(|t| t * unit), self.across * unit.abs()))
    }

    /// The point farthest from the planet's centre, as an aim angle, rad, and a distance, km: where the closest distance is
    /// largest. On a straight line, which has none, the nearest point. `None` where every direction is alike.
    pub fn best(&self) -> Option<(f64, f64)> {
        let [t, r] = self.t;
        let length = (t * t + r * r).sqrt();
        let outward = if self.bend < 0.0 { -1.0 } else { 1.0 };
        let toward = |sign: f64| libm::atan2(sign * r, sign * t);
        if length < ALIKE {
            None
        } else if self.is_line() {
            let along = -0.5 * self.sum / length;
            Some((toward(along), self.a * along.abs()))
        } else {
            Some((
                toward(outward),
                self.a * (length + self.across) / self.bend.abs(),
            ))
        }
    }

    /// Least and greatest distance from the planet's centre, km; a straight line has no greatest. `None` where every
    /// direction is alike.
    pub fn distances_km(&self) -> Option<[f64; 2]> {
        let [t, r] = self.t;
        let length = (t * t + r * r).sqrt();
        let unit = self.a * (length + self.across);
        // The least from the product of both, because a difference would cancel where the circle is large.
        let least = self.a * self.sum.abs() / (length + self.across);
        (length >= ALIKE).then(|| [least, unit / self.bend.abs()])
    }

    /// The two aim angles, rad, at which it is at a distance within [`Self::distances_km`]: `b_km` from the centre.
    pub fn aims_at(&self, b_km: f64) -> [f64; 2] {
        let ([t, r], u) = (self.t, b_km / self.a);
        let cos = (self.bend * u - self.sum / u) / (2.0 * (t * t + r * r).sqrt());
        // At either end of them a rounding error may lie beyond.
        let cos = if cos.abs() > 1.0 {
            1.0_f64.copysign(cos)
        } else {
            cos
        };
        let sin = ((1.0 - cos) * (1.0 + cos)).sqrt();
        let (middle, aside) = (libm::atan2(r, t), libm::atan2(sin, cos));
        [middle + aside, middle - aside]
    }

    /// Where a ray from the centre in a direction (a unit vector on T and R) meets it: distances, km, above 0, the
    /// farther first.
    pub fn on_ray(&self, direction: [f64; 2]) -> [Option<f64>; 2] {
        let half = direction[0] * self.t[0] + direction[1] * self.t[1];
        let found = |u: f64| Some(self.a * u).filter(|b| b.is_finite() && *b > 0.0);
        let inside = half * half + self.bend * self.sum;
        if inside < 0.0 {
            return [None, None];
        }
        // The root without cancellation first, the other one from their product.
        let q = half + if half < 0.0 { -1.0 } else { 1.0 } * inside.sqrt();
        let (one, other) = (found(q / self.bend), found(-self.sum / q));
        if other > one {
            [other, one]
        } else {
            [one, other]
        }
    }
}
