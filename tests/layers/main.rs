//! The house rules, read off the source itself: who may use whom, which arithmetic the core may use, how long a file and a
//! function may get.

mod crates;
mod numbers;
mod sizes;
mod text;
mod walls;

use std::fs;
use std::path::{Path, PathBuf};

use text::Token;

/// One file below `src/`, with its tests, comments and texts taken out.
struct Source {
    /// Path from `src/`, parts joined by a slash.
    path: String,
    /// The text as it is.
    text: String,
    /// What is left of it to check.
    tokens: Vec<Token>,
}

impl Source {
    fn new(path: &str, text: &str) -> Self {
        let tokens = text::tokens(&text::without_tests(&text::code(text)));
        Self {
            path: path.to_owned(),
            text: text.to_owned(),
            tokens,
        }
    }

    /// The layer that a file belongs to: the first part of its path.
    fn layer(&self) -> &str {
        let first = self.path.split('/').next().unwrap_or_default();
        first.trim_end_matches(".rs")
    }

    /// The words of the tokens from `at` on, as many as asked for; fewer at the end.
    fn words(&self, at: usize, count: usize) -> Vec<&str> {
        self.tokens
            .iter()
            .skip(at)
            .take(count)
            .map(|token| &*token.word)
            .collect()
    }

    /// A fault at a token, as a compiler would name its place.
    fn fault(&self, at: usize, what: &str) -> String {
        format!("src/{}:{}: {what}", self.path, self.tokens[at].line)
    }
}

/// Every file below `src/`.
fn sources() -> Vec<Source> {
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut found = Vec::new();
    collect(&root, &root, &mut found);
    found.sort_by(|a, b| a.path.cmp(&b.path));
    assert!(found.len() > 50, "only {} files found", found.len());
    found
}

fn collect(folder: &Path, root: &Path, found: &mut Vec<Source>) {
    for entry in fs::read_dir(folder).expect("a readable folder") {
        let path = entry.expect("a readable entry").path();
        if path.is_dir() {
            collect(&path, root, found);
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            let inner = path
                .strip_prefix(root)
                .expect("it is below")
                .to_string_lossy()
                .replace('\\', "/");
            found.push(Source::new(
                &inner,
                &fs::read_to_string(&path).expect("a readable file"),
            ));
        }
    }
}

/// Fails with all faults, if there are any.
#[track_caller]
fn none(faults: &[String]) {
    assert!(
        faults.is_empty(),
        "{} faults\n{}",
        faults.len(),
        faults.join("\n")
    );
}
