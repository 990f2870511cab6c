//! The universal functions: sines and hyperbolic sines of an orbit's anomaly as one family, for every conic.
//!
//! Source: Danby, *Fundamentals of Celestial Mechanics*, 2nd ed., chapter 6 (universal variables and Stumpff functions),
//! from memory. The addition and doubling rules are those of the hyperbolic functions, rewritten.

use super::angle::sincos;

/// The functions `U0 … U3` of the universal anomaly (Stumpff functions times powers of `x`).
///
/// Units: `U0` none, `x` and `U1` km^½, `U2` km, `U3` km^(3/2), when `alpha` is in 1/km. They satisfy
/// `U0 = 1 - alpha U2`, `U1 = x - alpha U3`, and each is the derivative of the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Universal {
    /// The universal anomaly itself; its sign is the sign of the time since periapsis.
    pub x: f64,
    /// `cosh F` on a hyperbola, `cos E` on an ellipse, 1 on a parabola.
    pub u0: f64,
    /// `sinh F / sqrt(-alpha)` on a hyperbola.
    pub u1: f64,
    /// `(cosh F - 1) / -alpha` on a hyperbola.
    pub u2: f64,
    /// `(sinh F - F) / (-alpha)^(3/2)` on a hyperbola.
    pub u3: f64,
}

impl Universal {
    /// The functions at `x` for an orbit with reciprocal semi-major axis `alpha`, both finite.
    ///
    /// Relative error: a few units in the last place while `|alpha| x² < pi²`; finite while `|F| < 709`.
    pub fn at(alpha: f64, x: f64) -> Self {
        let z = alpha * x * x;
        if z.abs() < 16.0 {
            Self::by_series(alpha, 0.25 * x, 0.0625 * z)
                .doubled(alpha)
                .doubled(alpha)
        } else if z < 0.0 {
            Self::by_hyperbolic(alpha, x)
        } else {
            Self::by_circular(alpha, x)
        }
    }

    /// Taylor series in `z = alpha x²`; the first term left out is below 1e-18 for `|z| < 1`.
    fn by_series(alpha: f64, x: f64, z: f64) -> Self {
        let c2 = polynomial(z, &EVEN);
        let c3 = polynomial(z, &ODD);
        let u2 = x * x * c2;
        let u3 = x * x * x * c3;
        Self {
            x,
            u0: 1.0 - alpha * u2,
            u1: x - alpha * u3,
            u2,
            u3,
        }
    }

    /// The functions at twice the anomaly. Nothing cancels on a hyperbola, nor up to half a turn of an ellipse.
    fn doubled(&self, alpha: f64) -> Self {
        let u2 = 2.0 * self.u1 * self.u1;
        Self {
            x: 2.0 * self.x,
            u0: 1.0 - alpha * u2,
            u1: 2.0 * self.u0 * self.u1,
            u2,
            u3: 2.0 * (self.u3 + self.u1 * self.u2),
        }
    }

    /// The functions at `x + d` for a `d` so small that `|alpha| d² < 1e-4`, to full accuracy.
    pub(super) fn moved(&self, alpha: f64, d: f64) -> Self {
        let z = alpha * d * d;
        let d2 = d * d * (0.5 - z * (1.0 / 24.0 - z / 720.0));
        let d3 = d * d * d * (1.0 / 6.0 - z * (1.0 / 120.0 - z / 5040.0));
        let d1 = d - alpha * d3;
        let u2 = self.u2 + self.u1 * d1 + self.u0 * d2;
        Self {
            x: self.x + d,
            u0: 1.0 - alpha * u2,
            u1: self.u1 + self.u0 * d1 - alpha * self.u1 * d2,
            u2,
            u3: self.u3 + self.u2 * d1 + self.u1 * d2 + d3,
        }
    }

    /// The functions at `-x`: `x`, `U1` and `U3` are odd.
    pub(super) fn mirrored(&self) -> Self {
        Self {
            x: -self.x,
            u1: -self.u1,
            u3: -self.u3,
            ..*self
        }
    }

