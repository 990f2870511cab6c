//! Why a wish cannot be met: the reason given is the one that holds.

use two_frames::physics::Free;
use two_frames::report::Aiming;
use two_frames::scenario::{Scenario, Wish};

use super::aim_words::{CUSTOM, told};
use super::aiming::words;

/// Scenario text, goal, what is free, and two parts of what is said.
type Case = (&'static str, &'static str, Free, [&'static str; 2]);

const CASES: [Case; 18] = [
    // Source: sin(δ/2) = 1/(1 + R v∞²/GM): 146.0° for Jupiter at 9 km/s, 63.4° at 40 km/s.
    (
        "",
        "turn=180",
        Free::AimPoint,
        [
            "At 9.00 km/s Jupiter cannot turn the path by more than 146.0°.",
            "A slower approach turns farther.",
        ],
    ),
    (
        "v-infinity=40",
        "turn=90",
        Free::Approach,
        [
            "At 40.00 km/s Jupiter cannot turn the path by more than 63.4°.",
            "A slower approach",
        ],
    ),
    (
        "",
        "turn=0.001",
        Free::AimPoint,
        [
            "Every pass out to 10\u{202f}000 planet radii turns the path by 0.3° or more",
            "A faster approach",
        ],
    ),
    (
        "",
        "aphelion=3",
        Free::Approach,
        [
            "The pass happens 5.20 AU from the Sun",
            "A planet nearer to the Sun",
        ],
    ),
    (
        "",
        "perihelion=7",
        Free::Approach,
        ["cannot be more than that.", "A planet farther from the Sun"],
    ),
    (
        "",
        "change=-50",
        Free::Approach,
        [
            "it cannot lose more than all of that.",
            "changes the speed by −",
        ],
    ),
    (
        "v-infinity=4",
        "leave=5",
        Free::AimPoint,
        [
            "it cannot leave Jupiter faster than 17.06 km/s round the Sun, which is too slow.",
            "Even the best pass stays with the Sun.",
        ],
    ),
    (
        "v-infinity=100",
        "leave=1",
        Free::AimPoint,
        [
            "it cannot leave Jupiter slower than 86.94 km/s round the Sun, which is too fast.",
            "Every pass leaves the Sun, with ",
        ],
    ),
    (
        "v-infinity=100",
        "aphelion=9",
        Free::AimPoint,
        [
            "cannot turn the path by more than",
            "Every pass leaves the Sun for good.",
        ],
    ),
    (
        "planet=mars",
        "reach=saturn",
        Free::AimPoint,
        [
            "and no aim point does it.",
            "With the approach angle free too it can be done.",
        ],
    ),
    (
        "aim=90&approach=170&v-infinity=6",
        "leave=4.5",
        Free::Periapsis,
        [
            "with this aim angle no ",
            "With the approach angle free too it can be done.",
        ],
    ),
    (
        "",
        "change=0",
        Free::Periapsis,
        [
            "Every pass out to",
            "With the aim angle free too it can be done.",
        ],
    ),
    (
        "approach=0",
        "most=gain",
        Free::AimPoint,
        [
            "There is nothing to gain here: the best pass changes the speed round the Sun by −5.1 × 10⁻⁵ km/s.",
            "which is too much already.",
        ],
    ),
    (
        "approach=180",
        "most=loss",
        Free::AimPoint,
        [
            "There is nothing to lose here",
            "which is too much already.",
        ],
    ),
    (
        "v-infinity=0.01",
        "most=gain",
        Free::AimPoint,
        [
            "The search ends there; farther out there may be more.",
            "these numbers describe no real pass.",
        ],
    ),
    (
        "",
        "most=inclination",
        Free::Periapsis,
        [
            "There is no tilt to be had here",
            "every path stays in the plane of the orbit of Jupiter.",
        ],
    ),
    (
        "",
        "perihelion=1",
        Free::AimPoint,
        [
            "1.00 AU.",
            "sphere of influence of Jupiter, 4.82056 × 10⁷ km from its centre",
        ],
    ),
    (
        CUSTOM,
        "turn=90",
        Free::AimPoint,
        ["At 9.00 km/s the custom planet cannot turn", "A slower"],
    ),
];

#[test]
fn each_reason_is_the_one_that_holds() {
    for (text, goal, free, parts) in CASES {
        let told = told(text, goal, free);
        for part in parts {
            assert!(
                told.contains(part),
                "{text} {goal}: “{part}” is not in: {told}"
            );
        }
    }
}

#[test]
fn the_custom_planet_starts_a_sentence_with_a_capital() {
    let aside =
        "planet=custom&gm=126686531.9&radius=71492&orbit=5.2&v-infinity=9&approach=60&aim=90";
    let told = told(aside, "leave=9", Free::Periapsis);
    assert!(
        told.starts_with("The custom planet can turn the path far enough"),
        "{told}"
    );
}

/// Only the plane has been searched, so the words speak of the plane alone.
#[test]
fn a_search_in_the_plane_speaks_of_the_plane() {
    for (text, goal) in [
        ("planet=mars&v-infinity=12", "reach=neptune"),
        ("planet=earth&v-infinity=14", "leave=1"),
    ] {
        let scenario = Scenario::read_strictly(text).expect("a good text");
        let wish = Wish::read(goal).expect("a goal");
        let aiming = Aiming::new(&scenario, wish, Free::AimPoint, true).expect("an answer");
        let said = words(&aiming).join(" ");
        assert!(said.contains("in the orbit plane"), "{said}");
        assert!(!told(text, goal, Free::AimPoint).contains("in the orbit plane"));
    }
}
