//! The `two-frames` command, native only: it builds the core for the browser, serves the page and writes the site.
//!
//! Every failure is one sentence that says what to do (see [`Failure`]). Progress goes to standard error, results
//! to standard output.

mod answer;
mod args;
mod bindings;
mod failure;
mod moment;
mod project;
mod serve;
mod site;
mod size;
mod vary;
mod wasm;

pub use args::{
    Arguments, BuildArguments, Command, FigureArguments, Ground, Part, ServeArguments,
    SolveArguments, TableArguments,
};
pub use failure::Failure;
pub use moment::Moment;
pub use project::Project;
pub use serve::Server;
pub use size::Size;
pub use vary::Vary;

/// Does what the command line asks for; without a subcommand it serves the page.
pub fn run(arguments: Arguments) -> Result<(), Failure> {
    let project = Project::here();
    match arguments.command {
        None => serve::run(&project, arguments.serve),
        Some(Command::Serve(serve)) => serve::run(&project, serve),
        Some(Command::Build(build)) => site::run(&project, &build.out),
    }
}
