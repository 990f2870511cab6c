//! Who may use whom: `web, cli -> sandbox -> figure -> report -> scenario -> physics`, and `decimal` beside them.

use super::text::closing;
use super::{Source, none, sources};

/// The chain, lowest first; a layer may use those before it. `decimal` serves all but the physics.
const CHAIN: [&str; 7] = [
    "physics", "scenario", "report", "figure", "sandbox", "cli", "web",
];

/// Whether a layer may use another.
fn may_use(from: &str, to: &str) -> bool {
    let rank = |layer: &str| CHAIN.iter().position(|known| *known == layer);
    match (from, to) {
        _ if from == to => true,
        ("main", _) => to == "cli",
        (_, "decimal") => from != "physics",
        // The two doors do not know each other.
        ("decimal", _) | ("web", "cli") | ("cli", "web") => false,
        _ => matches!((rank(from), rank(to)), (Some(from), Some(to)) if to < from),
    }
}

/// The layers named from the crate's root on: those after `crate::`, after `two_frames::`, and after as many `super::` as
/// lead to the root. Each with the token where it stands.
fn named_layers(source: &Source) -> Vec<(usize, String)> {
    let mut found = Vec::new();
    let mut inner: Vec<usize> = Vec::new();
    for at in 0..source.tokens.len() {
        inner.retain(|end| *end > at);
        let word = &*source.tokens[at].word;
        let after = match word {
            "mod" if source.words(at + 2, 1) == ["{"] => {
                inner.push(closing(&source.tokens, at + 2));
                continue;
            }
            "crate" | "two_frames" if source.words(at + 1, 1) == ["::"] => at + 2,
            "super" if at == 0 || source.tokens[at - 1].word != "::" => {
                let here = depth(&source.path) + inner.len();
                let to_the_root = (0..here).all(|i| source.words(at + 2 * i, 2) == ["super", "::"]);
                if !to_the_root {
                    continue;
                }
                at + 2 * here
            }
            _ => continue,
        };
        found.extend(
            first_names(source, after)
                .into_iter()
                .map(|name| (after, name)),
        );
    }
    found
}

/// How many modules lie between the crate's root and a file's own module, that one included.
fn depth(path: &str) -> usize {
    let parts = path.split('/').count();
    match path.rsplit('/').next() {
        Some("lib.rs" | "main.rs") if parts == 1 => 0,
        Some("mod.rs") => parts - 1,
        _ => parts,
    }
}

/// The name at a token, or each first name of a group in braces.
fn first_names(source: &Source, at: usize) -> Vec<String> {
    if source.words(at, 1) != ["{"] {
        return source.words(at, 1).into_iter().map(str::to_owned).collect();
    }
    let (mut names, mut i) = (Vec::new(), at + 1);
    let end = closing(&source.tokens, at);
    let mut fresh = true;
    while i < end {
        match &*source.tokens[i].word {
            "," => fresh = true,
            "{" => i = closing(&source.tokens, i),
            name if fresh => {
                names.push(name.to_owned());
                fresh = false;
            }
            _ => {}
        }
        i += 1;
    }
    names
}

fn wrong_uses(source: &Source) -> Vec<String> {
    let from = source.layer();
    let wrong = named_layers(source)
        .into_iter()
        .filter(|(_, to)| !may_use(from, to));
    wrong
        .map(|(at, to)| source.fault(at, &format!("{from} may not use {to}")))
        .collect()
}

#[test]
fn every_layer_uses_only_those_below_it() {
    let sources = sources();
    let inside = sources.iter().filter(|source| source.layer() != "lib");
    let found: usize = inside
        .clone()
        .map(|source| named_layers(source).len())
        .sum();
    assert!(found > 60, "only {found} uses found: is the reader blind?");
    none(&inside.flat_map(wrong_uses).collect::<Vec<_>>());
}

#[test]
fn a_layer_that_reaches_upward_is_found() {
    for (path, text) in [
        ("physics/flyby.rs", "use crate::figure::Track;"),
        ("physics/mod.rs", "fn f() -> crate::report::Value { g() }"),
        ("physics/aim.rs", "use crate::decimal::within;"),
        (
            "scenario/text.rs",
            "use crate::{physics::units::AU, report::{self, Row}};",
        ),
        ("report/value.rs", "use super::super::figure::View;"),
        ("figure/mod.rs", "use super::sandbox::Sandbox;"),
        ("sandbox.rs", "fn f() { super::web::start(); }"),
        (
            "sandbox/clock.rs",
            "mod inner { use super::super::super::cli::run; }",
        ),
        ("web/page.rs", "use crate::cli::run;"),
        ("cli/serve.rs", "use crate::web::Page;"),
        ("decimal.rs", "use crate::physics::units;"),
        ("main.rs", "use two_frames::physics::Flyby;"),
    ] {
        assert_eq!(
            wrong_uses(&Source::new(path, text)).len(),
            1,
            "{path}: {text}"
        );
    }
    for (path, text) in [
        (
            "figure/mod.rs",
            "use crate::report::short; use super::physics::Flyby; use self::view::View;",
        ),
        (
            "figure/stage.rs",
            "use super::view::View; mod inner { use super::super::view::View; }",
        ),
        (
            "physics/flyby.rs",
            "// use crate::figure::Track;\nconst A: &str = \"crate::web\"; pub(crate) fn f() {}",
        ),
        (
            "physics/flyby.rs",
            "#[cfg(test)]\nmod tests { use crate::report::Value; }",
        ),
        (
            "sandbox.rs",
            "use crate::{decimal::within, figure::{Scene, Views}, scenario};",
        ),
        (
            "web/page.rs",
            "use crate::sandbox::Sandbox; use crate::decimal::parse;",
        ),
        ("main.rs", "use two_frames::cli::{Arguments, run};"),
    ] {
        none(&wrong_uses(&Source::new(path, text)));
    }
}
