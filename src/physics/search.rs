//! Aiming for a goal: which aim points reach it, and which of them is best.

use std::f64::consts::{PI, TAU};

use super::angle::sincos;
use super::approach::Approach;
use super::encounter::Encounter;
use super::error::FlybyError;
use super::goal::{Free, Goal};
use super::locus::Locus;
use super::peak::{HALVINGS, Span, peak};
use super::units::RADIANS_PER_DEGREE;

/// A goal and what may be changed to reach it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Search {
    /// The pass to start from.
    pub encounter: Encounter,
    /// What is wanted.
    pub goal: Goal,
    /// What may be changed.
    pub free: Free,
    /// Whether the probe has to stay in the planet's orbit plane: aim angles 0 and π only. A tilt of the orbit is
    /// searched for out of the plane all the same.
    pub in_plane: bool,
    /// The largest closest distance to consider, km.
    pub farthest_km: f64,
}

/// What a search finds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Finding {
    /// The goal is met, by the pass with the largest closest distance that meets it. For the most of something it is the
    /// best pass there is; for no change at all, which a probe far away has for nothing, the one that turns most.
    Met(Encounter),
    /// No pass meets it.
    OutOfReach {
        /// The pass that comes nearest to it.
        best: Encounter,
        /// What more would have to be free to meet it, if anything helps.
        more: Option<Free>,
    },
}

/// Weight of the turn (rad), as a part of the value, when passes are as good as equal: the one that turns less passes
/// farther out. At a smooth peak it costs its square, 1e-12 of the value.
const FARTHER: f64 = 1e-6;

/// Halvings of a degree before a search between two degrees gives up.
const DEGREE_HALVINGS: u32 = 50;

impl Search {
    /// Searches.
    ///
    /// # Errors
    /// As [`Flyby::solve`](super::Flyby::solve) for the pass to start from, and for one at the farthest distance.
    pub fn run(&self) -> Result<Finding, FlybyError> {
        self.encounter.check()?;
        self.at_farthest().check()?;
        let found = match (self.free, self.goal.is_most()) {
            (_, true) => Some(self.most()),
            (Free::Approach, false) => self.nearest_approach(),
            _ => self.locus(self.encounter.approach_rad).choose(),
        };
        Ok(match found {
            Some(encounter) => Finding::Met(encounter),
            None => Finding::OutOfReach {
                best: self.peak(&|approach, point| -self.goal.miss(&approach.aimed(point))),
                more: self.what_helps(),
            },
        })
    }

    /// Every aim point (B·T, B·R), km, on `rays` rays from the centre that meets the goal with the approach as it is, ray
    /// by ray from T towards R. Empty for the most of something.
    pub fn aim_points_km(&self, rays: u32) -> Vec<[f64; 2]> {
        let locus = self.locus(self.encounter.approach_rad);
        let mut points = Vec::new();
        for i in 0..rays {
            let (sin, cos) = sincos(TAU * f64::from(i) / f64::from(rays));
            locus.roots([cos, sin], &mut |b| points.push([b * cos, b * sin]));
        }
        points
    }

    fn at_farthest(&self) -> Encounter {
        Encounter {
            periapsis_km: self.farthest_km.max(self.encounter.planet.radius_km),
            ..self.encounter
        }
    }

