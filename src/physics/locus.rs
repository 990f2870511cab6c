//! The aim points of one approach that meet a goal, and the one of them to choose.

use std::f64::consts::{PI, TAU};

use super::angle::sincos;
use super::approach::Approach;
use super::circle::SpeedCircle;
use super::encounter::Encounter;
use super::goal::{Free, Goal};
use super::peak::{Span, peak};
use super::root::crossings;
use super::search::Search;

/// Points of a ray at which a goal's excess is tried first.
const RAY: u32 = 64;
/// Rays all round the planet.
const RAYS: u32 = 180;
/// An aim angle in the orbit plane is preferred to one out of it that is better by no more than this part.
const AS_GOOD: f64 = 1e-9;
/// A pass that grazes the surface but for this part of the distance counts as one.
const ROUNDING: f64 = 1e-12;

/// The aim plane of one approach, searched for a goal.
pub(super) struct Locus<'a> {
    search: &'a Search,
    pub(super) approach: Approach,
    /// Least and greatest turn angle, rad: at the largest distance considered, and grazing the surface.
    pub(super) turns: [f64; 2],
    /// The goal's own circle, where it is one.
    circle: Option<SpeedCircle>,
}

impl<'a> Locus<'a> {
    pub(super) fn of(search: &'a Search, approach: Approach) -> Self {
        let radius = approach.planet.radius_km;
        let turn = |km| {
            libm::atan2(
                approach.semi_major_axis_km,
                approach.impact_parameter_km(km),
            )
        };
        let circle = search
            .goal
            .forward_part(&approach)
            .and_then(|part| SpeedCircle::new(&approach, part));
        Self {
            search,
            approach,
            turns: [search.farthest_km.max(radius), radius].map(|km| 2.0 * turn(km)),
            circle,
        }
    }

    /// The aim point to choose among all that meet the goal.
    pub(super) fn choose(&self) -> Option<Encounter> {
        if self.search.goal.is_beyond_all(&self.approach) {
            return None;
        }
        let kept = self.search.encounter.aim_rad;
        let best = match (self.search.free, self.search.goal, &self.circle) {
            (Free::Periapsis, ..) | (_, Goal::Turn(_), _) => self.on(kept),
            (_, _, Some(circle)) => self.best_of_circle(circle),
            (_, Goal::Aphelion(_) | Goal::Perihelion(_), _) => self.best_of_curve(),
            // A speed that no direction gives.
            _ => None,
        };
        best.map(|(aim, b)| self.search.settled(self.approach.approach_rad, aim, b))
    }

    /// The same, after a quick look whether there are any.
    pub(super) fn reached(&self) -> Option<Encounter> {
        if self.may_reach() {
            self.choose()
        } else {
            None
        }
    }

    /// The impact parameter, km, of a turn angle.
    fn distance(&self, turn_rad: f64) -> f64 {
        self.approach.distance_km(turn_rad)
    }

    fn excess(&self, [t, r]: [f64; 2], turn_rad: f64) -> f64 {
        let b = self.distance(turn_rad);
        self.search
            .goal
            .excess(&self.approach.aimed([b * t, b * r]))
    }

    /// Distances, km, at which a ray in a direction (a unit vector on T and R) meets the goal between the surface and the
    /// farthest. In closed form where there is one, else by bisection between points at equal steps of the turn.
    pub(super) fn roots(&self, direction: [f64; 2], found: &mut dyn FnMut(f64)) {
        let goal = self.search.goal;
        let farthest = self.distance(self.turns[0]);
        let allowed =
            |b: &f64| *b >= self.approach.strike_radius_km() * (1.0 - ROUNDING) && *b <= farthest;
        if let Goal::Turn(rad) = goal {
            if rad > 0.0 && rad <= PI {
                Some(self.distance(rad)).filter(allowed).map(found);
            }
        } else if let Some(circle) = &self.circle {
            let roots = circle.on_ray(direction).into_iter().flatten();
            roots.filter(allowed).for_each(found);
        } else if matches!(goal, Goal::Aphelion(_) | Goal::Perihelion(_)) {
            let excess = |turn| self.excess(direction, turn);
            crossings(self.turns, RAY, &excess, &mut |turn| {
                found(self.distance(turn));
            });
        }
    }

    /// An aim angle with the farthest distance, km, at which its ray meets the goal.
    fn on(&self, aim_rad: f64) -> Option<(f64, f64)> {
        let (sin, cos) = sincos(aim_rad);
        let mut farthest: Option<f64> = None;
        self.roots([cos, sin], &mut |b| {
            farthest = Some(farthest.map_or(b, |far| far.max(b)));
        });
        farthest.map(|b| (aim_rad, b))
    }

    fn best_of_circle(&self, circle: &SpeedCircle) -> Option<(f64, f64)> {
        if self.search.only_in_plane() {
            return self.on_either_side();
        }
        let strike = self.approach.strike_radius_km();
        let farthest = self.distance(self.turns[0]);
        let (Some([near, far]), Some((aim, b))) = (circle.distances_km(), circle.best()) else {
            // Nothing but the approach along the planet's motion makes every direction alike.
            return self.on(self.search.encounter.aim_rad);
        };
        if far < strike * (1.0 - ROUNDING) || near > farthest {
            return None;
        }
        if (strike..=farthest).contains(&b) {
            return Some((aim, b));
        }
        // Where the best is too far out, or under the surface: where it gets there, on the north side.
        let b = b.max(strike).min(farthest);
        let [one, other] = circle.aims_at(b);
        let north = if sincos(one).0 < 0.0 { one } else { other };
        Some((north, b))
    }

