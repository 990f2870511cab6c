//! What several test programs need.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process;
use std::sync::atomic::{AtomicU32, Ordering};

/// A folder in the system's place for temporary files, removed when it is dropped.
pub(crate) struct TemporaryFolder(PathBuf);

impl TemporaryFolder {
    pub(crate) fn new(purpose: &str) -> Self {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let number = COUNT.fetch_add(1, Ordering::Relaxed);
        let path = env::temp_dir().join(format!("two-frames-{purpose}-{}-{number}", process::id()));
        fs::create_dir_all(&path).expect("a temporary folder can be made");
        Self(path)
    }

    pub(crate) fn path(&self) -> &Path {
        &self.0
    }
}

impl Drop for TemporaryFolder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}
