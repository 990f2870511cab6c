//! Kepler's equation for every conic at once: time since periapsis -> where on the orbit.
//!
//! The unknown is the *universal anomaly* `x` of the universal-variable formulation, measured from periapsis. With
//! periapsis distance `q`, eccentricity `e`, `alpha = (1 - e) / q` (the reciprocal of the semi-major axis, negative
//! for a hyperbola) and time `t` since periapsis, Kepler's equation is the same line for ellipse, parabola and
//! hyperbola:
//!
//! ```text
//! sqrt(mu) t = q x + e U3(x)
//! ```
//!
//! For a hyperbola `x` is `sqrt(a) F`, with `F` the hyperbolic eccentric anomaly. Because `e - 1` enters only through
//! `alpha`, nothing cancels as `e` approaches 1.
//!
//! Sources: Danby, *Fundamentals of Celestial Mechanics*, 2nd ed., chapter 6 (universal variables and Stumpff
//! functions); Conway 1986, *Celestial Mechanics* 39, 199 (the Laguerre step). Both from memory.

/// The most steps that [`solve`] takes. Its tests hold the accuracy grid to 8.
pub const MAX_STEPS: u32 = 40;

/// The step size, relative to `x`, after which the cubic convergence of the Laguerre step leaves nothing to gain:
/// one step of relative size 1e-5 leaves an error of about 1e-15.
const LAST_STEP: f64 = 1e-5;

