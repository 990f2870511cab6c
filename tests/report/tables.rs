//! The before / after / change table and the facts: rounding, signs, and the first pass's own numbers.

use two_frames::report::{FACT_WORDS, Fact, LineWords, ROW_WORDS, Row, Value, facts, readouts};
use two_frames::sandbox::Sandbox;

use super::many;

/// A number as a person reads it off a text of ours: sign, digits in groups, a power of ten; and half a unit of its last
/// place.
fn read(text: &str) -> Option<(f64, f64)> {
    let plain = text
        .trim_end_matches('°')
        .replace('\u{202f}', "")
        .replace('−', "-");
    let (mantissa, power) = plain.split_once(" × 10").unwrap_or((&plain, ""));
    let raised = |letter: char| "⁰¹²³⁴⁵⁶⁷⁸⁹".chars().position(|digit| digit == letter);
    let exponent = power
        .chars()
        .fold(0_i32, |sum, letter| match raised(letter) {
            Some(digit) => sum * 10 + i32::try_from(digit).expect("one digit"),
            None => sum,
        });
    let exponent = if power.starts_with('⁻') {
        -exponent
    } else {
        exponent
    };
    let decimals = mantissa
        .split_once('.')
        .map_or(0, |(_, fraction)| fraction.len());
    let scale = 10_f64.powi(exponent);
    let value = mantissa
        .strip_prefix('+')
        .unwrap_or(mantissa)
        .parse::<f64>()
        .ok()?;
    Some((
        value * scale,
        0.5 * scale / 10_f64.powi(i32::try_from(decimals).ok()?),
    ))
}

#[test]
fn texts_are_their_values_rounded_to_the_last_place_shown() {
    let mut compared = 0;
    for solved in many() {
        let (scenario, pass) = (solved.scenario, solved.pass());
        let rows = readouts(&pass);
        let cells = rows.iter().flat_map(|row| &row.cells);
        for Value { text, path, value } in cells.chain(facts(&pass).iter().map(|fact| &fact.value))
        {
            let Some(value) = value else {
                assert!(
                    ["—", "leaves", "stays"].contains(&&**text),
                    "{scenario}: {path} is {text}"
                );
                continue;
            };
            let (read, half) = read(text).unwrap_or_else(|| panic!("{scenario}: {path} is {text}"));
            // A tie may go either way, and rounding to so many digits costs an ulp.
            let slack = half * (1.0 + 1e-9) + 1e-13 * value.abs();
            assert!(
                (read - value).abs() <= slack,
                "{scenario}: {path} is {value}, shown as {text}"
            );
            let zero = read == 0.0;
            assert!(
                !(zero && text.starts_with(['+', '−'])),
                "{scenario}: {path} is {text}: zero has no sign"
            );
            assert!(
                zero || text.starts_with('−') == (*value < 0.0),
                "{scenario}: {path} is {text}"
            );
            compared += 1;
        }
    }
    assert!(compared > 5_000, "{compared} texts compared");
}

#[test]
fn changes_carry_a_sign_and_states_do_not() {
    for solved in many() {
        let scenario = solved.scenario;
        for row in readouts(&solved.pass()) {
            let Row {
                cells: [before, after, change],
            } = row;
            let label = &before.path;
            let plus = |value: &Value| value.text.starts_with('+');
            assert!(!plus(&before) && !plus(&after), "{scenario}: {label}");
            let rises = change.value.is_some_and(|value| value > 0.0)
                && read(&change.text).is_some_and(|(read, _)| read != 0.0);
            // A turn is an angle between two directions and has no sign.
            let turn = change.path == "planet_frame.turn_deg";
            assert_eq!(
                plus(&change),
                rises && !turn,
                "{scenario}: {label}: {}",
                change.text
            );
        }
    }
}

/// The table of the pass that the page opens with.
#[test]
fn the_first_pass_s_table_reads_as_it_should() {
    let panel = Sandbox::default().panel().expect("a pass");
    let rows: Vec<_> = panel
        .rows
        .iter()
        .zip(ROW_WORDS)
        .map(|(Row { cells }, LineWords { label, unit, .. })| {
            let [before, after, change] = cells.each_ref().map(|value| &value.text);
            let label = label.replace('@', "Jupiter");
            format!("{label} [{unit}]: {before} | {after} | {change}")
        })
        .collect();
    // Source: twenty lines in another language, from the closed forms of the crate's front page and the planet's
    // published numbers, run once (R); only the turn and the speeds were known before.
    assert_eq!(
        rows,
        [
            "Speed relative to Jupiter, far away [km/s]: 9.00 | 9.00 | 0.00",
            "Direction of that motion, and turn []: 129.0° | 34.9° | 94.1°",
            "Speed round the Sun [km/s]: 10.18 | 21.08 | +10.90",
            "Nearest to the Sun [AU]: 0.96 | 4.95 | +3.99",
            "Farthest from the Sun [AU]: 6.52 | leaves | —",
            "Time round the Sun [years]: 7.22 | leaves | —",
            "Speed left far from the Sun [km/s]: stays | 10.17 | —",
            "Tilt of the orbit [°]: 0.00 | 0.00 | 0.00",
            "Energy round the Sun, per kg [MJ]: −118.7 | 51.7 | +170.4",
            "Speed of Jupiter itself [km/s]: 13.06 | 13.06 | −3.3 × 10⁻²⁴",
        ]
    );
    let facts: Vec<_> = panel
        .facts
        .iter()
        .zip(FACT_WORDS)
        .map(|(Fact { value }, LineWords { label, unit, .. })| {
            format!("{label}: {} {unit}", value.text)
        })
        .collect();
    assert_eq!(
        facts,
        [
            "Closest distance from the centre: 571\u{202f}936 km",
            "Height above the surface there: 500\u{202f}444 km",
            "Speed there, relative to the planet: 22.89 km/s",
            "Aim distance: 1\u{202f}454\u{202f}704 km",
            "Change of velocity: 13.18 km/s",
            "Eccentricity: 1.37 ",
        ]
    );
}
