//! Bounded root-finders.

/// A place and what a function is there.
type Sample = (f64, f64);

/// Every place between two ends where a function changes its sign, as far as points at equal steps tell: between two of
/// them with different signs, and on both sides of a peak or a dip that only just crosses 0 between them.
pub(super) fn crossings(
    [low, high]: [f64; 2],
    steps: u32,
    f: &dyn Fn(f64) -> f64,
    found: &mut dyn FnMut(f64),
) {
    let at = |i: u32| {
        let x = low + (high - low) * (f64::from(i) / f64::from(steps));
        (x, f(x))
    };
    let mut here = at(0);
    let mut before = here;
    for i in 0..=steps {
        let after = if i < steps { at(i + 1) } else { here };
        if let Some(beyond) = crossed_between(before, here, after, f) {
            found(crossing([before, beyond], f));
            found(crossing([beyond, after], f));
        } else if is_below(here) != is_below(after) {
            found(crossing([here, after], f));
        }
        (before, here) = (here, after);
    }
}

fn is_below((_, height): Sample) -> bool {
    height < 0.0
}

/// Of three neighbours on the same side of 0, the middle one nearest to it: a place between them on the other side, if there
/// is one. A golden section search, down to a hundred-millionth of the way.
fn crossed_between(
    before: Sample,
    here: Sample,
    after: Sample,
    f: &dyn Fn(f64) -> f64,
) -> Option<Sample> {
    const GOLDEN: f64 = 0.618_033_988_749_894_9;
    const NARROWINGS: u32 = 38;
    let side = is_below(here);
    let size = |sample: Sample| sample.1.abs();
    let dips = size(here) <= size(before) && size(here) <= size(after);
    if !dips || is_below(before) != side || is_below(after) != side {
        return None;
    }
    let at = |x: f64| (x, f(x));
    let (mut low, mut high) = (before.0, after.0);
    let inner = |low: f64, high: f64| GOLDEN * (high - low);
    let mut left = at(high - inner(low, high));
    let mut right = at(low + inner(low, high));
    for _ in 0..NARROWINGS {
        if let Some(beyond) = [left, right].into_iter().find(|s| is_below(*s) != side) {
            return Some(beyond);
        }
        if size(left) < size(right) {
            (high, right) = (right.0, left);
            left = at(high - inner(low, high));
        } else {
            (low, left) = (left.0, right);
            right = at(low + inner(low, high));
        }
    }
    None
}

/// Where a function changes its sign between two places at which its signs differ.
fn crossing([start, end]: [Sample; 2], f: &dyn Fn(f64) -> f64) -> f64 {
    boundary([start.0, end.0], &|x| is_below((x, f(x))))
}

/// Where a condition changes between two places, of which it holds at one only, down to the last bit.
///
/// Plain bisection: some 60 steps, whatever the condition.
pub fn boundary([mut from, mut to]: [f64; 2], holds: &dyn Fn(f64) -> bool) -> f64 {
    let at_from = holds(from);
    loop {
        let middle = 0.5 * (from + to);
        // Written so that numbers which are none end it too.
        if !(from.min(to) < middle && middle < from.max(to)) {
            return middle;
        }
        if holds(middle) == at_from {
            from = middle;
        } else {
            to = middle;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn roots(steps: u32, f: impl Fn(f64) -> f64) -> Vec<f64> {
        let mut all = Vec::new();
        crossings([0.0, 1.0], steps, &f, &mut |x| all.push(x));
        all
    }

    #[test]
    fn a_root_is_exact_to_the_last_bits() {
        for f in [|x: f64| x * x - 0.5, |x: f64| 0.5 - x * x] {
            let [root] = roots(4, f)[..] else {
                panic!("one root")
            };
            assert!((root - 0.5_f64.sqrt()).abs() <= f64::EPSILON, "{root}");
        }
    }

    #[test]
    fn two_roots_between_two_points_are_found_anywhere() {
        for at in [0.003, 0.02, 0.11, 0.5, 0.77, 0.98, 0.997] {
            for sign in [1.0, -1.0] {
                let all = roots(8, |x| sign * ((x - at).powi(2) - 1e-6));
                let [one, other] = all[..] else {
                    panic!("{all:?} near {at}")
                };
                assert!((one - (at - 1e-3)).abs() < 1e-12 && (other - (at + 1e-3)).abs() < 1e-12);
            }
        }
    }

    #[test]
    fn where_there_is_none_none_is_found() {
        assert!(roots(8, |x| (x - 0.4).powi(2) + 1e-9).is_empty());
        assert!(roots(8, |_| 1.0).is_empty() && roots(8, |_| 0.0).is_empty());
        assert!(roots(8, |_| f64::NAN).is_empty());
        // Ends that are no numbers.
        let mut count = 0;
        crossings([f64::NAN, 1.0], 8, &|x| x, &mut |_| count += 1);
        crossings([0.0, f64::INFINITY], 8, &|x| x - 1.0, &mut |_| count += 1);
        assert!(count <= 16);
    }
}