/// The longest scaled time that is told apart: beyond it (10^280 and more years for any planet) the exponentials of a
/// hyperbola would overflow, and [`solve`] answers for this time instead.
const LONGEST: f64 = 1e290;

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
        if z.abs() < 1.0 {
            Self::by_series(alpha, x, z)
        } else if z < 0.0 {
            Self::by_hyperbolic(alpha, x)
        } else {
            Self::by_circular(alpha, x)
        }
    }

    /// Taylor series in `z = alpha x²`; the first term left out is below 1e-18 for `|z| < 1`.
    fn by_series(alpha: f64, x: f64, z: f64) -> Self {
        let mut c2 = 0.0;
        let mut c3 = 0.0;
        for k in (0..10).rev() {
            c2 = (1.0 - z * c2) * RECIPROCAL[2 * k + 1] * RECIPROCAL[2 * k + 2];
            c3 = (1.0 - z * c3) * RECIPROCAL[2 * k + 2] * RECIPROCAL[2 * k + 3];
        }
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

    /// One `expm1` gives sinh F and cosh F - 1 without cancellation.
    fn by_hyperbolic(alpha: f64, x: f64) -> Self {
        let s = (-alpha).sqrt();
        let f = s * x.abs();
        let grown = libm::expm1(f);
        let sinh = 0.5 * (grown + grown / (grown + 1.0));
        let cosh_less_1 = 0.5 * grown * (grown / (grown + 1.0));
        let sign = x.signum();
        Self {
            x,
            u0: 1.0 + cosh_less_1,
            u1: sign * sinh / s,
            u2: cosh_less_1 / (s * s),
            u3: sign * (sinh - f) / s / (s * s),
        }
    }

    fn by_circular(alpha: f64, x: f64) -> Self {
        let s = alpha.sqrt();
        let anomaly = s * x;
        let (sin_half, cos_half) = libm::sincos(0.5 * anomaly);
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

/// `RECIPROCAL[n]` is 1/n; a table, because a division costs as much as the rest of the series' step.
const RECIPROCAL: [f64; 22] = {
    let mut table = [0.0; 22];
    let mut n = 1;
    while n < 22 {
        table[n] = 1.0 / n as f64;
        n += 1;
    }
    table
};

/// A root of Kepler's equation and what it took to find it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Root {
    /// The universal functions at the root.
    pub at: Universal,
    /// Steps taken, at most [`MAX_STEPS`].
    pub steps: u32,
}

/// Solves `tau = x + e U3(x)` for an orbit scaled to periapsis distance 1: `tau = t sqrt(mu / q³)` and
/// `alpha = 1 - e` exactly as the caller knows it (not recomputed from `e`, so that `e = 1 + 1e-9` keeps all its digits).
///
/// Any finite `tau`, any `e >= 0`. For an ellipse `|tau|` must not exceed half a period; the caller takes whole periods
/// off first. The left side grows and curves upwards for positive `x`, so the root is unique; it is kept in a bracket
/// and a step that would leave the bracket is replaced by its middle.
pub fn solve(e: f64, alpha: f64, tau: f64) -> Root {
    let size = tau.abs().min(LONGEST);
    let highest = if alpha > 0.0 {
        std::f64::consts::PI / alpha.sqrt()
    } else {
        f64::INFINITY
    };
    let (mut low, mut high) = (0.0, highest);
    let mut x = first_guess(e, alpha, size).min(highest);
    let mut steps = 0;
    loop {
        let u = Universal::at(alpha, x);
        let residual = x + e * u.u3 - size;
        if residual > 0.0 {
            high = x;
        } else {
            low = x;
        }
        let step = laguerre(residual, 1.0 + e * u.u2, e * u.u1);
        let next = x + step;
        steps += 1;
        // A last step may cross the bracket by a rounding; a long one that leaves it is replaced.
        let done = step.abs() <= LAST_STEP * x;
        x = if done || (next >= low && next <= high) {
            next
        } else {
            0.5 * (low + high)
        };
        if done || steps == MAX_STEPS {
            return Root {
                at: Universal::at(alpha, if tau < 0.0 { -x } else { x }),
                steps,
            };
        }
    }
}

/// Laguerre's step for degree 5, from a function's value, slope (positive) and curvature.
fn laguerre(value: f64, slope: f64, curvature: f64) -> f64 {
    // The curvature term is taken relative to the slope, so that slope² cannot overflow.
    let bend = 16.0 - 20.0 * (value / slope) * (curvature / slope);
    -5.0 * (value / slope) / (1.0 + bend.abs().sqrt())
}

/// A starting point: the root of the cubic that Kepler's equation is for a parabola, or, far out on a hyperbola where
/// the exponential has taken over, two rounds of `F = asinh((M + F) / e)`.
fn first_guess(e: f64, alpha: f64, tau: f64) -> f64 {
    let cubic = parabolic_guess(e, tau);
    if alpha * cubic * cubic > -6.0 {
        return cubic;
    }
    let s = (-alpha).sqrt();
    let mean_anomaly = tau * s * s * s;
    let first = libm::asinh(mean_anomaly / e);
    libm::asinh((mean_anomaly + first) / e) / s
}

/// The root of `x + e x³ / 6 = tau` (Cardano), never below the root for a hyperbola.
fn parabolic_guess(e: f64, tau: f64) -> f64 {
    if e * tau * tau < 1e-6 {
        return tau;
    }
    let half = 3.0 * tau / e;
    let grown = libm::cbrt(half + libm::hypot(half, (2.0 / e) * (2.0 / e).sqrt()));
    grown - 2.0 / (e * grown)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Eccentricities from nearly parabolic to nearly straight, by the difference from 1.
    fn hyperbolas() -> impl Iterator<Item = f64> {
        (0..=60).map(|i| 1e-9 * libm::pow(10.0, f64::from(i) / 4.0))
    }

    /// Scaled times from a rounding error to far beyond the age of the Sun, denser where curves bend.
    fn times() -> impl Iterator<Item = f64> {
        let wide = (0..600).map(|j| libm::pow(10.0, -18.0 + f64::from(j) / 2.0));
        let dense = (0..1200).map(|j| libm::pow(10.0, -4.0 + f64::from(j) / 100.0));
        wide.chain(dense)
    }

    /// The relative error of `x` that the residual of Kepler's equation stands for.
    fn error_in_x(e: f64, tau: f64, u: &Universal) -> f64 {
        ((u.x + e * u.u3 - tau) / (1.0 + e * u.u2) / u.x).abs()
    }

    #[test]
    fn hyperbolas_take_at_most_8_steps_from_any_time() {
        for excess in hyperbolas() {
            for tau in times() {
                let root = solve(1.0 + excess, -excess, tau);
                assert!(
                    root.steps <= 8,
                    "e - 1 = {excess}, tau = {tau}: {} steps",
                    root.steps
                );
                let error = error_in_x(1.0 + excess, tau, &root.at);
                // x carries a few roundings of the functions at it.
                assert!(
                    error < 1e-14,
                    "e - 1 = {excess}, tau = {tau}: relative error {error}"
                );
            }
        }
    }

    #[test]
    fn ellipses_and_the_parabola_take_at_most_8_steps() {
        for i in 0..=100 {
            let alpha = libm::pow(10.0, -0.12 * f64::from(i));
            let half_period = std::f64::consts::PI / (alpha * alpha.sqrt());
            for j in 1..=200 {
                let tau = half_period * f64::from(j) / 200.0;
                let root = solve(1.0 - alpha, alpha, tau);
                assert!(
                    root.steps <= 8,
                    "1 - e = {alpha}, tau = {tau}: {} steps",
                    root.steps
                );
                // Near apoapsis of a long ellipse the slope of tau is small only at periapsis, so 1e-13 is ample.
                assert!(
                    error_in_x(1.0 - alpha, tau, &root.at) < 1e-13,
                    "1 - e = {alpha}, tau = {tau}"
                );
            }
        }
        for tau in times() {
            let root = solve(1.0, 0.0, tau);
            assert!(
                root.steps <= 8 && error_in_x(1.0, tau, &root.at) < 1e-14,
                "parabola, tau = {tau}"
            );
        }
    }

    #[test]
    fn before_mirrors_after_and_periapsis_is_zero() {
        let after = solve(1.4, -0.4, 3.0).at;
        let before = solve(1.4, -0.4, -3.0).at;
        assert_eq!(
            (before.x, before.u1, before.u2, before.u3),
            (-after.x, -after.u1, after.u2, -after.u3)
        );
        assert_eq!(
            solve(1.4, -0.4, 0.0).at,
            Universal {
                x: 0.0,
                u0: 1.0,
                u1: 0.0,
                u2: 0.0,
                u3: 0.0
            }
        );
    }

    #[test]
    fn series_and_closed_form_agree_where_they_meet() {
        for alpha in [-1.0, 1.0] {
            let z = alpha;
            let series = Universal::by_series(alpha, 1.0, z);
            let closed = if alpha < 0.0 {
                Universal::by_hyperbolic(alpha, 1.0)
            } else {
                Universal::by_circular(alpha, 1.0)
            };
            for (a, b) in [
                (series.u0, closed.u0),
                (series.u1, closed.u1),
                (series.u2, closed.u2),
                (series.u3, closed.u3),
            ] {
                // sinh F - F loses one digit at F = 1.
                assert!(
                    (a / b - 1.0).abs() < 4e-15,
                    "alpha {alpha}: {a} against {b}"
                );
            }
        }
    }
}
