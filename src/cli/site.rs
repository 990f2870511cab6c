//! The static site: the page and its built core, copied into a folder that any web server can serve.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use super::output::print;
use super::{Failure, Project, Refusal};

/// A file that tells a folder that we wrote from any other.
const MARK: &str = ".two-frames-site";

/// Builds the core and writes the site to `out`.
pub(crate) fn run(project: &Project, out: &Path) -> Result<(), Failure> {
    let page = project.page();
    check(&page, out)?;
    project.build_core()?;
    let count = write(&page, out)?;
    print(&format!("Wrote {count} files to {}\n", out.display()))
}

/// Refuses a folder whose contents the site might spoil.
fn check(page: &Path, out: &Path) -> Result<(), Failure> {
    if inside(out, page) {
        return Err(Refusal::OutInsidePage(out.to_owned()).into());
    }
    match fs::read_dir(out) {
        Ok(mut entries) => {
            if entries.next().is_some() && !out.join(MARK).is_file() {
                return Err(Refusal::OutNotOurs(out.to_owned()).into());
            }
            Ok(())
        }
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(()),
        Err(error) => Err(Failure::file("read", out)(error)),
    }
}

/// Whether `path`, which need not exist, would lie in `folder`.
fn inside(path: &Path, folder: &Path) -> bool {
    let Ok(folder) = fs::canonicalize(folder) else {
        return false;
    };
    let absolute = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
    let existing = absolute
        .ancestors()
        .find_map(|part| fs::canonicalize(part).ok());
    existing.is_some_and(|part| part.starts_with(folder))
}

/// Copies the page's files over those of an earlier build and returns how many there are. Files of the folder that are
/// not in the page stay as they are.
fn write(page: &Path, out: &Path) -> Result<usize, Failure> {
    fs::create_dir_all(out).map_err(Failure::file("create", out))?;
    let mark = out.join(MARK);
    fs::write(
        &mark,
        "`two-frames build` wrote this folder and may write it again.\n",
    )
    .map_err(Failure::file("write", &mark))?;
    let files = files(page).map_err(Failure::file("read", page))?;
    for file in &files {
        let to = out.join(file);
        let folder = to.parent().unwrap_or(out);
        fs::create_dir_all(folder).map_err(Failure::file("create", folder))?;
        fs::copy(page.join(file), &to).map_err(Failure::file("write", &to))?;
    }
    Ok(files.len())
}

/// The paths, relative to `folder`, of every file in it, sorted; hidden files are left out.
fn files(folder: &Path) -> io::Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    let mut waiting = vec![PathBuf::new()];
    while let Some(inner) = waiting.pop() {
        for entry in fs::read_dir(folder.join(&inner))? {
            let entry = entry?;
            let path = inner.join(entry.file_name());
            if entry.file_name().to_string_lossy().starts_with('.') {
                continue;
            }
            if entry.path().is_dir() {
                waiting.push(path);
            } else {
                found.push(path);
            }
        }
    }
    found.sort();
    Ok(found)
}
