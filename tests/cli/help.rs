//! What the command says of itself, and whether it is so.

use clap::CommandFactory as _;
use two_frames::cli::Arguments;
use two_frames::scenario::Field;

use crate::{printed, run};

/// The subcommands that answer with a pass.
const PASSES: [&str; 4] = ["solve", "aim", "figure", "table"];

#[test]
fn the_help_names_every_subcommand_and_the_default() {
    let help = printed(run(&["--help"]));
    let command = Arguments::command();
    let names = command.get_subcommands().map(clap::Command::get_name);
    let names: Vec<_> = names.collect();
    assert_eq!(names, ["serve", "build", "solve", "aim", "figure", "table"]);
    let words = ["--port", "8000", "(the default)", "not for flying"];
    for word in names.into_iter().chain(words) {
        assert!(help.contains(word), "{word} is not in: {help}");
    }
}

#[test]
fn each_help_of_a_pass_has_keys_units_and_exit_statuses() {
    for name in PASSES {
        let help = printed(run(&[name, "--help"]));
        for spec in Field::ALL.map(Field::spec) {
            let unit = spec.unit.replace('°', "degrees");
            let shown =
                |line: &str| line.trim_start().starts_with(spec.key) && line.contains(&unit);
            assert!(help.lines().any(shown), "{} is not in: {help}", spec.key);
        }
        for word in ["Exit status: 0", "neptune", "Examples:"] {
            assert!(help.contains(word), "{word} is not in: {help}");
        }
    }
}

/// Examples are typed off the screen, so they have to work.
#[cfg(unix)]
mod examples {
    use std::fs;
    use std::path::Path;
    use std::process::Command;

    use super::PASSES;
    use crate::support::TemporaryFolder;
    use crate::{errors, printed, run};

    /// The lines of a text that start the command, from the words that stand for it on.
    fn examples<'a>(text: &'a str, command: &'a str) -> impl Iterator<Item = &'a str> {
        let lines = text.lines().map(str::trim_start);
        lines.filter_map(move |line| line.strip_prefix(command))
    }

    /// Runs an example in a shell, in a folder of its own.
    fn try_out(example: &str) {
        let folder = TemporaryFolder::new("example");
        let texts = folder.path().join("texts.txt");
        fs::write(texts, "planet=mars\n\n").expect("a file can be written");
        let command = Path::new(env!("CARGO_BIN_EXE_two-frames")).display();
        let mut shell = Command::new("sh");
        shell
            .arg("-c")
            .arg(format!("'{command}' {example}"))
            .current_dir(folder.path());
        let output = shell.output().expect("there is a shell");
        assert!(output.status.success(), "{example}: {}", errors(&output));
    }

    #[test]
    fn each_one_in_the_help_runs_as_it_stands() {
        for name in PASSES {
            let help = printed(run(&[name, "--help"]));
            let count = examples(&help, "two-frames ").map(try_out).count();
            assert_eq!(count, 3, "{help}");
        }
    }

    #[test]
    fn each_one_in_the_readme_runs_as_it_stands() {
        let readme = include_str!("../../README.md");
        let examples = examples(readme, "cargo run --release -- ");
        let count = examples.map(try_out).count();
        assert!(count >= 4, "only {count} examples");
    }
}
