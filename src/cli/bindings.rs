//! The JavaScript side of the core: generated in this process, so that nothing has to be installed.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process;
use std::time::SystemTime;

use wasm_bindgen_cli_support::Bindgen;

use super::output::progress;
use super::{Failure, Project};

/// What the page loads from `pkg`.
const FILES: [&str; 2] = ["two_frames.js", "two_frames_bg.wasm"];

/// Writes the bindings for the compiled core into `www/pkg`, unless those there were made from the same bytes.
pub(crate) fn update(project: &Project, core: &Path) -> Result<(), Failure> {
    let bytes = fs::read(core).map_err(Failure::file("read", core))?;
    if is_current(project, &bytes) {
        return Ok(());
    }
    progress("Writing its JavaScript bindings ...");
    let draft = project
        .core_target()
        .join(format!("bindings-{}", process::id()));
    generate(core, &draft)?;
    // Written elsewhere and moved into place, so that whoever reads `pkg` meanwhile sees whole files.
    let package = project.package();
    fs::create_dir_all(&package).map_err(Failure::file("create", &package))?;
    for file in FILES {
        let to = package.join(file);
        fs::rename(draft.join(file), &to).map_err(Failure::file("write", &to))?;
    }
    fs::remove_dir_all(&draft).map_err(Failure::file("remove", &draft))?;
    let source = source(project);
    fs::write(&source, bytes).map_err(Failure::file("write", &source))
}

/// Where a copy is kept of the core that the present bindings were made from.
fn source(project: &Project) -> PathBuf {
    project.core_target().join("bound.wasm")
}

/// Whether `pkg` was made from these bytes and by this very command: a newer command may generate otherwise.
fn is_current(project: &Project, core: &[u8]) -> bool {
    let command = env::current_exe().ok().and_then(|path| written(&path));
    let made_since = |file| written(&project.package().join(file)) >= command;
    command.is_some()
        && FILES.iter().all(made_since)
        && fs::read(source(project)).is_ok_and(|bytes| bytes == core)
}

fn written(path: &Path) -> Option<SystemTime> {
    path.metadata().and_then(|data| data.modified()).ok()
}

fn generate(core: &Path, folder: &Path) -> Result<(), Failure> {
    let mut bindgen = Bindgen::new();
    bindgen
        .input_path(core)
        .typescript(false)
        .omit_default_module_path(false)
        .remove_name_section(true)
        .remove_producers_section(true);
    let result = bindgen
        .web(true)
        .and_then(|bindgen| bindgen.generate(folder));
    result.map_err(|error| Failure::Bindings(format!("{error:#}").replace('\n', " ")))
}
