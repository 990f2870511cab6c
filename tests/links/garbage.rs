//! Nothing breaks, whatever the text.

use fastrand::Rng;
use two_frames::scenario::{Field, Scenario};

use super::scenarios::any;
use super::{bits, complaints};

/// A text made of pieces that mean something, pieces that nearly do, and noise.
fn garbage(rng: &mut Rng) -> String {
    const PIECES: [&str; 30] = [
        "v=1",
        "v",
        "=",
        "&",
        "&&",
        "planet=",
        "custom",
        "jupiter",
        "gm=",
        "radius=1",
        "orbit=",
        "periapsis=",
        "8",
        "-0",
        "1e308",
        "1e-400",
        "NaN",
        "inf",
        "aim=",
        "%26",
        "+",
        " ",
        "\u{0}",
        "é",
        "𝛼",
        "\u{202e}",
        "#",
        "?",
        "\n",
        "…",
    ];
    let count = rng.usize(..24);
    let piece = |_| match rng.u8(..8) {
        0 => rng.char(..).to_string(),
        1 => rng.u64(..).to_string(),
        2 => format!("{:e}", f64::from_bits(rng.u64(..))),
        _ => PIECES[rng.usize(..PIECES.len())].to_owned(),
    };
    (0..count).map(piece).collect()
}

/// A good text with a few letters changed, put in or left out.
fn spoilt(rng: &mut Rng) -> String {
    let mut letters: Vec<char> = any(rng).to_string().chars().collect();
    for _ in 0..=rng.usize(..3) {
        let at = rng.usize(..letters.len());
        match rng.u8(..3) {
            0 => letters[at] = rng.char(' '..'\u{7f}'),
            1 => letters.insert(at, rng.char(..)),
            _ => drop(letters.remove(at)),
        }
    }
    letters.into_iter().collect()
}

#[test]
fn nothing_breaks_on_garbage() {
    let mut rng = Rng::with_seed(5);
    for i in 0..40_000 {
        let text = if i % 2 == 0 {
            garbage(&mut rng)
        } else {
            spoilt(&mut rng)
        };
        let (scenario, complaints) = complaints(&text);
        // Whatever was read is a scenario like any other.
        let printed = scenario.to_string();
        assert_eq!(
            Scenario::read_strictly(&printed).map(|read| bits(&read)),
            Ok(bits(&scenario)),
            "{text}"
        );
        for field in Field::ALL {
            assert!(
                scenario
                    .get(field)
                    .is_none_or(|value| field.check(value).is_ok()),
                "{text}: {field:?}"
            );
        }
        for complaint in complaints {
            assert!(
                complaint.ends_with('.') && complaint.chars().count() < 300,
                "{text}: {complaint}"
            );
        }
    }
}
