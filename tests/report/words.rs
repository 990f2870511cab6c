//! Sentences: what they say and the numbers in them.

use two_frames::physics::FlybyError;
use two_frames::report::{
    cautions, degrees, fixed, moment, motion_note, planet_sentence, refusal, short, short_span,
    significant, span, sun_sentence, why_sentence,
};

use super::{Solved, many};

/// The four sentences of a scenario text: planet frame, Sun frame, the planet's motion, the reason.
fn told(text: &str) -> [String; 4] {
    let solved = Solved::of(text);
    let pass = solved.pass();
    [
        planet_sentence(&pass),
        sun_sentence(&pass),
        motion_note(&pass),
        why_sentence(&pass),
    ]
    .map(|sentence| sentence.to_string())
}

#[test]
fn the_first_pass_is_told_as_promised() {
    assert_eq!(
        told(""),
        [
            "Relative to Jupiter: 9.00 km/s in, 9.00 km/s out.",
            "Round the Sun: 10.18 km/s in, 21.08 km/s out.",
            "Jupiter moves at 13.06 km/s",
            "It passes behind Jupiter, and the pull drags it along: +10.90 km/s round the Sun, paid for by Jupiter.",
        ]
    );
}

#[test]
fn each_reason_has_its_own_sentence() {
    // Source of the numbers: as in the tables, the closed forms in another language, run once (R).
    for (text, why) in [
        (
            "aim=180",
            "It passes ahead of Jupiter, and the pull holds it back: −1.23 km/s round the Sun, handed to Jupiter.",
        ),
        (
            "v-infinity=13.31179130307133&approach=30&periapsis=10",
            "Jupiter pulls it sideways only, so the path seen from Jupiter turns by 60.0° and the speed round the Sun is as before (change 0.00 km/s).",
        ),
        (
            "planet=mars&v-infinity=40&approach=91&periapsis=10000",
            "The path seen from Mars turns by 0.0°, and the speed round the Sun hardly changes (by 0.00 km/s): the pull adds \
             almost nothing along the motion of Mars.",
        ),
        (
            "periapsis=0.6",
            "The path would come within 0.6 planet radii of the centre of Jupiter, which is below its surface: aim farther \
             out, with a periapsis over 1, to pass.",
        ),
    ] {
        assert_eq!(told(text)[3], why, "{text}");
    }
}

#[test]
fn a_strike_is_told_to_its_end() {
    let [planet, sun, ..] = told("periapsis=0.6");
    // Source: speed at the surface √(v∞² + 2μ/R) = √(81 + 2·126686531.9/71492) = 60.21 km/s, worked by hand.
    assert_eq!(
        planet,
        "Relative to Jupiter: 9.00 km/s in; it strikes Jupiter at 60.21 km/s and does not come out."
    );
    assert_eq!(sun, "Round the Sun: 10.18 km/s in; nothing comes out.");
}

#[test]
fn a_planet_without_a_name_starts_a_sentence_with_a_capital() {
    let [planet, _, motion, _] = told("planet=custom&gm=1e6&radius=20000&orbit=1");
    assert!(
        planet.starts_with("Relative to the custom planet: "),
        "{planet}"
    );
    assert_eq!(motion, "The custom planet moves at 29.78 km/s");
}

/// "Behind" goes with a gain and "ahead" with a loss, whatever the pass.
#[test]
fn the_reason_given_fits_the_change() {
    let mut seen = [0; 2];
    for solved in many().iter().filter(|solved| !solved.flyby.strikes()) {
        let why = why_sentence(&solved.pass()).to_string();
        let change = solved.flyby.sun_velocity_out.speed() - solved.flyby.sun_velocity_in.speed();
        for (i, (word, sign)) in [("passes behind", 1.0), ("passes ahead of", -1.0)]
            .into_iter()
            .enumerate()
        {
            if why.contains(word) {
                assert!(
                    change * sign > 0.0,
                    "{}: {why}, but {change}",
                    solved.scenario
                );
                seen[i] += 1;
            }
        }
        assert!(why.ends_with('.') && !why.contains("  "), "{why}");
    }
    assert!(seen.iter().all(|count| *count > 50), "{seen:?}");
}

fn warned(text: &str) -> Vec<String> {
    let solved = Solved::of(text);
    cautions(&solved.pass(), 0.0)
        .iter()
        .map(ToString::to_string)
        .collect()
}

