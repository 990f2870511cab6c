//! What is read from the sandbox: solved once a change, and the panel's numbers are those of the solution.

use two_frames::report::{Piece, Sentence, Value};
use two_frames::sandbox::{Change, Input, Sandbox};
use two_frames::scenario::{Field, PRESETS};

use super::{SIZES, apply, clock, preset, state};

fn numbers(sentence: &Sentence) -> Vec<(&str, Option<u64>)> {
    let pieces = sentence.pieces().iter().filter_map(|piece| match piece {
        Piece::Number(Value { path, value, .. }) => Some((&**path, value.map(f64::to_bits))),
        Piece::Words(_) => None,
    });
    pieces.collect()
}

#[test]
fn the_sentences_numbers_are_the_solution_s() {
    for preset in PRESETS.iter().filter(|preset| preset.id != "strikes") {
        let mut sandbox = Sandbox::open(preset.text);
        let panel = sandbox.panel().expect("a pass");
        let solution = sandbox.solution().expect("a pass");
        let (planet, sun) = (&solution.planet_frame, &solution.sun_frame);
        assert_eq!(
            numbers(&panel.planet_sentence)[0],
            (
                "planet_frame.v_infinity_km_s",
                Some(planet.v_infinity_km_s.to_bits())
            )
        );
        assert_eq!(
            numbers(&panel.sun_sentence),
            [
                ("sun_frame.speed_in_km_s", Some(sun.speed_in_km_s.to_bits())),
                (
                    "sun_frame.speed_out_km_s",
                    sun.speed_out_km_s.map(f64::to_bits)
                ),
            ]
        );
        let why = numbers(&panel.why);
        let change = (
            "sun_frame.speed_change_km_s",
            sun.speed_change_km_s.map(f64::to_bits),
        );
        assert_eq!(why[why.len() - 1], change, "{}", preset.id);
    }
}

#[test]
fn the_present_moment_s_numbers_are_the_physics_own() {
    for preset in &PRESETS {
        let mut sandbox = Sandbox::open(preset.text);
        for position in [0.0, 0.2, 0.5, 0.9, 1.0] {
            clock(&mut sandbox, Change::Scrub(position));
            let panel = sandbox.panel().expect("a pass");
            let time = sandbox.time_s().expect("a pass");
            let flyby = sandbox.solved().expect("a pass").flyby;
            let ((place, relative), (_, sun)) =
                (flyby.seen_from_planet(time), flyby.seen_from_sun(time));
            let want = [
                time / 86_400.0,
                place.km.length(),
                relative.speed(),
                sun.speed(),
            ];
            let got: Vec<_> = panel
                .now
                .iter()
                .map(|fact| fact.value.value.expect("it exists"))
                .collect();
            assert_eq!(got, want, "{} at {position}", preset.id);
            assert_eq!(panel.time_d.to_bits(), want[0].to_bits());
        }
    }
}

#[test]
fn solving_waits_until_something_is_asked_for() {
    let mut sandbox = Sandbox::default();
    assert!(state(&sandbox).contains("solved: None"));
    apply(&mut sandbox, Input::Set(Field::Aim, 5.0));
    assert!(state(&sandbox).contains("solved: None"));
    sandbox.panel().expect("a pass");
    assert!(!state(&sandbox).contains("solved: None"));
    // A zoom, or the same value again, is no reason to solve again.
    apply(&mut sandbox, Input::Zoom(2.0));
    apply(&mut sandbox, Input::Set(Field::Aim, 5.0));
    assert!(!state(&sandbox).contains("solved: None"));
    apply(&mut sandbox, Input::Set(Field::Aim, 6.0));
    assert!(state(&sandbox).contains("solved: None"));
}

/// The two in-plane sides are named by where periapsis lies, not by the angle; a head-on pass has behind on both.
#[test]
fn sides_are_named_by_where_periapsis_lies() {
    for (text, labels, chosen) in [
        (
            preset("gain").text,
            ["behind, outward (aim 0°)", "ahead, outward (aim 180°)"],
            [true, false],
        ),
        (
            preset("loss").text,
            ["behind, outward (aim 0°)", "ahead, outward (aim 180°)"],
            [false, true],
        ),
        (
            "approach=180",
            ["behind, sunward (aim 0°)", "behind, outward (aim 180°)"],
            [true, false],
        ),
        (
            "approach=0&aim=180",
            ["ahead, outward (aim 0°)", "ahead, sunward (aim 180°)"],
            [false, true],
        ),
        (
            "aim=90",
            ["behind, outward (aim 0°)", "ahead, outward (aim 180°)"],
            [false, false],
        ),
        (
            "aim=-180",
            ["behind, outward (aim 0°)", "ahead, outward (aim 180°)"],
            [false, true],
        ),
    ] {
        let panel = Sandbox::open(text).panel().expect("a pass");
        assert_eq!(
            [&*panel.sides[0].label, &*panel.sides[1].label],
            labels,
            "{text}"
        );
        assert_eq!(
            panel.sides.each_ref().map(|side| side.chosen),
            chosen,
            "{text}"
        );
    }
}

#[test]
fn settings_that_have_no_pass_together_are_refused_in_words_everywhere() {
    let mut sandbox = Sandbox::open("planet=custom&gm=1e300&radius=1e-300&orbit=1");
    assert!(
        sandbox.notices().is_empty(),
        "each number is allowed by itself"
    );
    let error = sandbox.panel().expect_err("no numbers reach that far");
    assert_eq!(sandbox.pictures(&SIZES).expect_err("neither here"), error);
    assert_eq!(sandbox.time_s().expect_err("nor here"), error);
    let words = two_frames::report::refusal(&error);
    assert!(
        words.contains("1e300 km³/s²") && words.contains("try"),
        "{words}"
    );
    // The clock stands and the next good value brings everything back.
    clock(&mut sandbox, Change::Play);
    clock(&mut sandbox, Change::Tick(1.0));
    apply(&mut sandbox, Input::Planet("jupiter".into()));
    sandbox.panel().expect("a pass again");
}
