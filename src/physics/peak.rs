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
    let low = spans.map(|span| span.low);
    let mut best = (height(low), low);
    let mut step = spans.map(|span| span.step());
    climb(&spans, &mut best, step, false, height);
    for _ in 0..HALVINGS {
        step = step.map(|step| 0.5 * step);
        let mut tries = 64;
        while tries > 0 && climb(&spans, &mut best, step, true, height) {
            tries -= 1;
        }
    }
    best.1
}

/// Tries the whole grid from the low ends on, or the neighbours of the best place so far all round it. Says whether one of
/// them is higher.
fn climb(
    spans: &[Span; 3],
    best: &mut (f64, [f64; 3]),
    step: [f64; 3],
    around: bool,
    height: &dyn Fn([f64; 3]) -> f64,
) -> bool {
    // One below, at and above it along each number that varies at all.
    let most = if around { 3 } else { u32::MAX };
    let counts = spans.map(|span| span.points.min(most));
    let before = *best;
    for n in 0..counts[0] * counts[1] * counts[2] {
        let mut rest = n;
        let mut place = [0.0; 3];
        for axis in [2, 1, 0] {
            let (i, span) = (f64::from(rest % counts[axis]), &spans[axis]);
            rest /= counts[axis];
            place[axis] = if around {
                span.kept(before.1[axis] + (i - 1.0) * step[axis])
            } else {
                span.low + i * step[axis]
            };
        }
        let here = height(place);
        if here > best.0 {
            *best = (here, place);
        }
    }
    best.0 > before.0
}

/// Where a function of one number with one peak between two ends is largest, to a hundred-millionth of the way.
pub fn peak_between(low: f64, high: f64, height: &dyn Fn(f64) -> f64) -> f64 {
    let still = Span::fixed(0.0);
    let spans = [still, still, Span::between(low, high, 3)];
    peak(spans, &|[_, _, x]| height(x))[2]
}
