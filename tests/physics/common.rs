//! What the tests share: comparisons that say what they compared, inputs, and the relations worked out a second way.

use fastrand::Rng;
use glam::DVec3;
use two_frames::physics::units::RADIANS_PER_DEGREE;
use two_frames::physics::{Body, Encounter, Flyby, Planet};

/// The eight planets, from the Sun outwards.
pub(crate) const BODIES: [Body; 8] = [
    Body::Mercury,
    Body::Venus,
    Body::Earth,
    Body::Mars,
    Body::Jupiter,
    Body::Saturn,
    Body::Uranus,
    Body::Neptune,
];

/// How far `got` is from `want`, as a share of `want`.
pub(crate) fn relative(got: f64, want: f64) -> f64 {
    if got.to_bits() == want.to_bits() {
        0.0
    } else {
        ((got - want) / want).abs()
    }
}

/// How far the vector `got` is from `want`, as a share of `want`'s length.
pub(crate) fn relative_vector(got: DVec3, want: DVec3) -> f64 {
    (got - want).length() / want.length()
}

/// Fails unless `got` is within the share `tolerance` of `want`. NaN fails.
#[track_caller]
pub(crate) fn close(what: &str, got: f64, want: f64, tolerance: f64) {
    let error = relative(got, want);
    assert!(
        error <= tolerance,
        "{what}: {got:e}, expected {want:e}: off by {error:e} of it, {tolerance:e} allowed"
    );
}

/// Fails unless `got` is within `tolerance` (same unit) of `want`. NaN fails.
#[track_caller]
pub(crate) fn near(what: &str, got: f64, want: f64, tolerance: f64) {
    let error = (got - want).abs();
    assert!(
        error <= tolerance,
        "{what}: {got:e}, expected {want:e}: off by {error:e}, {tolerance:e} allowed"
    );
}

/// Fails unless `got` rounds to the number as `printed` ("12.70", "4.059e9"), give or take `carried`: what the
/// worked example's own rounded intermediate steps, or rounded inputs, can move its answer by (same unit).
#[track_caller]
pub(crate) fn printed(what: &str, got: f64, printed: &str, carried: f64) {
    let want: f64 = printed.parse().expect("a number as a book prints it");
    let half_a_place = 0.5 * last_place(printed);
    // A share of 1e-12 covers the rounding of the decimal number itself.
    near(what, got, want, half_a_place + carried + 1e-12 * want.abs());
}

/// The value of one unit in the last printed place.
fn last_place(printed: &str) -> f64 {
    let (digits, exponent) = printed.split_once('e').unwrap_or((printed, "0"));
    let decimals = digits
        .split_once('.')
        .map_or(0, |(_, fraction)| fraction.len());
    let exponent: i32 = exponent.parse().expect("a whole exponent");
    10_f64.powi(exponent - i32::try_from(decimals).expect("a few decimals"))
}

/// A running maximum that remembers where it was met.
#[derive(Default)]
pub(crate) struct Worst {
    error: f64,
    place: String,
}

impl Worst {
    /// Takes note of one error. NaN counts as the worst of all.
    pub(crate) fn note(&mut self, error: f64, place: impl FnOnce() -> String) {
        if error.is_nan() || error > self.error {
            self.error = if error.is_nan() { f64::INFINITY } else { error };
            self.place = place();
        }
    }

    /// Prints the worst error (seen with `--nocapture`) and fails if it is above `tolerance`.
    #[track_caller]
    pub(crate) fn within(self, what: &str, tolerance: f64) {
        println!("worst {what}: {:.2e} at {}", self.error, self.place);
        assert!(
            self.error <= tolerance,
            "{what}: {:e} at {}, {tolerance:e} allowed",
            self.error,
            self.place
        );
    }
}

/// An encounter in the planet's orbit plane, aimed along +T.
pub(crate) fn encounter(
    planet: Planet,
    v_infinity_km_s: f64,
    approach_deg: f64,
    periapsis_km: f64,
) -> Encounter {
    Encounter {
        planet,
        v_infinity_km_s,
        approach_rad: approach_deg * RADIANS_PER_DEGREE,
        crank_rad: 0.0,
        periapsis_km,
        aim_rad: 0.0,
    }
}

/// Solves an encounter that has to have an answer.
#[track_caller]
pub(crate) fn solve(encounter: &Encounter) -> Flyby {
    Flyby::solve(encounter).unwrap_or_else(|error| panic!("{error:?} for {encounter:?}"))
}

/// A number between `low` and `high`, each power of ten equally likely.
pub(crate) fn logarithmic(rng: &mut Rng, low: f64, high: f64) -> f64 {
    10_f64.powf(low.log10() + rng.f64() * (high.log10() - low.log10()))
}

/// Any encounter that the page allows, at one of the eight planets, every angle out of the plane included.
pub(crate) fn random_encounter(rng: &mut Rng) -> Encounter {
    let planet = Planet::of(BODIES[rng.usize(..BODIES.len())]);
    let mut angle = || (rng.f64() * 2.0 - 1.0) * std::f64::consts::PI;
    let (approach_rad, crank_rad, aim_rad) = (angle(), angle(), angle());
    Encounter {
        planet,
        v_infinity_km_s: logarithmic(rng, 0.01, 100.0),
        approach_rad,
        crank_rad,
        periapsis_km: planet.radius_km * logarithmic(rng, 1.0, 1e4),
        aim_rad,
    }
}

/// The angle between two vectors, by the arctangent that keeps its digits at every angle.
pub(crate) fn angle_between(a: DVec3, b: DVec3) -> f64 {
    a.cross(b).length().atan2(a.dot(b))
}
