//! The axes of a chart: how outcomes spread over its height, and round numbers along both.

use super::ticks::{multiples, round_below};
use crate::decimal::{exponent, power_of_ten};
use crate::physics::Measure;
use crate::report::{ChartReading, Shape, Spread};

/// How many times the smallest distance from the Sun the largest one shown is, at most.
const WIDEST: f64 = 15.0;

/// The outcomes that a chart's height stands for: all of the curve's and the present one with a little room; a distance
/// from the Sun in equal ratios where it changes much, and cut off where it grows without bound.
pub(super) fn heights(chart: &ChartReading) -> Spread {
    let [mut low, mut high] = chart.extent().unwrap_or([0.0, 1.0]);
    let now = chart.now.filter(|now| now.is_finite()).unwrap_or(low);
    if let Shape::Flat { middle, .. } = chart.shape {
        let room = (0.1 * middle.abs()).max(0.1);
        return Spread::linear(middle - room, middle + room);
    }
    match chart.course.measure {
        Measure::Aphelion => high = high.min(WIDEST * low).max(now),
        Measure::Perihelion => low = low.max(high / 1000.0),
        _ => (low, high) = (low.min(0.0), high.max(0.0)),
    }
    (low, high) = (low.min(now), high.max(now));
    if chart.course.measure == Measure::Perihelion {
        // A fall into the Sun has no place on a scale of ratios.
        low = low.max(1e-6 * high);
    }
    let is_distance = matches!(
        chart.course.measure,
        Measure::Aphelion | Measure::Perihelion
    );
    if is_distance && high > 3.0 * low {
        return Spread::logarithmic(low / 1.2, high * 1.4);
    }
    let room = 0.18 * (high - low).max(0.01 * high.abs());
    let bottom = if low == 0.0 { 0.0 } else { low - room };
    Spread::linear(bottom, high + room)
}

/// Round numbers along a spread, at most about so many.
pub(super) fn round_numbers(spread: &Spread, most: f64) -> Vec<f64> {
    if !spread.is_logarithmic() {
        let step = round_below((spread.high - spread.low) / most.max(2.0) * 1.6);
        return multiples(step, spread.low, spread.high);
    }
    let fine = round_ratios(spread, &[1.0, 2.0, 5.0], 1);
    if fine.len() as f64 <= most {
        return fine;
    }
    let powers = f64::from(exponent(spread.high) - exponent(spread.low) + 1);
    round_ratios(spread, &[1.0], (powers / most.max(1.0)).ceil() as i32)
}

/// Some digits times the powers of ten, every `stride`th of them.
fn round_ratios(spread: &Spread, digits: &[f64], stride: i32) -> Vec<f64> {
    let mut numbers = Vec::new();
    let mut power = exponent(spread.low);
    while power <= exponent(spread.high) {
        for digit in digits {
            let number = digit * power_of_ten(power);
            if number >= spread.low && number <= spread.high {
                numbers.push(number);
            }
        }
        power += stride;
    }
    numbers
}

/// Digits that tell round numbers of a linear spread apart.
pub(super) fn digits(numbers: &[f64]) -> usize {
    let [first, second, ..] = numbers else {
        return 3;
    };
    let largest = numbers.iter().fold(0.0_f64, |most, x| most.max(x.abs()));
    (exponent(largest.max(1e-300)) - exponent(second - first) + 1).max(1) as usize
}
