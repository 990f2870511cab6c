//! The core, compiled to WebAssembly by a nested cargo; adds Rust's target for it first if that is missing.

use std::env;
use std::ffi::{OsStr, OsString};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use super::output::progress;
use super::{Failure, Project};

const TARGET: &str = "wasm32-unknown-unknown";

/// The programs that build the core.
#[derive(Debug, Clone)]
pub(crate) struct Tools {
    pub(crate) cargo: OsString,
    pub(crate) rustc: OsString,
    pub(crate) rustup: OsString,
}

impl Tools {
    /// The ones that run this command (`cargo run` names its own cargo), or else those on the PATH.
    pub(crate) fn from_environment() -> Self {
        let or = |variable, name: &str| env::var_os(variable).unwrap_or_else(|| name.into());
        Self {
            cargo: or("CARGO", "cargo"),
            rustc: or("RUSTC", "rustc"),
            rustup: "rustup".into(),
        }
    }
}

/// Compiles the core and returns the path of the raw WebAssembly file, which still needs its bindings.
pub(crate) fn build(project: &Project, tools: &Tools) -> Result<PathBuf, Failure> {
    let sysroot = sysroot(project, tools)?;
    if !sysroot
        .join("lib/rustlib")
        .join(TARGET)
        .join("lib")
        .is_dir()
    {
        add_target(project, tools)?;
    }
    progress("Compiling the core for the browser ...");
    let status = compile(project, tools, &sysroot)
        .status()
        .map_err(|_| Failure::NoTool(name(&tools.cargo)))?;
    if !status.success() {
        return Err(why_not(project, tools));
    }
    Ok(project
        .core_target()
        .join(TARGET)
        .join("wasm/two_frames.wasm"))
}

/// The folder of the Rust toolchain in use.
fn sysroot(project: &Project, tools: &Tools) -> Result<PathBuf, Failure> {
    let output = Command::new(&tools.rustc)
        .args(["--print", "sysroot"])
        .current_dir(project.root())
        .output()
        .ok()
        .filter(|output| output.status.success())
        .ok_or_else(|| Failure::NoTool(name(&tools.rustc)))?;
    Ok(PathBuf::from(
        String::from_utf8_lossy(&output.stdout).trim_end(),
    ))
}

fn add_target(project: &Project, tools: &Tools) -> Result<(), Failure> {
    progress(&format!("Adding Rust's {TARGET} target with rustup ..."));
    let status = Command::new(&tools.rustup)
        .args(["target", "add", TARGET])
        .current_dir(project.root())
        .status()
        .map_err(|_| Failure::NoRustup)?;
    if status.success() {
        Ok(())
    } else {
        Err(Failure::NoTarget)
    }
}

/// The nested build. Only the `cdylib` is asked for: beside an `rlib` cargo would leave out link-time optimisation.
fn compile(project: &Project, tools: &Tools, sysroot: &Path) -> Command {
    let mut command = Command::new(&tools.cargo);
    command
        .current_dir(project.root())
        .args([
            "rustc",
            "--lib",
            "--crate-type",
            "cdylib",
            "--no-default-features",
        ])
        .args(["--target", TARGET, "--profile", "wasm", "--target-dir"])
        .arg(project.core_target())
        .env("CARGO_ENCODED_RUSTFLAGS", flags(project, sysroot));
    command
}

/// Compiler flags that keep this computer's folders out of the core, so that every copy of the project, wherever it
/// lies, compiles to the same bytes. The last flag that matches a path wins.
fn flags(project: &Project, sysroot: &Path) -> OsString {
    let home = cargo_home();
    let mut folders = vec![(home.clone(), "/cargo"), (sysroot.to_owned(), "/rust")];
    folders.extend(
        registries(&home)
            .into_iter()
            .map(|folder| (folder, "/crates")),
    );
    folders.push((project.root().to_owned(), "/two-frames"));

    let mut flags = OsString::new();
    for (folder, name) in folders {
        if !flags.is_empty() {
            // cargo splits CARGO_ENCODED_RUSTFLAGS at this character.
            flags.push("\u{1f}");
        }
        flags.push("--remap-path-prefix=");
        flags.push(folder);
        flags.push("=");
        flags.push(name);
    }
    flags
}

fn cargo_home() -> PathBuf {
    let default = || env::home_dir().unwrap_or_default().join(".cargo");
    env::var_os("CARGO_HOME").map_or_else(default, PathBuf::from)
}

/// The folders that hold the libraries' sources: one for each registry, named after its host.
fn registries(cargo_home: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(cargo_home.join("registry/src"))
        .into_iter()
        .flatten();
    entries.flatten().map(|entry| entry.path()).collect()
}

/// Why the nested build failed: cargo says it in many words and with one exit status, so this asks it whether every
/// library is at hand.
fn why_not(project: &Project, tools: &Tools) -> Failure {
    let complete = Command::new(&tools.cargo)
        .args(["fetch", "--offline", "--target", TARGET])
        .current_dir(project.root())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status()
        .is_ok_and(|status| status.success());
    if complete {
        Failure::CoreDoesNotCompile
    } else {
        Failure::NoLibraries
    }
}

fn name(program: &OsStr) -> String {
    program.to_string_lossy().into_owned()
}
