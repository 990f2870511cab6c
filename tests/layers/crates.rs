//! Which outside crates each layer may bring in.

use super::{Source, none, sources};

/// The outside crates of `Cargo.toml`, as the source spells them; those for tests only are none of its business.
fn outside_crates(manifest: &str) -> Vec<String> {
    let (mut crates, mut listing) = (Vec::new(), false);
    for line in manifest.lines() {
        if let Some(section) = line.strip_prefix('[') {
            let section = section.trim_end_matches(']');
            listing = section.ends_with("dependencies") && !section.ends_with("dev-dependencies");
            let own_table = section
                .rsplit_once("dependencies.")
                .filter(|(before, _)| !before.ends_with("dev-"));
            crates.extend(own_table.map(|(_, name)| name.replace('-', "_")));
        } else if listing
            && let Some((name, _)) = line
                .split_once(" = ")
                .filter(|_| !line.starts_with(['#', ' ']))
        {
            crates.push(name.replace('-', "_"));
        }
    }
    crates
}

/// What each layer may bring in from outside.
fn may_bring(layer: &str) -> &'static [&'static str] {
    match layer {
        "decimal" => &["libm", "js_sys", "wasm_bindgen"],
        // The browser's memory.
        "lib" => &["rlsf"],
        "scenario" | "report" => &["glam", "libm", "serde"],
        "physics" | "figure" | "sandbox" => &["glam", "libm"],
        "web" => &[
            "glam",
            "libm",
            "wasm_bindgen",
            "web_sys",
            "js_sys",
            "console_error_panic_hook",
        ],
        "main" => &["clap"],
        "cli" => &[
            "glam",
            "clap",
            "http_body_util",
            "hyper",
            "hyper_util",
            "mime_guess",
            "serde",
            "serde_json",
            "tokio",
            "walrus",
            "wasm_bindgen_cli_support",
        ],
        _ => &[],
    }
}

/// Crates that only a browser has; their names may not even be mentioned elsewhere.
const OF_THE_BROWSER: [&str; 4] = [
    "wasm_bindgen",
    "web_sys",
    "js_sys",
    "console_error_panic_hook",
];

fn wrong_crates(source: &Source, crates: &[String]) -> Vec<String> {
    let allowed = may_bring(source.layer());
    let mut faults = Vec::new();
    for (at, token) in source.tokens.iter().enumerate() {
        let word = &*token.word;
        if !crates.iter().any(|name| name == word) || allowed.contains(&word) {
            continue;
        }
        let before = at
            .checked_sub(1)
            .map_or("", |before| &*source.tokens[before].word);
        let is_root = before != "::"
            && before != "."
            && (source.words(at + 1, 1) == ["::"] || before == "use");
        if is_root || OF_THE_BROWSER.contains(&word) {
            faults.push(source.fault(at, &format!("{} may not use {word}", source.layer())));
        }
    }
    faults
}

fn crates() -> Vec<String> {
    outside_crates(include_str!("../../Cargo.toml"))
}

#[test]
fn every_layer_brings_in_only_its_own_crates() {
    let crates = crates();
    for name in [
        "glam",
        "libm",
        "serde",
        "wasm_bindgen",
        "web_sys",
        "clap",
        "tokio",
    ] {
        assert!(
            crates.iter().any(|known| known == name),
            "{name} is not among {crates:?}"
        );
    }
    assert!(!crates.iter().any(|name| name == "fastrand"), "{crates:?}");
    none(
        &sources()
            .iter()
            .flat_map(|source| wrong_crates(source, &crates))
            .collect::<Vec<_>>(),
    );
}

#[test]
fn a_crate_where_it_does_not_belong_is_found() {
    let crates = crates();
    for (path, text) in [
        ("physics/flyby.rs", "#[derive(serde::Serialize)] struct A;"),
        ("physics/flyby.rs", "use serde::Serialize;"),
        ("report/csv.rs", "fn f() { serde_json::to_string(&x) }"),
        ("figure/svg.rs", "#[wasm_bindgen] pub fn f() {}"),
        ("sandbox.rs", "use js_sys::Number;"),
        ("web/page.rs", "use tokio::net;"),
    ] {
        assert_eq!(
            wrong_crates(&Source::new(path, text), &crates).len(),
            1,
            "{path}: {text}"
        );
    }
    for (path, text) in [
        ("decimal.rs", "fn f() { js_sys::Number::from(1.0) }"),
        (
            "physics/flyby.rs",
            "use glam::DVec3; fn f() { libm::sin(1.0) }",
        ),
        ("report/csv.rs", "use serde::Serialize; // tokio::net"),
    ] {
        none(&wrong_crates(&Source::new(path, text), &crates));
    }
}