#[test]
fn cautions_name_what_a_real_probe_would_meet() {
    for (text, word) in [
        ("periapsis=1.005", Some("atmosphere of Jupiter")),
        ("periapsis=8", Some("radiation belts of Jupiter")),
        ("periapsis=12", None),
        ("planet=saturn&periapsis=2", Some("rings of Saturn")),
        ("planet=saturn&periapsis=3", None),
        ("planet=mercury&periapsis=1.001", None),
        ("periapsis=0.6", Some("strikes Jupiter")),
        // Source of the reach, 48.2 million km: check value of tests/physics/constants.rs, over a radius of 71 492 km.
        ("periapsis=640", None),
        ("periapsis=680", Some("sphere of influence of Jupiter")),
        (
            "v-infinity=0.1&periapsis=20",
            Some("sphere of influence of Jupiter"),
        ),
        (
            "planet=custom&gm=2e11&radius=70000&orbit=1&periapsis=9999",
            None,
        ),
    ] {
        let mut warned = warned(text);
        let bend = warned
            .pop()
            .expect("the straight path is always owned up to");
        assert!(bend.contains("would bend by"), "{bend}");
        assert_eq!(
            warned.len(),
            usize::from(word.is_some()),
            "{text}: {warned:?}"
        );
        assert!(
            word.is_none_or(|word| warned[0].contains(word)),
            "{text}: {warned:?}"
        );
    }
}

#[test]
fn refusals_name_the_value_the_rule_and_what_to_try() {
    let what = "periapsis";
    for (error, words) in [
        (
            FlybyError::NotPositive {
                what,
                value: -3.5,
                unit: "km",
            },
            ["-3.5 km", "above 0"],
        ),
        (
            FlybyError::NotPositive {
                what,
                value: f64::NAN,
                unit: "km",
            },
            ["not a finite number", "above 0"],
        ),
        (
            FlybyError::NotAnAngle {
                what,
                value: f64::INFINITY,
            },
            ["not a finite number", "from -180° to 180°"],
        ),
        (
            FlybyError::OutOfNumbers {
                what,
                value: 1e300,
                unit: "km",
            },
            ["1e300 km", "from 1e-60 to 1e60"],
        ),
    ] {
        let sentence = refusal(&error);
        for word in [what, "try ", words[0], words[1]] {
            assert!(sentence.contains(word), "“{word}” is not in: {sentence}");
        }
        assert!(
            sentence.ends_with('.') && !sentence.contains("NaN") && !sentence.contains("inf "),
            "{sentence}"
        );
    }
}

#[test]
fn moments_and_spans_take_the_unit_that_fits() {
    for (seconds, words) in [
        (0.0, "at periapsis"),
        (-0.3, "at periapsis"),
        (12.0, "12.0 seconds after periapsis"),
        (-90.0, "1.50 minutes before periapsis"),
        (4_500.0, "1.25 hours after periapsis"),
        (-99_360.0, "1.15 days before periapsis"),
        (86_400.0 * 800.0, "2.19 years after periapsis"),
    ] {
        assert_eq!(moment(seconds), words);
    }
    assert_eq!(span(-7_200.0), "2.00 hours");
    for (seconds, words) in [
        (1.0, "1 second"),
        (600.0, "10 minutes"),
        (3_600.0, "1 hour"),
        (21_600.0, "6 hours"),
        (43_200.0, "12 hours"),
    ] {
        assert_eq!(short_span(seconds), words);
    }
}

/// Against the standard library's own rounding, wherever the last place is no tie.
#[test]
fn rounding_agrees_with_the_standard_library() {
    let mut rng = fastrand::Rng::with_seed(8);
    for _ in 0..20_000 {
        let decimals = rng.usize(..5);
        let value = (rng.f64() - 0.5) * 10_f64.powi(rng.i32(-4..9));
        let tail = (value.abs() * 10_f64.powi(i32::try_from(decimals).expect("small"))).fract();
        if (tail - 0.5).abs() < 1e-6 {
            continue;
        }
        let plain = fixed(value, decimals)
            .replace('\u{202f}', "")
            .replace('−', "-");
        let want = format!("{value:.decimals$}");
        let zero = want
            .trim_start_matches('-')
            .bytes()
            .all(|byte| matches!(byte, b'0' | b'.'));
        let want = if zero {
            want.trim_start_matches('-').to_owned()
        } else {
            want
        };
        assert_eq!(plain, want, "{value} with {decimals} decimals");
    }
    for (value, words) in [
        (0.0, "0"),
        (0.012_34, "0.0123"),
        (9.996, "10.00"),
        (8.0, "8.00"),
        (571_936.0, "571\u{202f}936"),
        (3.3e24, "3.30 × 10²⁴"),
    ] {
        assert_eq!(significant(value, 3), words);
    }
    assert_eq!(
        (short(8.0, 3), short(55.7, 3), short(0.5, 1)),
        ("8".into(), "55.7".into(), "0.5".into())
    );
    assert_eq!(degrees(std::f64::consts::FRAC_PI_2, 1), "90.0°");
}
