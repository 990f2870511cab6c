//! The clock: what runs, how fast, and where it stops.

use two_frames::sandbox::{Change, Input, Pace, PaceLaw, Sandbox};
use two_frames::scenario::{Field, PRESETS};

use super::{apply, clock, preset, state, time};

const LAWS: [PaceLaw; 2] = [PaceLaw::SlowerNear, PaceLaw::Even];

/// A sandbox at the beginning of a pass, playing.
fn playing(text: &str, law: PaceLaw, whole_s: f64) -> Sandbox {
    let mut sandbox = Sandbox::open(text);
    clock(&mut sandbox, Change::Pace(Pace { law, whole_s }));
    clock(&mut sandbox, Change::Scrub(0.0));
    clock(&mut sandbox, Change::Play);
    sandbox
}

/// Half the time shown, s.
fn half(sandbox: &mut Sandbox) -> f64 {
    sandbox.solved().expect("a pass").track.half_s
}

#[test]
fn both_laws_take_the_time_they_say_for_the_whole_pass() {
    for preset in PRESETS.iter().filter(|preset| preset.id != "strikes") {
        for law in LAWS {
            for whole_s in [5.0, 16.0] {
                let mut sandbox = playing(preset.text, law, whole_s);
                let half = half(&mut sandbox);
                // 60 frames a second, up to half a frame before the end.
                let ticks = (60.0 * whole_s) as u32;
                for i in 1..ticks {
                    clock(&mut sandbox, Change::Tick(1.0 / 60.0));
                    assert!(
                        sandbox.is_playing(),
                        "{} {law:?}: tick {i} of {ticks}",
                        preset.id
                    );
                    if 2 * i == ticks {
                        let now = time(&mut sandbox);
                        assert!(
                            now.abs() < 1e-6 * half,
                            "{} {law:?}: periapsis at half-time, {now}",
                            preset.id
                        );
                    }
                }
                clock(&mut sandbox, Change::Tick(1.001 / 60.0));
                assert!(!sandbox.is_playing(), "{} {law:?}", preset.id);
                assert_eq!(
                    time(&mut sandbox).to_bits(),
                    half.to_bits(),
                    "{} {law:?}: it stops at the end",
                    preset.id
                );
            }
        }
    }
}

#[test]
fn the_even_law_takes_equal_steps() {
    let mut sandbox = playing(preset("gain").text, PaceLaw::Even, 10.0);
    let half = half(&mut sandbox);
    let mut last = time(&mut sandbox);
    for _ in 0..99 {
        clock(&mut sandbox, Change::Tick(0.1));
        let now = time(&mut sandbox);
        assert!(((now - last) / (0.02 * half) - 1.0).abs() < 1e-9);
        last = now;
    }
}

/// The stated law: the clock's rate is in proportion to the distance from the planet.
#[test]
fn the_slower_law_runs_in_proportion_to_the_distance() {
    for preset in &PRESETS {
        let mut sandbox = playing(preset.text, PaceLaw::SlowerNear, 16.0);
        let tick = 1e-3;
        let mut rates: Vec<(f64, f64)> = Vec::new();
        while sandbox.is_playing() && rates.len() < 200 {
            // Along a tick this short the distance is nearly that of its middle.
            let before = time(&mut sandbox);
            clock(&mut sandbox, Change::Tick(tick));
            let after = time(&mut sandbox);
            let (place, _) = sandbox
                .solved()
                .expect("a pass")
                .flyby
                .seen_from_planet(0.5 * (before + after));
            if sandbox.is_playing() {
                rates.push(((after - before) / place.km.length(), place.km.length()));
            }
            clock(&mut sandbox, Change::Tick(0.08));
        }
        let (low, high) = rates
            .iter()
            .fold((f64::MAX, 0.0_f64), |(low, high), (rate, _)| {
                (low.min(*rate), high.max(*rate))
            });
        assert!(
            rates.len() > 50 && high / low - 1.0 < 1e-5,
            "{}: {low} to {high}",
            preset.id
        );
        let (near, far) = rates
            .iter()
            .fold((f64::MAX, 0.0_f64), |(near, far), (_, r)| {
                (near.min(*r), far.max(*r))
            });
        assert!(
            far / near > 2.0,
            "{}: distances tell nothing apart",
            preset.id
        );
    }
}

#[test]
fn the_rate_shown_is_the_rate_at_which_time_runs() {
    for law in LAWS {
        let mut sandbox = playing(preset("gain").text, law, 16.0);
        for _ in 0..10 {
            let (before, panel) = (time(&mut sandbox), sandbox.panel().expect("a pass"));
            let words = panel
                .rate
                .strip_prefix("1 s shows ")
                .expect("a rate")
                .to_owned();
            let (number, unit) = words.split_once(' ').expect("a number and a unit");
            let unit = [("minutes", 60.0), ("hours", 3_600.0), ("days", 86_400.0)]
                .iter()
                .find(|(name, _)| *name == unit);
            let shown: f64 =
                number.parse::<f64>().expect("a number") * unit.expect("a unit of this pass").1;
            clock(&mut sandbox, Change::Tick(0.01));
            let run = (time(&mut sandbox) - before) / 0.01;
            assert!(
                (shown / run - 1.0).abs() < 0.01,
                "{law:?}: {words}, but {run} s ran"
            );
            clock(&mut sandbox, Change::Tick(1.4));
        }
    }
}

/// Whoever presses play first of all sees the whole pass, not its last part.
#[test]
fn the_first_play_starts_at_the_beginning() {
    let mut sandbox = Sandbox::default();
    clock(&mut sandbox, Change::Play);
    let half_s = sandbox.solved().expect("a pass").track.half_s;
    assert_eq!(time(&mut sandbox).to_bits(), (-half_s).to_bits());
}