    /// One `expm1` gives sinh F and cosh F - 1 without cancellation.
    fn by_hyperbolic(alpha: f64, x: f64) -> Self {
        let s = (-alpha).sqrt();
        let f = s * x.abs();
        let grown = libm::expm1(f);
        let shrunk = grown / (grown + 1.0);
        let sinh = 0.5 * (grown + shrunk);
        let cosh_less_1 = 0.5 * grown * shrunk;
        let sign = x.signum();
        Self {
            x,
            u0: 1.0 + cosh_less_1,
            u1: sign * sinh / s,
            u2: cosh_less_1 / -alpha,
            u3: sign * (sinh - f) / s / -alpha,
        }
    }

    fn by_circular(alpha: f64, x: f64) -> Self {
        let s = alpha.sqrt();
        let anomaly = s * x;
        let (sin_half, cos_half) = sincos(0.5 * anomaly);
        let sin = 2.0 * sin_half * cos_half;
        let versine = 2.0 * sin_half * sin_half;
        Self {
            x,
            u0: 1.0 - versine,
            u1: sin / s,
            u2: versine / (s * s),
            u3: (anomaly - sin) / (s * s * s),
        }
    }
}

/// Terms of the Taylor series.
const TERMS: usize = 9;

/// `1/2!, -1/4!, 1/6! …` and `1/3!, -1/5!, 1/7! …`.
const EVEN: [f64; TERMS] = reciprocal_factorials(2);
const ODD: [f64; TERMS] = reciprocal_factorials(3);

const fn reciprocal_factorials(first: usize) -> [f64; TERMS] {
    let mut table = [0.0; TERMS];
    let (mut n, mut k, mut factorial) = (1, 0, 1.0);
    while k < TERMS {
        // Exact: 19! is below 2^57 and has 16 trailing zero bits.
        factorial *= n as f64;
        if n == first + 2 * k {
            table[k] = if k % 2 == 0 { 1.0 } else { -1.0 } / factorial;
            k += 1;
        }
        n += 1;
    }
    table
}

/// The polynomial with these coefficients, summed in a tree: half the waiting of Horner's scheme.
fn polynomial(z: f64, c: &[f64; TERMS]) -> f64 {
    let (z2, z4) = (z * z, (z * z) * (z * z));
    let low = (c[0] + c[1] * z) + (c[2] + c[3] * z) * z2;
    let high = (c[4] + c[5] * z) + (c[6] + c[7] * z) * z2;
    low + (high + c[8] * z4) * z4
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The largest difference of the four functions, as a share of each.
    fn difference(a: &Universal, b: &Universal) -> f64 {
        [(a.u0, b.u0), (a.u1, b.u1), (a.u2, b.u2), (a.u3, b.u3)]
            .into_iter()
            .map(|(a, b)| (a / b - 1.0).abs())
            .fold(0.0, f64::max)
    }

    #[test]
    fn series_doubling_and_closed_form_agree_where_they_meet() {
        for z in [-15.9, -9.0, -4.0, -1.01, -0.99, 0.5, 0.99, 1.01, 4.0, 9.0] {
            for x in [-0.3, 1.0, 70.0] {
                let alpha = z / (x * x);
                let closed = if z < 0.0 {
                    Universal::by_hyperbolic(alpha, x)
                } else {
                    Universal::by_circular(alpha, x)
                };
                // sinh F - F itself loses a digit or two in the closed form at F = 0.7.
                let error = difference(&Universal::at(alpha, x), &closed);
                assert!(error < 1e-14, "z {z}, x {x}: {error:e}");
            }
        }
    }

    #[test]
    fn a_small_move_and_a_mirror_agree_with_a_fresh_start() {
        for alpha in [-2.0, -0.01, 0.0, 0.3] {
            for x in [1e-8, 0.4, 2.0, 3.0] {
                let here = Universal::at(alpha, x);
                for d in [-5e-3 * x, 1e-7 * x, 5e-3 * x] {
                    // A few roundings; more of U0 where it is nearly 0 (alpha 0.3, x 3: cos E = -0.07).
                    let error = difference(&here.moved(alpha, d), &Universal::at(alpha, x + d));
                    assert!(error < 1e-14, "alpha {alpha}, x {x}, d {d}: {error:e}");
                }
                assert_eq!(here.mirrored(), Universal::at(alpha, -x));
            }
        }
    }
}
