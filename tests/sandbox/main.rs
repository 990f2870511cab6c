//! The state machine between a person and a pass, input by input, as page and command use it.

#[path = "../scenarios/mod.rs"]
mod scenarios;

mod aiming;
mod choosing;
mod clock;
mod drag;
mod inputs;
mod journey;
mod looks;
mod reading;

use glam::DVec2;
use two_frames::sandbox::{Change, Input, Sandbox, Sizes};
use two_frames::scenario::{Field, PRESETS, Preset};

/// The size that the tests' pictures have.
const SIZES: Sizes = Sizes {
    stage: DVec2::splat(640.0),
    diagram: DVec2::splat(640.0),
    record: DVec2::new(720.0, 400.0),
};

/// The ready-made pass with this id.
fn preset(id: &str) -> &'static Preset {
    let found = PRESETS.iter().find(|preset| preset.id == id);
    found.unwrap_or_else(|| panic!("there is no ready-made pass {id}"))
}

/// Applies an input that has to be taken.
#[track_caller]
fn apply(sandbox: &mut Sandbox, input: Input) {
    let words = format!("{input:?}");
    sandbox
        .apply(input)
        .unwrap_or_else(|notice| panic!("{words}: {notice}"));
}

#[track_caller]
fn clock(sandbox: &mut Sandbox, change: Change) {
    apply(sandbox, Input::Clock(change));
}

/// Everything that a sandbox holds, as text: two states with one text are one state.
fn state(sandbox: &Sandbox) -> String {
    format!("{sandbox:?}")
}

fn get(sandbox: &Sandbox, field: Field) -> f64 {
    sandbox.scenario().get(field).unwrap_or(f64::NAN)
}

/// The moment shown, s after periapsis.
fn time(sandbox: &mut Sandbox) -> f64 {
    sandbox.time_s().expect("the pass can be solved")
}
