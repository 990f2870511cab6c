//! Two Frames is a flyby teaching sandbox: one probe passes one moving planet, and the pass is seen in two frames of
//! reference at once, as the planet sees it and as the Sun sees it. The speed relative to the planet is the same after
//! as before; the speed round the Sun is not.
//!
//! **For teaching, not for flying anything.**
//!
//! # Conventions
//!
//! - Core units: km, s, km/s, km³/s², radians; the unit stands in the name or the doc comment. [`physics`] knows no
//!   others; degrees, AU, planet radii and days are what people set ([`scenario`]) and read ([`report`], labels of [`figure`]).
//! - Axes at the planet, at the moment of periapsis: `y` along the planet's velocity round the Sun ("forward"), `z` along
//!   its orbit's normal (north), `x = y × z` away from the Sun. On the page y is up and x is right: the Sun is to the left.
//! - The approach angle α runs from the planet's velocity to the incoming v-infinity: 0° catches the planet up from
//!   behind, 180° meets it head-on; positive heads outward, negative sunward. The incoming direction is
//!   S = (sin α cos κ, cos α, sin α sin κ) with the crank angle κ, 0 in the orbit plane.
//! - The aim plane is perpendicular to S, with axes T = S × z (x instead of z where S is within 1e-9 of ±z) and R = S × T;
//!   the aim angle θ runs from T towards R.
//! - With μ, v∞ and periapsis r: a = μ/v∞² (counted positive), e = 1 + r/a, turn δ = 2 asin(1/e), b = r √(1 + 2a/r).
//!   Outgoing direction S' = cos δ S − sin δ B̂, periapsis direction p = sin(δ/2) S + cos(δ/2) B̂,
//!   Δv = −2 v∞ sin(δ/2) p. The energy round the Sun changes by V·Δv: a gain exactly when periapsis lies behind the planet.
//! - Time is 0 at periapsis.
//!
//! # What this model leaves out
//!
//! - Patched conics: near the planet only the planet pulls, far from it only the Sun does. A full calculation differs by
//!   about 0.1 to 0.3 km/s at Jupiter.
//! - Straight planet path: during the pass the planet moves straight ahead at constant speed.
//! - Circular orbit: the planet goes round the Sun on a circle of its mean distance.
//! - No moons, no rings, no air, no engine: nothing but gravity acts, and the planet is a smooth ball.
//!
//! # An example
//!
//! The pass that the page opens with, and what is the same in both views and what is not:
//!
//! ```
//! use two_frames::sandbox::Sandbox;
//!
//! let mut sandbox = Sandbox::open("planet=jupiter&v-infinity=9&approach=129&periapsis=8");
//! let flyby = sandbox.solved()?.flyby;
//! assert!((flyby.velocity_out.speed() - flyby.velocity_in.speed()).abs() < 1e-13);
//! assert!(flyby.sun_velocity_out.speed() > 2.0 * flyby.sun_velocity_in.speed());
//! assert_eq!(sandbox.panel()?.sun_sentence.to_string(), "Round the Sun: 10.18 km/s in, 21.08 km/s out.");
//! # Ok::<(), two_frames::physics::FlybyError>(())
//! ```
//!
//! # Contents
//!
//! Each layer may use those below it and nothing above: `web` and `cli`, [`sandbox`], [`figure`], [`report`],
//! [`scenario`], [`physics`]. [`decimal`] serves all but the physics.

#[cfg(all(feature = "command", not(target_arch = "wasm32")))]
pub mod cli;
pub mod decimal;
pub mod figure;
pub mod physics;
pub mod report;
pub mod sandbox;
pub mod scenario;
#[cfg(target_arch = "wasm32")]
pub mod web;

/// The browser's memory. Constant time, and a fifth of the size of the standard library's allocator.
#[cfg(target_arch = "wasm32")]
#[global_allocator]
static MEMORY: rlsf::SmallGlobalTlsf = rlsf::SmallGlobalTlsf::new();
