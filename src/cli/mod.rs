//! The `two-frames` command, native only: it builds the core for the browser, serves the page, writes the site, and
//! answers with numbers, pictures and tables.
//!
//! Every failure is a sentence that says what to do (see [`Failure`]). Progress goes to standard error, results to
//! standard output.

use std::io::ErrorKind;

use crate::sandbox::Sandbox;

mod aim;
mod answer;
mod args;
mod bindings;
mod failure;
mod figure;
mod help;
mod lines;
mod moment;
mod output;
mod project;
mod refusal;
mod serve;
mod site;
mod size;
mod solve;
mod table;
mod vary;
mod wasm;

pub use args::{
    Against, AimArguments, Arguments, BuildArguments, Command, Eye, FigureArguments, Freedom,
    Ground, Part, ServeArguments, SolveArguments, TableArguments,
};
pub use failure::Failure;
pub use moment::Moment;
pub use project::Project;
pub use refusal::Refusal;
pub use serve::Server;
pub use size::Size;
pub use vary::Vary;

/// Does what the command line asks for; without a subcommand it serves the page.
pub fn run(arguments: Arguments) -> Result<(), Failure> {
    let command = arguments.command.unwrap_or(Command::Serve(arguments.serve));
    let done = match command {
        Command::Serve(serve) => serve::run(&Project::here(), serve),
        Command::Build(build) => site::run(&Project::here(), &build.out),
        Command::Solve(solve) => solve::run(&solve),
        Command::Aim(aim) => aim::run(&aim),
        Command::Figure(figure) => figure::run(&figure),
        Command::Table(table) => table::run(&table),
    };
    match done {
        // Whoever read the output has seen enough, as `head` does.
        Err(Failure::Output(error)) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
        done => done,
    }
}

/// The sandbox with a scenario text in it; unlike the page, the command takes the whole text or nothing.
fn open(text: &str) -> Result<Sandbox, Refusal> {
    let sandbox = Sandbox::open(text);
    match sandbox.notices() {
        [] => Ok(sandbox),
        notices => Err(Refusal::Scenario(notices.to_vec())),
    }
}
