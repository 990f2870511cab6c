//! A bounded root-finder.

/// Where a function changes its sign between two ends, down to the last bit. `rising`: it is below 0 at the first end.
///
/// Plain bisection: some 60 steps, whatever the function.
pub(super) fn crossing([mut low, mut high]: [f64; 2], rising: bool, f: &dyn Fn(f64) -> f64) -> f64 {
    loop {
        let middle = 0.5 * (low + high);
        if middle <= low || middle >= high {
            return middle;
        }
        if (f(middle) < 0.0) == rising {
            low = middle;
        } else {
            high = middle;
        }
    }
}