    /// The farther of both sides in the orbit plane.
    fn on_either_side(&self) -> Option<(f64, f64)> {
        let mut best = None;
        self.consider(0.0, &mut best);
        self.consider(PI, &mut best);
        best
    }

    /// Puts the farthest aim point of a ray in the place of the best so far, if it is farther out.
    fn consider(&self, aim_rad: f64, best: &mut Option<(f64, f64)>) {
        if let Some(found) = self.on(aim_rad)
            && best.is_none_or(|best| found.1 > best.1)
        {
            *best = Some(found);
        }
    }

    /// The farthest aim point of a curve: rays all round, then closer and closer about the best one.
    fn best_of_curve(&self) -> Option<(f64, f64)> {
        let in_plane = self.on_either_side();
        if self.search.only_in_plane() {
            return in_plane;
        }
        let mut step = TAU / f64::from(RAYS);
        let mut best = None;
        for i in 0..RAYS {
            self.consider(f64::from(i) * step - PI, &mut best);
        }
        best = best.or_else(|| self.by_extremes()).or(in_plane);
        while step > 1e-10 {
            step *= 0.5;
            let (aim, _) = best?;
            self.consider(aim - step, &mut best);
            self.consider(aim + step, &mut best);
        }
        let (_, farthest) = best?;
        in_plane
            .filter(|plain| plain.1 >= farthest * (1.0 - AS_GOOD))
            .or(best)
    }

    /// A ray that meets the goal although none of the evenly spread ones does: through the extreme values.
    fn by_extremes(&self) -> Option<(f64, f64)> {
        let search = Search {
            free: Free::AimPoint,
            ..*self.search
        };
        [1.0, -1.0].into_iter().find_map(|sign| {
            let excess =
                |_: &Approach, point| sign * search.goal.excess(&self.approach.aimed(point));
            self.on(search.peak(&excess).aim_rad)
        })
    }

    /// Whether the pass that grazes the surface on the T axis is above the goal.
    pub(super) fn is_above(&self) -> bool {
        self.excess([1.0, 0.0], self.turns[1]) > 0.0
    }

    /// Whether some pass may meet the goal: a quick look before a search. What is known in closed form is quick itself.
    fn may_reach(&self) -> bool {
        const STEPS: u32 = 8;
        if !matches!(self.search.goal, Goal::Aphelion(_) | Goal::Perihelion(_)) {
            return true;
        }
        if self.search.goal.is_beyond_all(&self.approach) {
            return false;
        }
        let rays = if self.search.only_in_plane() { 2 } else { 8 };
        let aim_step = TAU / f64::from(rays);
        let turn_step = (self.turns[1] - self.turns[0]) / f64::from(STEPS);
        let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
        let mut nearest = (f64::INFINITY, 0.0, 0.0);
        for i in 0..rays {
            for j in 0..=STEPS {
                let aim = aim_step * f64::from(i);
                let turn = self.turns[0] + turn_step * f64::from(j);
                let excess = self.excess_at(aim, turn);
                (least, most) = (least.min(excess), most.max(excess));
                if excess.abs() < nearest.0 {
                    nearest = (excess.abs(), aim, turn);
                }
            }
        }
        let (away, aim, turn) = nearest;
        if least <= 0.0 && most >= 0.0 {
            return true;
        }
        // Between the points it gets no farther than a part of what all of them are apart.
        if away > 0.25 * (most - least) {
            return false;
        }
        let aims = if self.search.only_in_plane() {
            Span::fixed(aim)
        } else {
            Span::between(aim - aim_step, aim + aim_step, 3)
        };
        let [low, high] = self.turns;
        let turns = Span::between((turn - turn_step).max(low), (turn + turn_step).min(high), 3);
        let sign = if most > 0.0 { -1.0 } else { 1.0 };
        self.reaches([aims, turns], sign)
    }

    /// Whether the excess times a sign gets up to 0 within spans of the aim angle and of the turn.
    fn reaches(&self, [aims, turns]: [Span; 2], sign: f64) -> bool {
        // The last step is a thousandth of a span, so the peak is missed by a millionth.
        const HALVINGS: u32 = 9;
        let height = |[_, aim, turn]: [f64; 3]| sign * self.excess_at(aim, turn);
        height(peak([Span::fixed(0.0), aims, turns], HALVINGS, &height)) >= 0.0
    }

    fn excess_at(&self, aim_rad: f64, turn_rad: f64) -> f64 {
        let (sin, cos) = sincos(aim_rad);
        self.excess([cos, sin], turn_rad)
    }

    /// The greatest gain or loss in closed form: the outgoing velocity is turned towards the planet's motion (or against
    /// it) until it is there or the probe grazes the surface.
    pub(super) fn most_forward(&self) -> Option<Encounter> {
        let sign = match self.search.goal {
            Goal::MostGain => 1.0,
            Goal::MostLoss => -1.0,
            _ => return None,
        };
        let plane = &self.approach.aim_plane;
        let [t, r] = [-sign * plane.t.y, -sign * plane.r.y];
        let across = (t * t + r * r).sqrt();
        let wanted = libm::atan2(across, sign * plane.s.y);
        // Along the planet's motion every direction is alike.
        let aim = if across < 1e-12 {
            self.search.encounter.aim_rad
        } else {
            libm::atan2(r, t)
        };
        if self.search.only_in_plane() && !is_in_plane(aim) {
            return None;
        }
        let turn = wanted.max(self.turns[0]).min(self.turns[1]);
        let b = self.distance(turn);
        Some(self.search.settled(self.approach.approach_rad, aim, b))
    }
}

fn is_in_plane(aim_rad: f64) -> bool {
    sincos(aim_rad).0.abs() < 1e-12
}
