//! Round numbers for rulers, axes and beads.

use crate::decimal::{exponent, power_of_ten};

/// The largest of 1, 2, 5 times a power of ten that is not above `size` (above 0).
pub(super) fn round_below(size: f64) -> f64 {
    let power = power_of_ten(exponent(size));
    let fits = |digit: f64| digit * power <= size * (1.0 + 1e-12);
    if fits(5.0) {
        5.0 * power
    } else if fits(2.0) {
        2.0 * power
    } else {
        power
    }
}

/// Lengths of time that people count in, s: from a second to a thousand years.
const SPANS: [f64; 26] = {
    const MINUTE: f64 = 60.0;
    const HOUR: f64 = 3_600.0;
    const DAY: f64 = 86_400.0;
    [
        1.0,
        2.0,
        5.0,
        10.0,
        15.0,
        30.0,
        MINUTE,
        2.0 * MINUTE,
        5.0 * MINUTE,
        10.0 * MINUTE,
        15.0 * MINUTE,
        30.0 * MINUTE,
        HOUR,
        2.0 * HOUR,
        3.0 * HOUR,
        6.0 * HOUR,
        12.0 * HOUR,
        DAY,
        2.0 * DAY,
        5.0 * DAY,
        10.0 * DAY,
        20.0 * DAY,
        50.0 * DAY,
        100.0 * DAY,
        200.0 * DAY,
        500.0 * DAY,
    ]
};

/// The shortest length of time that people count in and that fits into `total` at most `most` times.
pub(super) fn round_span(total: f64, most: f64) -> f64 {
    let needed = total / most;
    let mut spans = SPANS.iter().copied();
    spans
        .find(|span| *span >= needed)
        .unwrap_or_else(|| 10.0 * round_below(needed.max(f64::MIN_POSITIVE)))
}

/// Every whole multiple of a step from one number to another.
pub(super) fn multiples(step: f64, low: f64, high: f64) -> Vec<f64> {
    let (mut i, last) = ((low / step).ceil(), (high / step).floor());
    let mut numbers = Vec::new();
    while i <= last {
        numbers.push(i * step);
        i += 1.0;
    }
    numbers
}
