//! The solver of Kepler's equation against a bisection of the equation in its textbook form, e sinh F − F = M.

use std::f64::consts::PI;

use two_frames::physics::{MAX_STEPS, Root, solve_kepler};

use crate::common::{Worst, logarithmic, relative};

/// sinh F − F, by its series where the difference would cancel.
fn sinh_less(f: f64) -> f64 {
    if f > 2.0 {
        return f.sinh() - f;
    }
    let (mut term, mut sum, mut n) = (f, 0.0, 1.0);
    while term > 1e-18 * sum || n < 3.0 {
        term *= f * f / ((n + 1.0) * (n + 2.0));
        sum += term;
        n += 2.0;
    }
    sum
}

/// F − sin F, in the same way.
fn less_sin(f: f64) -> f64 {
    if f > 2.0 {
        return f - f.sin();
    }
    let (mut term, mut sum, mut n) = (f, 0.0, 1.0);
    while term.abs() > 1e-18 * sum || n < 3.0 {
        term *= -f * f / ((n + 1.0) * (n + 2.0));
        sum -= term;
        n += 2.0;
    }
    sum
}

/// The largest f64 between 0 and `high` at which an increasing function is not above `target`, by bisecting the
/// numbers themselves: 64 steps, to the last bit, at every size.
fn bisect(high: f64, target: f64, function: impl Fn(f64) -> f64) -> f64 {
    let (mut low, mut high) = (0, high.to_bits());
    while high - low > 1 {
        let middle = low + (high - low) / 2;
        if function(f64::from_bits(middle)) > target {
            high = middle;
        } else {
            low = middle;
        }
    }
    f64::from_bits(low)
}

/// The universal anomaly at scaled time `tau` on a hyperbola: F/√(e − 1), from (e − 1) sinh F + (sinh F − F) = M, which is
/// e sinh F − F without the cancellation near e = 1. Both sides are divided by (e − 1)^1.5, because M itself can underflow.
fn hyperbolic(excess: f64, tau: f64) -> f64 {
    let s = excess.sqrt();
    bisect(709.0, tau, |f| f.sinh() / s + sinh_less(f) / (excess * s)) / s
}

/// The same on an ellipse, for half a period: E/√(1 − e), from E − e sin E = (1 − e) sin E + (E − sin E) = M.
fn elliptic(alpha: f64, tau: f64) -> f64 {
    let s = alpha.sqrt();
    bisect(PI, tau, |f| f.sin() / s + less_sin(f) / (alpha * s)) / s
}

fn root(excess: f64, tau: f64) -> Root {
    solve_kepler(1.0 + excess, -excess, tau)
}

#[test]
fn hyperbolas_agree_with_bisection() {
    let mut worst = Worst::default();
    for i in 0..=60 {
        let excess = 10_f64.powf(-9.0 + 0.25 * f64::from(i));
        for j in -60..=400 {
            // Up to 10^40 periapsis times: beyond the age of the universe for any pass.
            let tau = 10_f64.powf(f64::from(j) / 10.0);
            let want = hyperbolic(excess, tau);
            let got = root(excess, tau);
            worst.note(relative(got.at.x, want), || {
                format!("e − 1 = {excess:e}, tau = {tau:e}")
            });
        }
    }
    // Both ways round x a few times; where F is large its own rounding is all there is.
    worst.within("hyperbolic anomaly", 1e-14);
}

#[test]
fn ellipses_agree_with_bisection() {
    let mut worst = Worst::default();
    for i in 0..=48 {
        let alpha = 10_f64.powf(-0.25 * f64::from(i));
        let half_period = PI / (alpha * alpha.sqrt());
        for j in 0..400 {
            let tau = half_period * 10_f64.powf(-f64::from(j) / 20.0);
            let want = elliptic(alpha, tau.min(0.999_999 * half_period));
            let got = solve_kepler(1.0 - alpha, alpha, tau.min(0.999_999 * half_period));
            worst.note(relative(got.at.x, want), || {
                format!("1 − e = {alpha:e}, tau = {tau:e}")
            });
        }
    }
    worst.within("elliptic anomaly", 1e-14);
}

