//! The largest value of a function of a few numbers. By a grid and smaller and smaller steps: common practice, no source.

use std::f64::consts::PI;

/// Halvings of the first step: to a hundred-millionth of it. Near a smooth peak the value is then exact.
pub(super) const HALVINGS: u32 = 27;

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

    /// The next grid point up or down; `None` off the end.
    fn beside(&self, point: u32, way: i32) -> Option<u32> {
        let next = i64::from(point) + i64::from(way);
        let count = i64::from(self.points);
        let next = if self.round {
            next.rem_euclid(count)
        } else {
            next
        };
        (0..count).contains(&next).then_some(next as u32)
    }
}

type Place = [f64; 3];
type Height<'a> = &'a dyn Fn(Place) -> f64;

/// Summits of the grid that are climbed from, the highest of them: of two equal peaks either may look higher on a grid.
const SUMMITS: usize = 4;

/// Where `height` is largest: the summits of a grid, and from each of them uphill with ever smaller steps. Bounded.
pub(super) fn peak(spans: [Span; 3], halvings: u32, height: Height<'_>) -> Place {
    let step = spans.map(|span| span.step());
    let start = spans.map(|span| span.low);
    let mut best = (start, height(start));
    for summit in summits(&spans, height) {
        let top = climbed(&spans, summit, step, halvings, height);
        if top.1 > best.1 {
            best = top;
        }
    }
    best.0
}

/// The highest grid points that are as high as all their neighbours.
fn summits(spans: &[Span; 3], height: Height<'_>) -> Vec<(Place, f64)> {
    let counts = spans.map(|span| span.points);
    let place =
        |point: [u32; 3]| [0, 1, 2].map(|n| spans[n].low + spans[n].step() * f64::from(point[n]));
    let points = || {
        let [along, across, up] = counts;
        (0..along * across * up).map(move |i| [i / (across * up), i / up % across, i % up])
    };
    let heights: Vec<f64> = points().map(|point| height(place(point))).collect();
    let at = |[i, j, k]: [u32; 3]| heights[((i * counts[1] + j) * counts[2] + k) as usize];
    let is_summit = |point: &[u32; 3]| {
        ways().all(|way| {
            let [i, j, k] = [0, 1, 2].map(|n| spans[n].beside(point[n], way[n]));
            i.zip(j)
                .zip(k)
                .is_none_or(|((i, j), k)| at([i, j, k]) <= at(*point))
        })
    };
    let mut found: Vec<(Place, f64)> = Vec::new();
    for point in points().filter(is_summit) {
        found.push((place(point), at(point)));
        if found.len() > SUMMITS {
            let lower = |a: usize, b: usize| if found[b].1 < found[a].1 { b } else { a };
            let lowest = (0..found.len()).reduce(lower).unwrap_or(0);
            found.swap_remove(lowest);
        }
    }
    found
}

/// Uphill from a place: of its neighbours the first higher one, with ever smaller steps; each size from at most 12 places.
fn climbed(
    spans: &[Span; 3],
    mut best: (Place, f64),
    mut step: Place,
    halvings: u32,
    height: Height<'_>,
) -> (Place, f64) {
    for _ in 0..halvings {
        step = step.map(|step| 0.5 * step);
        for _ in 0..12 {
            let from = best.0;
            let mut moved = false;
            for way in ways() {
                // None of a number that stays.
                if (0..3).any(|n| spans[n].points == 1 && way[n] != 0) {
                    continue;
                }
                let place = [0, 1, 2].map(|n| spans[n].kept(from[n] + f64::from(way[n]) * step[n]));
                let here = height(place);
                if here > best.1 {
                    (best, moved) = ((place, here), true);
                }
            }
            if !moved {
                break;
            }
        }
    }
    best
}

/// The 26 ways to a neighbour.
fn ways() -> impl Iterator<Item = [i32; 3]> {
    let all = (0..27).map(|n| [n % 3 - 1, n / 3 % 3 - 1, n / 9 - 1]);
    all.filter(|way| *way != [0, 0, 0])
}

/// Where a function of one number with one peak between two ends is largest, to a hundred-millionth of the way.
pub fn peak_between(low: f64, high: f64, height: &dyn Fn(f64) -> f64) -> f64 {
    let still = Span::fixed(0.0);
    let spans = [still, still, Span::between(low, high, 3)];
    peak(spans, HALVINGS, &|[_, _, x]| height(x))[2]
}
