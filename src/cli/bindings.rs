//! The JavaScript side of the core: generated in this process, so that nothing has to be installed.

use std::cmp::Reverse;
use std::env;
use std::fmt::Display;
use std::fs;
use std::mem;
use std::path::{Path, PathBuf};
use std::process;
use std::time::SystemTime;

use walrus::{ElementItems, FunctionId, Module};
use wasm_bindgen_cli_support::{Bindgen, Output};

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
    let mut output = bindgen
        .web(true)
        .and_then(Bindgen::generate_output)
        .map_err(failed)?;
    drop_left_over(output.wasm_mut());
    let names = shorten_names(&mut output);
    output.emit(folder).map_err(failed)?;
    let script = folder.join(FILES[0]);
    let mut text = fs::read_to_string(&script).map_err(Failure::file("read", &script))?;
    for (long, short) in names {
        text = text.replace(&long, &short);
    }
    fs::write(&script, text).map_err(Failure::file("write", &script))
}

/// What the bindings generator calls the script in the WebAssembly.
const MODULE: &str = "two_frames_bg.js";

fn failed(error: impl Display) -> Failure {
    Failure::Bindings(format!("{error:#}").replace('\n', " "))
}

/// Takes out of the core what calls a closure of a kind that it has none of. The generator has looked these functions up in
/// the table and exports those that the script calls; in the table nothing calls them, yet it would keep them all.
fn drop_left_over(module: &mut Module) {
    let calls_closure = |id: FunctionId| {
        let name = module.funcs.get(id).name.as_deref();
        name.is_some_and(|name| name.contains("closures::_::invoke"))
    };
    for segment in module.elements.iter_mut() {
        if let ElementItems::Functions(functions) = &mut segment.items
            && let Some(other) = functions.iter().copied().find(|id| !calls_closure(*id))
        {
            for id in functions.iter_mut().filter(|id| calls_closure(**id)) {
                *id = other;
            }
        }
    }
    walrus::passes::gc::run(module);
    // The generator has read this one, and no browser does.
    module.customs.remove_raw("target_features");
}

/// Gives what the core imports, and its exports that end in a hash, short names, and says which. The long ones, which no
/// compression can shorten, are a twentieth of the download. They can be replaced in the script as they are, because they
/// stand in it for nothing else.
fn shorten_names(output: &mut Output) -> Vec<(String, String)> {
    let module = output.wasm_mut();
    let imports = module.imports.iter_mut().map(|import| &mut import.name);
    let mut names = shorten("i", imports);
    let exports = module.exports.iter_mut().map(|export| &mut export.name);
    names.extend(shorten(
        "e",
        exports.filter(|name| name.contains("closures")),
    ));
    // Each import repeats the name of the module that it comes from, too.
    for import in module.imports.iter_mut() {
        import.module = "b".into();
    }
    names.push((format!("\"./{MODULE}\""), "\"b\"".into()));
    // The longest first, so that no name is replaced inside another.
    names.sort_by_key(|(long, _)| Reverse(long.len()));
    names
}

/// Puts a letter and a number in the place of each name.
fn shorten<'a>(letter: &str, names: impl Iterator<Item = &'a mut String>) -> Vec<(String, String)> {
    let names = names.enumerate().map(|(index, name)| {
        let short = format!("{letter}{index}");
        (mem::replace(name, short.clone()), short)
    });
    names.collect()
}
