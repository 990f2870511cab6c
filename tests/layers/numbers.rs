//! Arithmetic that gives the same bits natively and in the browser, and closures that are cleaned up.

use super::text::closing;
use super::{Source, none, sources};

/// What the standard library leaves to the platform's mathematics: natively one library, in WebAssembly another, so that the
/// last bits differ. `libm` has each of them, the same everywhere.
const OF_THE_PLATFORM: [&str; 27] = [
    "sin", "cos", "tan", "asin", "acos", "atan", "atan2", "sin_cos", "sinh", "cosh", "tanh",
    "asinh", "acosh", "atanh", "exp", "exp2", "exp_m1", "ln", "ln_1p", "log", "log2", "log10",
    "powi", "powf", "hypot", "cbrt", "mul_add",
];

/// Ways to give up a value without cleaning it up.
const LEAKS: [&str; 4] = ["forget", "leak", "into_js_value", "ManuallyDrop"];

fn platform_mathematics(source: &Source) -> Vec<String> {
    let mut faults = Vec::new();
    for at in 0..source.tokens.len() {
        let ([".", method, "(", ..] | ["f64" | "f32", "::", method, ..]) = source.words(at, 4)[..]
        else {
            continue;
        };
        if OF_THE_PLATFORM.contains(&method) {
            faults.push(source.fault(
                at,
                &format!("{method} of the standard library: take libm's"),
            ));
        }
    }
    faults
}

/// `f64::clamp` panics when its ends are the wrong way round, and that message alone brings the standard library's float
/// formatting into the download; `decimal::within` takes its place. A method of our own called clamp has one argument.
fn clamps(source: &Source) -> Vec<String> {
    let mut faults = Vec::new();
    for at in 0..source.tokens.len() {
        let found = match source.words(at, 3)[..] {
            [".", "clamp", "("] => has_a_comma(source, at + 2),
            ["f64" | "f32", "::", "clamp"] => true,
            _ => false,
        };
        if found {
            faults.push(source.fault(at, "clamp of the standard library: take decimal::within"));
        }
    }
    faults
}

/// Whether the parentheses that open at a token hold more than one argument.
fn has_a_comma(source: &Source, open: usize) -> bool {
    let end = closing(&source.tokens, open);
    let mut at = open + 1;
    while at < end {
        match &*source.tokens[at].word {
            // A comma before the end of the list adds no argument.
            "," => return at + 1 < end,
            "(" | "[" | "{" => at = closing(&source.tokens, at),
            _ => {}
        }
        at += 1;
    }
    false
}

fn leaks(source: &Source) -> Vec<String> {
    let found = source
        .tokens
        .iter()
        .enumerate()
        .filter(|(_, token)| LEAKS.contains(&&*token.word));
    found
        .map(|(at, token)| source.fault(at, &format!("{} leaves something uncleaned", token.word)))
        .collect()
}

/// The command's own tools may count as they like: nothing of theirs is in the core.
fn core() -> Vec<Source> {
    sources()
        .into_iter()
        .filter(|source| !matches!(source.layer(), "cli" | "main"))
        .collect()
}

#[test]
fn the_core_leaves_no_mathematics_to_the_platform() {
    none(
        &core()
            .iter()
            .flat_map(platform_mathematics)
            .collect::<Vec<_>>(),
    );
}

#[test]
fn the_core_clamps_by_its_own_means() {
    none(&core().iter().flat_map(clamps).collect::<Vec<_>>());
}

#[test]
fn nothing_is_leaked() {
    none(&sources().iter().flat_map(leaks).collect::<Vec<_>>());
}

#[test]
fn each_of_these_is_found_where_it_stands() {
    let at = |text: &str| Source::new("physics/flyby.rs", text);
    for text in [
        "let a = b.sin();",
        "x.powi(2)",
        "(a + b)\n  .hypot(c)",
        "f64::atan2(a, b)",
        "v.map(f64::exp)",
        "1.0_f64.ln()",
    ] {
        assert_eq!(platform_mathematics(&at(text)).len(), 1, "{text}");
    }
    for text in [
        "libm::sin(a)",
        "a.sqrt()",
        "let (sin, cos) = libm::sincos(a);",
        "self.sin",
        "sin(a)",
        "// a.sin()",
        "#[cfg(test)]\nmod tests { fn f() { a.sin(); } }",
        "conic.exponent()",
    ] {
        none(&platform_mathematics(&at(text)));
    }
    for text in [
        "x.clamp(0.0, 1.0)",
        "x.clamp(a(b, c), d)",
        "f64::clamp(x, 0.0, 1.0)",
    ] {
        assert_eq!(clamps(&at(text)).len(), 1, "{text}");
    }
    for text in [
        "track.clamp(time)",
        "self.clamp((2.0 * f(a, b) - 1.0) * c)",
        "fn clamp(&self, t: f64) {}",
        "clamp(1.0,)",
    ] {
        none(&clamps(&at(text)));
    }
    for text in [
        "closure.forget();",
        "std::mem::forget(x)",
        "Box::leak(x)",
        "closure.into_js_value()",
    ] {
        assert_eq!(leaks(&at(text)).len(), 1, "{text}");
    }
}
