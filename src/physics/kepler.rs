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
//! Sources: Danby, *Fundamentals of Celestial Mechanics*, 2nd ed., chapter 6 (universal variables); Conway 1986,
//! *Celestial Mechanics* 39, 199 (the Laguerre step). Both from memory.

use super::universal::Universal;

/// The most steps that [`solve`] takes. Its tests hold the accuracy grid to 8.
pub const MAX_STEPS: u32 = 40;

/// The step size, relative to `x` and to the length 1/sqrt(|alpha|) over which the functions change by their own size,
/// that leaves nothing to gain: the error behind a step goes with its sixth power and is below a rounding here.
const LAST_STEP: f64 = 5e-3;

/// The longest scaled time that is told apart: beyond it (10^280 and more years for any planet) the exponentials of a
/// hyperbola would overflow, and [`solve`] answers for this time instead.
const LONGEST: f64 = 1e290;

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
    let size = tau.abs().min(LONGEST / (1.0 + alpha.abs()));
    // The left side keeps growing beyond apoapsis (E = pi): a bracket to E = 4 leaves room round a root there.
    let turn = if alpha > 0.0 {
        1.0 / alpha.sqrt()
    } else {
        f64::INFINITY
    };
    let (mut low, mut high) = (0.0, 4.0 * turn);
    let mut x = first_guess(e, alpha, size).min(3.0 * turn);
    let mut steps = 0;
    loop {
        let u = Universal::at(alpha, x);
        let residual = x + e * u.u3 - size;
        if residual > 0.0 {
            high = x;
        } else {
            low = x;
        }
        let step = step_from(residual, e, alpha, &u);
        steps += 1;
        // A last step may cross the bracket by a rounding; a long one that leaves it is replaced.
        let last = is_last(step, alpha, x);
        if last || steps == MAX_STEPS {
            let at = if last { u.moved(alpha, step) } else { u };
            return Root {
                at: if tau < 0.0 { at.mirrored() } else { at },
                steps,
            };
        }
        let next = x + step;
        x = if next >= low && next <= high {
            next
        } else {
            0.5 * (low + high)
        };
    }
}

fn is_last(step: f64, alpha: f64, x: f64) -> bool {
    step.abs() <= LAST_STEP * x && step * step * alpha.abs() <= LAST_STEP * LAST_STEP
}

/// The step from a place with the given residual towards the root.
fn step_from(residual: f64, e: f64, alpha: f64, u: &Universal) -> f64 {
    // Relative to the slope, so that no square can overflow.
    let per_slope = 1.0 / (1.0 + e * u.u2);
    let pull = e * per_slope;
    let value = residual * per_slope;
    let half_curvature = 0.5 * pull * u.u1;
    if value.abs() > 0.1 * u.x || value * value * alpha.abs() > 0.01 {
        return laguerre(value, half_curvature);
    }
    // So near that the Taylor polynomial is the equation: its series turned round to the third power ...
    let third = pull * u.u0 / 6.0;
    let (v2, v3) = (value * half_curvature, value * (value * third));
    let step = -value * (1.0 + v2 + 2.0 * v2 * v2 - v3);
    // ... then one Newton step, on terms that are each the polynomial's to the power of their name over the first.
    let z = alpha * step * step;
    let (p2, p3) = (step * half_curvature, step * (step * third));
    let (p4, p5) = (-z * p2 / 12.0, -z * p3 / 20.0);
    let rest = value + step * (1.0 + p2 + p3 + p4 + p5);
    let slope = 1.0 + 2.0 * p2 + 3.0 * p3 + 4.0 * p4 + 5.0 * p5;
    step - rest / slope
}

/// Laguerre's step for degree 5, which goes the right way from anywhere: from a function's value and half its
/// curvature, both relative to its slope.
fn laguerre(value: f64, half_curvature: f64) -> f64 {
    let bend = 16.0 - 40.0 * value * half_curvature;
    -5.0 * value / (1.0 + bend.abs().sqrt())
}

/// A starting point, good to half a per cent: the equation becomes nearly a cubic in `sinh(F/3)`, or in `sin(E/3)`,
/// whose root is Cardano's, and one fitted term mends most of what the cubic leaves out.
///
/// Source: Mikkola 1987, *Celestial Mechanics* 40, 329, from memory; rewritten in `y = sinh(F/3) / sqrt(-alpha)`, which
/// stays finite through the parabola: `tau = 3 y + (4 e + 1/2) y³`.
fn first_guess(e: f64, alpha: f64, tau: f64) -> f64 {
    let y = cubic_root((4.0 * e + 0.5).sqrt(), tau);
    let square = alpha * y * y;
    if alpha < 0.0 {
        // The square of sinh(F/3), capped where the fitted term has long reached its limit.
        let w = (-square).min(1e60);
        let mended = y + y * (0.071 * w * w / ((1.0 + 0.45 * w) * (1.0 + 4.0 * w) * e));
        3.0 * asinh_roughly(alpha, mended)
    } else {
        let mended = y - y * 0.078 * square * square / (1.0 + e);
        alpha * tau + e * mended * (3.0 - 4.0 * alpha * mended * mended)
    }
}

/// `asinh(s y) / s` with `s = sqrt(-alpha)`, to three digits or better: a fraction fitted to it up to s y = 3.
fn asinh_roughly(alpha: f64, y: f64) -> f64 {
    let square = -alpha * y * y;
    if square < 10.0 {
        y * (1.0 + square * (0.428_4 + square * 0.012_99))
            / (1.0 + square * (0.593_5 + square * 0.042_05))
    } else {
        let s = (-alpha).sqrt();
        libm::log1p(2.0 * s * y + 0.5 / (s * y) - 1.0) / s
    }
}

/// The root of `3 y + r² y³ = tau` (Cardano, with `r y` as the unknown), written so that nothing cancels for small `tau`.
fn cubic_root(r: f64, tau: f64) -> f64 {
    let half = 0.5 * r * tau;
    // Beyond 1e100 the square would overflow in the end, and 1 is nothing beside it.
    let root = if half < 1e100 {
        (half * half + 1.0).sqrt()
    } else {
        half
    };
    let grown = cube_root_roughly(half + root);
    let shrunk = 1.0 / grown;
    tau / (grown * grown + 1.0 + shrunk * shrunk)
}

/// The cube root of a number above 0, to four digits: a third of the exponent (Kahan's constant makes that good to 6 %,
/// from memory) and one of Halley's steps.
fn cube_root_roughly(number: f64) -> f64 {
    const THIRDS: u64 = 715_094_163 << 32;
    let root = f64::from_bits(number.to_bits() / 3 + THIRDS);
    let cube = root * root * root;
    root * ((cube + 2.0 * number) / (2.0 * cube + number))
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
}
