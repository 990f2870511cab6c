//! What the answer to a wish says, sentence by sentence.

use two_frames::physics::Free;

use super::aiming::{of, words};

/// The sentences after a wish, joined.
#[track_caller]
pub(crate) fn told(text: &str, goal: &str, free: Free) -> String {
    words(&of(text, goal, free)).join(" ")
}

pub(crate) const CUSTOM: &str = "planet=custom&gm=100&radius=1000&orbit=1";

#[test]
fn an_answer_is_told_with_its_aim_and_its_doubt() {
    // Source of the numbers: closed forms worked by hand for the turn, r = a (1/sin(δ/2) − 1) with a = 126 686 531.9 / 81 km
    // and δ = 90°: r = 647 843 km, 9.06 radii of 71 492 km, 576 351 km above them; dδ/db = 2a/(a² + b²) = 1/(a) rad/km
    // at b = a, so 100 km change it by 0.00366°.
    assert_eq!(
        words(&of("", "turn=90", Free::AimPoint)),
        [
            "The path turns by 90.0°.",
            "Aim for a periapsis of 9.06 planet radii, 576\u{202f}351 km above the surface, at an aim angle of 0.0°.",
            "An aim 100 km off changes that by up to 0.0037°.",
        ]
    );
    let told = told("", "reach=saturn", Free::Approach);
    assert!(
        told.starts_with("It just reaches the orbit of Saturn: the farthest distance from the Sun becomes 9.54 AU."),
        "{told}"
    );
    assert!(
        told.contains("with an approach angle of 129.0° and an aim angle of 0.0°."),
        "{told}"
    );
}

#[test]
fn each_answer_has_its_own_words() {
    for (text, goal, free, part) in [
        ("", "leave=0", Free::AimPoint, "It just leaves the Sun. Aim"),
        (
            "",
            "leave=5",
            Free::AimPoint,
            "It leaves the Sun, with 5.00 km/s to spare.",
        ),
        (
            "",
            "change=0",
            Free::AimPoint,
            "The speed round the Sun stays as it was (change 0.00 km/s).",
        ),
        (
            "",
            "change=-3",
            Free::AimPoint,
            "The speed round the Sun changes by −3.00 km/s.",
        ),
        (
            "planet=uranus",
            "reach=saturn",
            Free::AimPoint,
            "orbit of Saturn: the nearest distance to the Sun",
        ),
        // Source: v∞ along the planet's motion, √(V² + v∞² + 2 V v∞ cos 129°) = 10.18 km/s before and V + v∞ = 22.06 after.
        (
            "",
            "most=gain",
            Free::AimPoint,
            "The most that there is to gain round the Sun: +11.88 km/s.",
        ),
        (
            "aim=180",
            "most=loss",
            Free::Periapsis,
            "With the aim angle as it is, the most that there is to lose",
        ),
        (
            "approach=180",
            "most=gain",
            Free::AimPoint,
            "Graze the surface at an aim angle of 0.0°. A real pass has to stay farther out, and gets less.",
        ),
        (
            "approach=90",
            "change=0",
            Free::AimPoint,
            "A real pass has to stay farther out.",
        ),
        // Source: the greatest tilt of a sum of two velocities is asin(v∞/V) = asin(9/13.058) = 43.6°, 180° where v∞ is the larger.
        (
            "",
            "most=inclination",
            Free::AimPoint,
            "The most that the orbit can be tilted against that of Jupiter: 43.6°.",
        ),
        (
            "v-infinity=20",
            "most=inclination",
            Free::AimPoint,
            "180.0°, which is over 90°, so that it is run through backwards.",
        ),
    ] {
        let told = told(text, goal, free);
        assert!(
            told.contains(part),
            "{text} {goal}: “{part}” is not in: {told}"
        );
    }
}

/// A hundred kilometres are a small doubt only where the planet is much larger.
#[test]
fn a_planet_as_small_as_the_doubt_has_none_told() {
    let small = "planet=custom&gm=1e-3&radius=10&orbit=1";
    assert!(!told(small, "turn=0.001", Free::AimPoint).contains("100 km"));
    assert!(told(CUSTOM, "turn=0.01", Free::AimPoint).contains("100 km"));
}

/// Every caution of the answer is true, and none is missing. Source: 48.2 million km, as in tests/physics/constants.rs.
#[test]
fn only_a_pass_beyond_the_sphere_of_influence_is_doubted() {
    let mut seen = [0; 2];
    for i in 0..50 {
        let aiming = of(
            "",
            &format!("perihelion={}", 0.8 + 0.02 * f64::from(i)),
            Free::AimPoint,
        );
        let far = aiming.flyby.impact_parameter_km > 48.205e6;
        let said = words(&aiming).join(" ").contains("no real pass");
        assert_eq!(said, far, "{}", aiming.answer);
        seen[usize::from(said)] += 1;
    }
    assert!(seen.iter().all(|count| *count > 2), "{seen:?}");
}
