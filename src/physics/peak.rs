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

/// Halvings of the first step: to a hundred-millionth of it. Near a smooth peak the value is then exact.
const HALVINGS: u32 = 27;

/// Where `height` is largest: the best point of a grid, then its neighbours with ever smaller steps. Bounded: each
/// step size is tried from at most 64 places.
pub(super) fn peak(spans: [Span; 3], height: &dyn Fn([f64; 3]) -> f64) -> [f64; 3] {
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
    for _ in 0..HALVINGS {
        step = step.map(|step| 0.5 * step);
        for _ in 0..64 {
            let from = best;
            let mut moved = false;
            for n in 0_u32..27 {
                let way = [n % 3, n / 3 % 3, n / 9].map(|n| f64::from(n) - 1.0);
                let place = [0, 1, 2].map(|n| spans[n].kept(from[n] + way[n] * step[n]));
                let stays = |n: usize| way[n] == 0.0 || spans[n].points == 1;
                let stands = [0, 1, 2].into_iter().all(stays);
                let repeats = [0, 1, 2]
                    .into_iter()
                    .any(|n| way[n] != 0.0 && spans[n].points == 1);
                if !stands && !repeats {
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

/// Where a function of one number with one peak between two ends is largest, to a hundred-millionth of the way.
pub fn peak_between(low: f64, high: f64, height: &dyn Fn(f64) -> f64) -> f64 {
    let still = Span::fixed(0.0);
    let spans = [still, still, Span::between(low, high, 3)];
    peak(spans, &|[_, _, x]| height(x))[2]
}
