//! The largest value of a function of a few numbers.

use std::f64::consts::PI;

/// A number that may vary between two ends.
#[derive(Clone, Copy, Debug)]
pub(super) struct Span {
    pub(super) low: f64,
    pub(super) high: f64,
    /// Points at which it is tried first; 1 for a number that stays at its low end.
    pub(super) points: u32,
    /// Whether the search may leave the ends, as an angle may.
    pub(super) round: bool,
}

impl Span {
    pub(super) const fn fixed(value: f64) -> Self {
        Self {
            low: value,
            high: value,
            points: 1,
            round: false,
        }
    }

    pub(super) const fn between(low: f64, high: f64, points: u32) -> Self {
        Self {
            low,
            high,
            points,
            round: false,
        }
    }

    /// Any angle, rad.
    pub(super) const fn angle(points: u32) -> Self {
        Self {
            low: -PI,
            high: PI,
            points,
            round: true,
        }
    }

    fn step(&self) -> f64 {
        match self.points {
            1 => 0.0,
            points if self.round => (self.high - self.low) / f64::from(points),
            points => (self.high - self.low) / f64::from(points - 1),
        }
    }

    fn kept(&self, value: f64) -> f64 {
        if self.round {
            value
        } else {
            value.max(self.low).min(self.high)
        }
    }
}

/// Where `height` is largest: the best point of a grid, then its neighbours with ever smaller steps. Bounded: each
/// step size is tried from at most 64 places.
pub(super) fn peak(spans: [Span; 3], halvings: u32, height: &dyn Fn([f64; 3]) -> f64) -> [f64; 3] {
    let mut best = spans.map(|span| span.low);
    let mut highest = height(best);
    let mut consider = |place: [f64; 3], best: &mut [f64; 3]| {
        let here = height(place);
        let higher = here > highest;
        if higher {
            (highest, *best) = (here, place);
        }
        higher
    };
    let mut step = spans.map(|span| span.step());
    for i in 0..spans[0].points {
        for j in 0..spans[1].points {
            for k in 0..spans[2].points {
                let place = [0, 1, 2].map(|n| spans[n].low + step[n] * f64::from([i, j, k][n]));
                consider(place, &mut best);
            }
        }
    }
    for _ in 0..halvings {
        step = step.map(|step| 0.5 * step);
        for _ in 0..64 {
            let from = best;
            let mut moved = false;
            for n in 0_u32..27 {
                let way = [n % 3, n / 3 % 3, n / 9].map(|n| f64::from(n) - 1.0);
                let place = [0, 1, 2].map(|n| spans[n].kept(from[n] + way[n] * step[n]));
                // No step at all, and none of a number that stays.
                let idle = [0, 1, 2].map(|n| spans[n].points == 1 && way[n] != 0.0);
                if n != 13 && !idle.contains(&true) {
                    moved |= consider(place, &mut best);
                }
            }
            if !moved {
                break;
            }
        }
    }
    best
}