#[test]
fn nothing_moves_unless_it_plays() {
    let mut sandbox = Sandbox::default();
    let before = state(&sandbox);
    clock(&mut sandbox, Change::Tick(5.0));
    let after = time(&mut sandbox);
    clock(&mut sandbox, Change::Go(after));
    clock(&mut sandbox, Change::Play);
    assert!(sandbox.is_playing());
    assert_eq!(
        time(&mut sandbox).to_bits(),
        after.to_bits(),
        "play alone moves nothing"
    );
    clock(&mut sandbox, Change::Tick(0.5));
    let later = time(&mut sandbox);
    assert!(later > after);
    clock(&mut sandbox, Change::Pause);
    clock(&mut sandbox, Change::Tick(0.5));
    assert_eq!(time(&mut sandbox).to_bits(), later.to_bits());
    clock(&mut sandbox, Change::Telling);
    assert_eq!(time(&mut sandbox).to_bits(), after.to_bits());
    // All that is left of it is that the pass has been solved.
    assert!(
        before.contains("time_s: None, playing: false")
            && state(&sandbox).contains("time_s: None, playing: false")
    );
}

#[test]
fn play_at_the_end_starts_again() {
    for id in ["gain", "strikes"] {
        let mut sandbox = Sandbox::open(preset(id).text);
        clock(&mut sandbox, Change::Scrub(1.0));
        clock(&mut sandbox, Change::Play);
        let half = half(&mut sandbox);
        assert_eq!(time(&mut sandbox).to_bits(), (-half).to_bits(), "{id}");
        assert!(sandbox.is_playing(), "{id}");
    }
}

#[test]
fn steps_are_beads_and_pause() {
    let mut sandbox = playing(preset("gain").text, PaceLaw::Even, 10.0);
    let bead = sandbox.solved().expect("a pass").track.bead_s;
    clock(&mut sandbox, Change::Go(0.0));
    clock(&mut sandbox, Change::Play);
    clock(&mut sandbox, Change::Step(1.0));
    assert!(!sandbox.is_playing());
    assert_eq!(time(&mut sandbox).to_bits(), bead.to_bits());
    clock(&mut sandbox, Change::Step(-3.0));
    assert_eq!(time(&mut sandbox).to_bits(), (-2.0 * bead).to_bits());
    clock(&mut sandbox, Change::Step(-1e6));
    assert_eq!(
        time(&mut sandbox).to_bits(),
        (-half(&mut sandbox)).to_bits()
    );
}

#[test]
fn scrubbing_covers_the_pass_and_the_panel_says_where() {
    for preset in &PRESETS {
        let mut sandbox = Sandbox::open(preset.text);
        let half = half(&mut sandbox);
        let end = sandbox.solved().expect("a pass").track.end_s;
        for i in 0..=20 {
            let position = f64::from(i) / 20.0;
            clock(&mut sandbox, Change::Scrub(position));
            let want = ((2.0 * position - 1.0) * half).min(end);
            assert!(
                (time(&mut sandbox) - want).abs() < 1e-9 * half,
                "{} at {position}",
                preset.id
            );
            let shown = sandbox.panel().expect("a pass").position;
            let stop = 0.5 * (end / half + 1.0);
            assert!(
                (shown - position.min(stop)).abs() < 1e-9,
                "{} at {position}: {shown}",
                preset.id
            );
        }
        for (position, want) in [(-7.0, -half), (9.0, end)] {
            clock(&mut sandbox, Change::Scrub(position));
            assert_eq!(
                time(&mut sandbox).to_bits(),
                want.to_bits(),
                "{}",
                preset.id
            );
        }
        clock(&mut sandbox, Change::Go(0.25 * half));
        assert_eq!(
            time(&mut sandbox).to_bits(),
            (0.25 * half).min(end).to_bits(),
            "{}",
            preset.id
        );
    }
}

#[test]
fn a_strike_ends_the_clock_at_the_surface() {
    for law in LAWS {
        let mut sandbox = playing(preset("strikes").text, law, 16.0);
        for _ in 0..2_000 {
            clock(&mut sandbox, Change::Tick(1.0 / 60.0));
        }
        assert!(!sandbox.is_playing());
        let now = time(&mut sandbox);
        let solved = sandbox.solved().expect("a pass");
        let (place, _) = solved.flyby.seen_from_planet(now);
        assert!((place.km.length() / solved.flyby.encounter.planet.radius_km - 1.0).abs() < 1e-9);
        assert!(now < 0.0 && sandbox.panel().expect("a pass").position < 0.5);
    }
}

/// Until somebody touches the clock it stays at the telling moment of whatever pass is shown; then it keeps its time,
/// as far as the new pass has it.
#[test]
fn another_pass_keeps_the_moment_that_was_chosen() {
    let mut sandbox = Sandbox::default();
    let first = time(&mut sandbox);
    apply(&mut sandbox, Input::Set(Field::Periapsis, 20.0));
    let second = time(&mut sandbox);
    assert!(second > first);
    clock(&mut sandbox, Change::Go(50_000.0));
    apply(&mut sandbox, Input::Set(Field::Periapsis, 12.0));
    assert_eq!(time(&mut sandbox).to_bits(), 50_000.0_f64.to_bits());
    apply(&mut sandbox, Input::Set(Field::Periapsis, 0.5));
    let struck = time(&mut sandbox);
    assert!(struck < 0.0, "nothing is shown after the impact");
    apply(&mut sandbox, Input::Set(Field::Periapsis, 12.0));
    assert_eq!(time(&mut sandbox).to_bits(), 50_000.0_f64.to_bits());
}