#[test]
fn the_parabola_agrees_with_barkers_equation() {
    // Source: Barker's equation, from memory (any text): for periapsis distance 1, tau = √2 (t + t³/3) with t = tan(ν/2) and
    // x = √2 t. Its root in closed form is t = w − 1/w with w³ = h + √(h² + 1), h = 3 tau/(2√2). M
    let mut worst = Worst::default();
    for j in -20..=400 {
        let tau = 10_f64.powf(f64::from(j) / 10.0);
        let h = 1.5 * tau / 2_f64.sqrt();
        let w = (h + h.hypot(1.0)).cbrt();
        // w − 1/w cancels for small times: there 2 sinh(ln w), with ln w = asinh(h)/3.
        let tangent = if tau < 1e3 {
            2.0 * (h.asinh() / 3.0).sinh()
        } else {
            w - 1.0 / w
        };
        let got = solve_kepler(1.0, 0.0, tau).at.x;
        worst.note(relative(got, tangent * 2_f64.sqrt()), || {
            format!("tau = {tau:e}")
        });
    }
    worst.within("parabolic anomaly", 1e-14);
}

#[test]
fn never_more_than_8_steps_over_the_accuracy_grid() {
    // e − 1 from below Jupiter at 0.01 km/s (5.6e-8) to beyond Mars at 100 km/s and 10 000 radii (7.9e6); times from a
    // microsecond to 10^9 years, in units of √(q³/μ), for any planet.
    let mut most = 0;
    for i in 0..=160 {
        let excess = 10_f64.powf(-9.0 + 0.1 * f64::from(i));
        for j in 0..=1_200 {
            let tau = 10_f64.powf(-12.0 + f64::from(j) / 30.0);
            most = most.max(root(excess, tau).steps);
        }
    }
    println!("most steps: {most}");
    assert!(most <= 8, "{most} steps");
}

#[test]
fn hostile_numbers_still_converge() {
    let mut rng = fastrand::Rng::with_seed(40);
    let mut most = 0;
    for _ in 0..200_000 {
        let tau = logarithmic(&mut rng, 1e-300, 1e300);
        let excess = logarithmic(&mut rng, 1e-300, 1e200);
        let alpha = logarithmic(&mut rng, 1e-15, 1.0);
        let half_period = PI / (alpha * alpha.sqrt());
        for root in [
            root(excess, tau),
            root(excess, -tau),
            solve_kepler(1.0, 0.0, tau),
            solve_kepler(1.0 - alpha, alpha, tau.min(half_period)),
            solve_kepler(1.0 - alpha, alpha, half_period * rng.f64()),
        ] {
            most = most.max(root.steps);
            assert!(
                root.at.x.is_finite() && root.at.u3.is_finite(),
                "{root:?} at {tau:e}, {excess:e}"
            );
        }
    }
    println!("most steps for hostile numbers: {most}");
    assert!(most < MAX_STEPS, "{most} steps");
}

#[test]
fn later_is_farther_along() {
    let mut rng = fastrand::Rng::with_seed(41);
    for _ in 0..100_000 {
        let excess = logarithmic(&mut rng, 1e-9, 1e6);
        let tau = logarithmic(&mut rng, 1e-9, 1e20);
        // x grows as tau, as its cube root, or far out as its logarithm (F is below 60 here): 4e-12 later moves it by a share of
        // 6e-14 or more, and a root is good to 1e-14 of itself.
        let later = tau * (1.0 + 4e-12);
        let (here, there) = (root(excess, tau).at.x, root(excess, later).at.x);
        assert!(here < there, "e − 1 = {excess:e}, tau = {tau:e}");
        assert!(
            root(excess, -tau).at.x > root(excess, -later).at.x,
            "before periapsis"
        );
    }
}
