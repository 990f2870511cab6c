//! Each way in which the command can fail: one sentence that says what happened and what to do.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

use super::Refusal;
use super::output::progress;

/// Why the command stopped. Its `Display` is one sentence for the person at the keyboard.
#[derive(Debug)]
pub enum Failure {
    /// The project's folder, or its `www`, is not where it was when the command was compiled.
    NoPage(PathBuf),
    /// One of the programs that build the core cannot be started.
    NoTool(String),
    /// The WebAssembly target is missing, and there is no rustup to add it.
    NoRustup,
    /// rustup could not add the WebAssembly target.
    NoTarget,
    /// Libraries of the core are neither on this computer nor to be had.
    NoLibraries,
    /// The core does not compile.
    CoreDoesNotCompile,
    /// The bindings generator refused the compiled core.
    Bindings(String),
    /// Another program listens on the port.
    PortTaken(u16),
    /// The system does not allow to listen on the port.
    PortRefused(u16, io::Error),
    /// The command line asks for something impossible.
    Refused(Refusal),
    /// Lines of standard input have no answer.
    BadLines {
        /// How many.
        bad: u64,
        /// How many lines there were.
        all: u64,
    },
    /// Standard input cannot be read.
    Input(io::Error),
    /// Standard output cannot be written.
    Output(io::Error),
    /// A file or folder could not be read or written.
    File {
        /// What was being done, as in "read" or "write".
        doing: &'static str,
        /// The file or folder.
        path: PathBuf,
        /// What the system said.
        error: io::Error,
    },
}

impl Failure {
    /// A way to say which file it was, for `map_err`.
    pub(crate) fn file(doing: &'static str, path: &Path) -> impl FnOnce(io::Error) -> Self {
        let path = path.to_owned();
        move |error| Self::File { doing, path, error }
    }

    /// The exit status: 2 if the command line itself asks for something impossible, 1 for everything else.
    pub fn exit_status(&self) -> u8 {
        match self {
            Self::Refused(_) => 2,
            _ => 1,
        }
    }

    /// Says it on standard error, with the command's name before each line.
    pub fn tell(&self) {
        for line in self.to_string().lines() {
            progress(&format!("two-frames: {line}"));
        }
    }
}

impl From<Refusal> for Failure {
    fn from(refusal: Refusal) -> Self {
        Self::Refused(refusal)
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoPage(path) => write!(
                f,
                "the folder {} is missing: run `cargo run --release` inside a complete copy of the project.",
                path.display()
            ),
            Self::NoTool(name) => write!(
                f,
                "`{name}` cannot be started: install Rust's stable toolchain with rustup and run the command again."
            ),
            Self::NoRustup => f.write_str(
                "Rust's wasm32-unknown-unknown target is missing and rustup is not on the PATH: install rustup, or add \
                 the target the way your Rust was installed, and run the command again.",
            ),
            Self::NoTarget => f.write_str(
                "rustup could not add the wasm32-unknown-unknown target: check the network connection and try again.",
            ),
            Self::NoLibraries => f.write_str(
                "the core's libraries could not be downloaded: check the network connection and run the command again.",
            ),
            Self::CoreDoesNotCompile => f.write_str(
                "the core does not compile for the browser: mend the first error that cargo printed above and run the \
                 command again.",
            ),
            Self::Bindings(reason) => write!(
                f,
                "the JavaScript bindings could not be generated ({reason}): give wasm-bindgen and \
                 wasm-bindgen-cli-support the same version in Cargo.toml and run the command again."
            ),
            Self::PortTaken(port) => write!(
                f,
                "port {port} is taken by another program: stop that program, or choose another port, as in `--port {}`.",
                neighbour(*port)
            ),
            Self::PortRefused(port, error) => write!(
                f,
                "the system does not let this command listen on port {port} ({error}): choose a port from 1024 to \
                 65535, as in `--port 8001`."
            ),
            Self::Refused(refusal) => refusal.fmt(f),
            Self::BadLines { bad, all } => write!(
                f,
                "{bad} of {all} lines have no answer: see \"error\" in their places in the output."
            ),
            Self::Input(error) => write!(
                f,
                "standard input cannot be read ({error}): check where it comes from and run the command again."
            ),
            Self::Output(error) => write!(
                f,
                "standard output cannot be written ({error}): check where it goes and run the command again."
            ),
            Self::File { doing, path, error } => write!(
                f,
                "could not {doing} {} ({error}): check that it exists and that you may {doing} it.",
                path.display()
            ),
        }
    }
}

impl std::error::Error for Failure {}

/// A port to suggest instead of one that is taken.
fn neighbour(port: u16) -> u16 {
    port.checked_add(1).unwrap_or(8000)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn one_of_each() -> Vec<Failure> {
        let path = PathBuf::from("somewhere");
        vec![
            Failure::NoPage(path.clone()),
            Failure::NoTool("cargo".to_owned()),
            Failure::NoRustup,
            Failure::NoTarget,
            Failure::NoLibraries,
            Failure::CoreDoesNotCompile,
            Failure::Bindings("reason".to_owned()),
            Failure::PortTaken(8000),
            Failure::PortRefused(80, io::ErrorKind::PermissionDenied.into()),
            Failure::BadLines { bad: 1, all: 2 },
            Failure::Input(io::ErrorKind::Other.into()),
            Failure::Output(io::ErrorKind::StorageFull.into()),
            Refusal::NotText.into(),
            Refusal::OutNotOurs(path.clone()).into(),
            Refusal::OutInsidePage(path.clone()).into(),
            Refusal::NoFolder(path.clone()).into(),
            Refusal::OutIsFolder(path.clone()).into(),
            Failure::file("read", &path)(io::ErrorKind::NotFound.into()),
        ]
    }

    #[test]
    fn each_failure_is_one_sentence_that_says_what_to_do() {
        for failure in one_of_each() {
            let text = failure.to_string();
            assert!(
                text.ends_with('.') && !text.contains('\n') && !text.contains("  "),
                "{text}"
            );
            assert_eq!(
                text.matches(". ").count(),
                0,
                "more than one sentence: {text}"
            );
            let (_, advice) = text
                .split_once(": ")
                .unwrap_or_else(|| panic!("no advice in: {text}"));
            assert!(!advice.is_empty(), "{text}");
        }
    }

    #[test]
    fn a_taken_port_suggests_another_valid_one() {
        assert!(Failure::PortTaken(8000).to_string().contains("--port 8001"));
        assert!(
            Failure::PortTaken(65535)
                .to_string()
                .contains("--port 8000")
        );
    }

    #[test]
    fn only_an_impossible_request_exits_with_2() {
        let refused = Failure::from(Refusal::OutNotOurs(PathBuf::new()));
        assert_eq!(refused.exit_status(), 2);
        assert_eq!(Failure::PortTaken(8000).exit_status(), 1);
    }
}
