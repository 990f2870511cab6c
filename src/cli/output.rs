//! Where results go: standard output, or a file that is either whole or not there.

use std::ffi::OsString;
use std::fs;
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};
use std::process;

use super::{Failure, Refusal};

/// Writes a result to a file; without one, or where the file is called `-`, it prints it.
pub(crate) fn deliver(result: &str, file: Option<&Path>) -> Result<(), Failure> {
    match file.filter(|path| *path != Path::new("-")) {
        None => print(result),
        Some(path) => {
            write(path, result)?;
            print(&format!("Wrote {}\n", path.display()))
        }
    }
}

/// Prints to standard output. Unlike `println!` it does not panic when nobody reads on.
pub(crate) fn print(text: &str) -> Result<(), Failure> {
    let mut out = io::stdout().lock();
    out.write_all(text.as_bytes())
        .and_then(|()| out.flush())
        .map_err(Failure::Output)
}

/// Says on standard error what the command is doing. Nobody needs to hear it.
pub(crate) fn progress(text: &str) {
    let _ = writeln!(io::stderr(), "{text}");
}

/// Writes a file under another name first, so that nobody finds half of it and a failure spoils nothing.
fn write(path: &Path, text: &str) -> Result<(), Failure> {
    // A link is followed, so that it stays a link.
    let target = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    check(path, &target)?;
    let failed = Failure::file("write", path);
    if target.exists() && !target.is_file() {
        // A device or a pipe: it takes the text, and must not be replaced.
        return fs::write(&target, text).map_err(failed);
    }
    let draft = draft(&target);
    let written = fs::write(&draft, text).and_then(|()| fs::rename(&draft, &target));
    if written.is_err() {
        let _ = fs::remove_file(&draft);
    }
    written.map_err(failed)
}

fn check(path: &Path, target: &Path) -> Result<(), Refusal> {
    if target.is_dir() {
        return Err(Refusal::OutIsFolder(path.to_owned()));
    }
    let folder = folder(target);
    if folder.is_dir() {
        Ok(())
    } else {
        Err(Refusal::NoFolder(folder.to_owned()))
    }
}

fn folder(file: &Path) -> &Path {
    match file.parent() {
        Some(folder) if folder != Path::new("") => folder,
        _ => Path::new("."),
    }
}

/// A hidden name beside the file's own, which no other run of the command uses.
fn draft(file: &Path) -> PathBuf {
    let mut name = OsString::from(".");
    name.push(file.file_name().unwrap_or_default());
    name.push(format!(".{}", process::id()));
    file.with_file_name(name)
}
