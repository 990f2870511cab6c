//! Where the project's files are.

use std::path::{Path, PathBuf};

use super::{Failure, bindings, wasm};

/// The folder that holds Cargo.toml, and the places in it that the command uses.
#[derive(Debug, Clone)]
pub struct Project {
    root: PathBuf,
}

impl Project {
    /// The project that this command was compiled from.
    pub fn here() -> Self {
        Self::at(env!("CARGO_MANIFEST_DIR"))
    }

    /// The project in the folder `root`.
    pub fn at(root: impl Into<PathBuf>) -> Self {
        Self { root: root.into() }
    }

    /// The folder that holds Cargo.toml.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The folder of the page, with the generated `pkg` in it.
    pub fn page(&self) -> PathBuf {
        self.root.join("www")
    }

    /// The folder for the generated bindings and the compiled core.
    pub fn package(&self) -> PathBuf {
        self.page().join("pkg")
    }

    /// The target folder for the core. It is not the command's own, so that neither build throws away the other's
    /// work, and it is absolute, so that a `CARGO_TARGET_DIR` in the environment changes nothing.
    pub(crate) fn core_target(&self) -> PathBuf {
        self.root.join(".build").join("core")
    }

    /// Brings `www/pkg` up to date: the WebAssembly target, the compiled core and the bindings, each only if needed.
    pub fn build_core(&self) -> Result<(), Failure> {
        let page = self.page();
        if !page.is_dir() {
            return Err(Failure::NoPage(page));
        }
        let core = wasm::build(self, &wasm::Tools::from_environment())?;
        bindings::update(self, &core)
    }
}
