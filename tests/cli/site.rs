//! `build`: the site in a folder of its own, and what is said where it cannot be built.

use std::fs;
use std::path::Path;
use std::process::{Command, Output};

use crate::support::TemporaryFolder;
use crate::{errors, sentence, two_frames};

fn build(out: &Path) -> Command {
    let mut command = two_frames(&["build", "--out"]);
    command.arg(out);
    command
}

#[test]
fn a_site_is_not_written_over_somebody_s_files() {
    let folder = TemporaryFolder::new("cli");
    fs::write(folder.path().join("thesis.txt"), "years of work").expect("a file can be written");
    let output = build(folder.path()).output().expect("the command starts");
    assert_eq!(output.status.code(), Some(2));
    assert!(
        sentence(&output).contains("is not empty"),
        "{}",
        errors(&output)
    );
    assert_eq!(fs::read_dir(folder.path()).expect("it is there").count(), 1);
}

#[test]
fn a_site_is_not_written_into_the_page_it_is_copied_from() {
    let inside = Path::new(env!("CARGO_MANIFEST_DIR")).join("www/new/site");
    let output = build(&inside).output().expect("the command starts");
    assert_eq!(output.status.code(), Some(2));
    assert!(
        sentence(&output).contains("lies inside"),
        "{}",
        errors(&output)
    );
    assert!(!inside.exists());
}

#[test]
fn a_site_is_whole_and_can_be_written_again() {
    let folder = TemporaryFolder::new("cli");
    let out = folder.path().join("new/site");
    for _ in 0..2 {
        let output = build(&out).output().expect("the command starts");
        assert!(output.status.success(), "{}", errors(&output));
    }
    for file in ["index.html", "pkg/two_frames.js", "pkg/two_frames_bg.wasm"] {
        assert!(out.join(file).is_file(), "{file}");
    }
    assert!(!out.join("pkg/.gitignore").exists() && !out.join(".gitignore").exists());

    let core = fs::read(out.join("pkg/two_frames_bg.wasm")).expect("it is there");
    // The first four bytes of every WebAssembly file. Source: WebAssembly core specification, 5.5.16 (from memory).
    assert_eq!(&core[..4], b"\0asm");
    let home = std::env::home_dir().expect("this person has a home");
    for folder in [Path::new(env!("CARGO_MANIFEST_DIR")), &home] {
        let name = folder.to_str().expect("a plain name").as_bytes();
        let found = name.len() > 1 && core.windows(name.len()).any(|part| part == name);
        assert!(
            !found,
            "the core names a folder of this computer: {}",
            folder.display()
        );
    }
}

/// What the command says when a tool that builds the core is missing or fails. The tools here are small scripts.
#[cfg(unix)]
mod without_tools {
    use super::*;
    use std::os::unix::fs::PermissionsExt as _;

    /// A folder that is the whole PATH, and an empty toolchain.
    struct Tools(TemporaryFolder);

    impl Tools {
        fn new() -> Self {
            let tools = Self(TemporaryFolder::new("tools"));
            let sysroot = tools.0.path().join("toolchain");
            tools.with("rustc", &format!("echo {}", sysroot.display()))
        }

        /// The toolchain has the target already.
        fn with_target(self) -> Self {
            let target = "toolchain/lib/rustlib/wasm32-unknown-unknown/lib";
            fs::create_dir_all(self.0.path().join(target)).expect("a folder can be made");
            self
        }

        fn with(self, name: &str, script: &str) -> Self {
            let path = self.0.path().join(name);
            fs::write(&path, format!("#!/bin/sh\n{script}\n")).expect("a script can be written");
            fs::set_permissions(&path, fs::Permissions::from_mode(0o755))
                .expect("it can be made to run");
            self
        }

        fn build(&self) -> Output {
            let mut command = build(&self.0.path().join("site"));
            command
                .env("PATH", self.0.path())
                .env("CARGO_HOME", self.0.path());
            for variable in ["CARGO", "RUSTC"] {
                command.env_remove(variable);
            }
            command.output().expect("the command starts")
        }

        fn failure(&self) -> String {
            let output = self.build();
            assert_eq!(output.status.code(), Some(1));
            sentence(&output)
        }
    }

    #[test]
    fn no_compiler() {
        let text = Tools::new().with("rustc", "exit 1").failure();
        assert!(text.contains("`rustc` cannot be started"), "{text}");
    }

    #[test]
    fn no_target_and_no_rustup() {
        let text = Tools::new().failure();
        assert!(text.contains("rustup is not on the PATH"), "{text}");
    }

    #[test]
    fn rustup_without_a_network() {
        let text = Tools::new().with("rustup", "exit 1").failure();
        assert!(
            text.contains("could not add") && text.contains("network"),
            "{text}"
        );
    }

    #[test]
    fn the_target_is_added_where_it_is_missing() {
        let asked = "[ \"$*\" = 'target add wasm32-unknown-unknown' ]";
        let tools = Tools::new().with("rustup", asked).with("cargo", "exit 1");
        let output = tools.build();
        assert!(
            errors(&output).contains("Adding Rust's wasm32-unknown-unknown target"),
            "{}",
            errors(&output)
        );
        assert!(
            sentence(&output).contains("libraries could not be downloaded"),
            "{}",
            errors(&output)
        );
    }

    #[test]
    fn no_cargo() {
        let text = Tools::new().with_target().failure();
        assert!(text.contains("`cargo` cannot be started"), "{text}");
    }

    #[test]
    fn no_libraries_and_no_network() {
        let text = Tools::new()
            .with_target()
            .with("cargo", "exit 101")
            .failure();
        assert!(
            text.contains("could not be downloaded") && text.contains("network"),
            "{text}"
        );
    }

    #[test]
    fn a_core_that_does_not_compile() {
        let text = Tools::new()
            .with_target()
            .with("cargo", "[ \"$1\" = fetch ]")
            .failure();
        assert!(text.contains("does not compile"), "{text}");
    }
}
