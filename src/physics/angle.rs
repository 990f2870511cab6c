//! Sine and cosine of any angle.

use std::f64::consts::FRAC_2_PI;

/// π/2 in three parts, each but the last with 33 bits, so that their products with a whole number below 2^20 are exact.
/// Source: the constants `pio2_1`, `pio2_2` and `pio2_2t` of FreeBSD's msun (read in the crate `libm`).
const QUARTER: [f64; 3] = [
    f64::from_bits(0x3FF9_21FB_5440_0000),
    f64::from_bits(0x3DD0_B461_1A60_0000),
    f64::from_bits(0x3BA3_198A_2E03_7073),
];

/// The bits of the largest angle that `libm` takes as it is: an eighth of a turn, and the little more that its comparison
/// of the upper halves lets through.
const EIGHTH: u64 = 0x3FE9_21FB_FFFF_FFFF;

/// Sine and cosine of an angle, rad, to about one unit in the last place as far as a million quarter turns; beyond, to what
/// a rounding of the angle itself does. Not numbers where the angle is none.
///
/// The angle is brought near 0 by quarter turns here, and `libm` gets what is left: its own way of doing so is exact for any
/// angle, and would add 3 kB to the download for angles that no flyby has.
pub fn sincos(rad: f64) -> (f64, f64) {
    let (near, rest, turned) = brought_near(rad);
    // That it is small is said once more in a way that the compiler sees, and so it leaves out libm's own way.
    let size = f64::from_bits(size(near).min(EIGHTH));
    let (sin, cos) = libm::sincos(size);
    let sin = sin.copysign(near);
    let (sin, cos) = (sin + rest * cos, cos - rest * sin);
    match turned & 3 {
        0 => (sin, cos),
        1 => (cos, -sin),
        2 => (-sin, -cos),
        _ => (-cos, sin),
    }
}

/// An angle less whole quarter turns: within an eighth of a turn from 0, what of it the double cannot hold, and the number
/// of quarters.
#[inline(never)]
fn brought_near(rad: f64) -> (f64, f64, i64) {
    // Nothing is left, unless the angle is none.
    let (mut near, mut rest, mut turned) = (rad, 0.0 * rad, 0_i64);
    // Once, but for angles so large that their quarters cannot be counted exactly.
    while size(near) > EIGHTH && near.is_finite() {
        let quarters = (near * FRAC_2_PI).round_ties_even();
        let from = near - quarters * QUARTER[0];
        let step = quarters * QUARTER[1];
        let to = from - step;
        let small = quarters * QUARTER[2] - ((from - to) - step);
        near = to - small;
        rest = (to - near) - small;
        turned = turned.wrapping_add(quarters as i64);
    }
    (near, rest, turned)
}

/// A number's bits without its sign: they compare like the sizes.
fn size(number: f64) -> u64 {
    number.abs().to_bits()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: the crate `libm`, whose own reduction is exact (R).
    #[test]
    fn it_is_the_sine_and_the_cosine() {
        let mut random = fastrand::Rng::with_seed(1);
        let special = (-4000..4000).map(|i| f64::from(i) * std::f64::consts::FRAC_PI_4);
        let any: Vec<_> = (0..100_000)
            .map(|_| (random.f64() - 0.5) * libm::pow(10.0, 14.0 * random.f64() - 8.0))
            .collect();
        for rad in special.chain(any) {
            let (sin, cos) = sincos(rad);
            for (ours, exact) in [(sin, libm::sin(rad)), (cos, libm::cos(rad))] {
                assert!(
                    (ours - exact).abs() <= 4e-16 * exact.abs(),
                    "{rad}: {ours} {exact}"
                );
            }
        }
    }

    #[test]
    fn no_angle_is_too_large_and_what_is_none_has_none() {
        for rad in [1e10, -1e16, 1e22, -1e200, f64::MAX] {
            let (sin, cos) = sincos(rad);
            assert!((sin * sin + cos * cos - 1.0).abs() < 1e-15, "{rad}");
        }
        for none in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert!(sincos(none).0.is_nan() && sincos(none).1.is_nan());
        }
    }
}