    /// The goal's aim points with another approach angle.
    fn locus(&self, approach_rad: f64) -> Locus<'_> {
        Locus::of(self, self.turned(approach_rad))
    }

    fn turned(&self, approach_rad: f64) -> Approach {
        Approach::unchecked(&Encounter {
            approach_rad,
            ..self.encounter
        })
    }

    pub(super) fn only_in_plane(&self) -> bool {
        self.in_plane && self.goal != Goal::MostInclination
    }

    /// The most of something: the peak over whatever is free.
    fn most(&self) -> Encounter {
        let known = match self.free {
            Free::AimPoint => self.locus(self.encounter.approach_rad).most_forward(),
            _ => None,
        };
        known.unwrap_or_else(|| {
            self.peak(&|approach, point| self.goal.excess(&approach.aimed(point)))
        })
    }

    /// The pass with the largest value of something over whatever is free.
    pub(super) fn peak(&self, value: &dyn Fn(&Approach, [f64; 2]) -> f64) -> Encounter {
        // A turn is the same whatever the direction.
        let free = match self.goal {
            Goal::Turn(_) => Free::Periapsis,
            _ => self.free,
        };
        let aim_rad = self.encounter.aim_rad;
        let (points, aims) = match free {
            Free::Periapsis => (0, [Span::fixed(aim_rad)].to_vec()),
            // Both sides, each with its own peak.
            _ if self.only_in_plane() => (60, [0.0, PI].map(Span::fixed).to_vec()),
            Free::AimPoint => (0, [Span::angle(48)].to_vec()),
            Free::Approach => (30, [Span::angle(12)].to_vec()),
        };
        let approach = match free {
            Free::Approach => Span::angle(points),
            _ => Span::fixed(self.encounter.approach_rad),
        };
        let peaks = aims
            .into_iter()
            .map(|aim| self.peak_within(approach, aim, value));
        let best = peaks.reduce(|one, other| if other.1 > one.1 { other } else { one });
        best.map_or(self.encounter, |(encounter, _)| encounter)
    }

    /// The best pass, and how good it is, within spans of approach and aim angle and at any distance.
    fn peak_within(
        &self,
        approach: Span,
        aim: Span,
        value: &dyn Fn(&Approach, [f64; 2]) -> f64,
    ) -> (Encounter, f64) {
        let locus = self.locus(self.encounter.approach_rad);
        let [least, most] = locus.turns;
        let height = |[approach_rad, aim_rad, turn]: [f64; 3]| {
            let (sin, cos) = sincos(aim_rad);
            let b = locus.approach.distance_km(turn);
            let value = value(&self.turned(approach_rad), [b * cos, b * sin]);
            value - FARTHER * turn * value.abs()
        };
        let turn = Span::between(least, most, 17);
        let best = peak([approach, aim, turn], HALVINGS, &height);
        let [approach_rad, aim_rad, turn] = best;
        let b = locus.approach.distance_km(turn);
        (self.settled(approach_rad, aim_rad, b), height(best))
    }

    /// The encounter at a distance `b_km` in a direction: never under the surface by a rounding error, angles within half
    /// a turn.
    pub(super) fn settled(&self, approach_rad: f64, aim_rad: f64, b_km: f64) -> Encounter {
        let radius = self.encounter.planet.radius_km;
        let periapsis_km = self.turned(approach_rad).periapsis_km(b_km);
        Encounter {
            approach_rad: half_turn(approach_rad),
            aim_rad: plainly_in_plane(half_turn(aim_rad)),
            periapsis_km: periapsis_km.min(self.farthest_km).max(radius),
            ..self.encounter
        }
    }

    /// The goal with the approach changed by as little as it must be, in whole degrees unless only a part of one does it.
    fn nearest_approach(&self) -> Option<Encounter> {
        let start = self.encounter.approach_rad;
        let degrees = start / RADIANS_PER_DEGREE;
        let whole = degrees.round();
        // On the side of the start the whole degrees are nearer.
        let nearer = if degrees < whole { -1.0 } else { 1.0 };
        if let Some(found) = self.locus(start).choose() {
            return Some(found);
        }
        // How fast it can be after the pass does not depend on how it comes in; only the change does.
        let of_change = matches!(self.goal, Goal::SpeedChange(_));
        if !of_change && self.goal.is_beyond_all(&self.turned(start)) {
            return None;
        }
        for i in 0..=180 {
            // Straight ahead and half a turn round both ways are one.
            let ways = if i % 180 == 0 { 1 } else { 2 };
            for &way in &[nearer, -nearer][..ways] {
                let found = self.with_degrees(whole + way * f64::from(i)).reached();
                if found.is_some() {
                    return found;
                }
            }
        }
        self.between_degrees(whole)
    }

    /// The goal's aim points with an approach angle in degrees.
    fn with_degrees(&self, degrees: f64) -> Locus<'_> {
        self.locus(half_turn(degrees * RADIANS_PER_DEGREE))
    }

    /// The goal with an approach between two whole degrees, all passes of one above the goal and of the other below it: a
    /// planet that hardly turns the path meets it in a small part of a degree.
    fn between_degrees(&self, degree: f64) -> Option<Encounter> {
        for i in 0..180 {
            for way in [1.0, -1.0] {
                let mut ends = [i, i + 1].map(|i| degree + way * f64::from(i));
                let above = self.with_degrees(ends[0]).is_above();
                if self.with_degrees(ends[1]).is_above() == above {
                    continue;
                }
                for _ in 0..DEGREE_HALVINGS {
                    let middle = 0.5 * (ends[0] + ends[1]);
                    let here = self.with_degrees(middle);
                    ends[usize::from(here.is_above() != above)] = middle;
                    let found = here.reached();
                    if found.is_some() {
                        return found;
                    }
                }
            }
        }
        None
    }

    /// The next thing to set free that would meet the goal.
    fn what_helps(&self) -> Option<Free> {
        let helps = |free: &Free| {
            let search = Self {
                free: *free,
                ..*self
            };
            *free > self.free
                && match free {
                    Free::Approach => search.nearest_approach().is_some(),
                    _ => search.locus(self.encounter.approach_rad).choose().is_some(),
                }
        };
        [Free::AimPoint, Free::Approach].into_iter().find(helps)
    }
}

/// An aim angle, rad, that is in the orbit plane but for rounding: exactly 0 or π.
fn plainly_in_plane(aim_rad: f64) -> f64 {
    const ROUNDING: f64 = 1e-12;
    match aim_rad.abs() {
        size if size < ROUNDING => 0.0,
        size if size > PI - ROUNDING => PI,
        _ => aim_rad,
    }
}

/// An angle, rad, within half a turn of 0.
fn half_turn(rad: f64) -> f64 {
    if rad.abs() <= PI {
        rad
    } else {
        rad - TAU * (rad / TAU).round()
    }
}
