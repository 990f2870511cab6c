//! The `two-frames` command: parse, run, report. Everything else is in the library's `cli`.

use std::process::ExitCode;

use clap::Parser as _;
use two_frames::cli::{Arguments, run};

fn main() -> ExitCode {
    match run(Arguments::parse()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            failure.tell();
            ExitCode::from(failure.exit_status())
        }
    }
}
