//! How long files and functions are.

use super::text::closing;
use super::{Source, none, sources};

/// Lines that a file may have.
const LONGEST_FILE: usize = 300;
/// Lines that a function may have, from its name to its last brace.
const LONGEST_FUNCTION: usize = 60;

/// Every function with a body: its name, and its number of lines.
fn functions(source: &Source) -> Vec<(String, usize, usize)> {
    let mut found = Vec::new();
    for at in 0..source.tokens.len() {
        let name = match source.words(at, 2)[..] {
            ["fn", name]
                if name.starts_with(|first: char| first.is_alphabetic() || first == '_') =>
            {
                name.to_owned()
            }
            _ => continue,
        };
        if let Some(open) = body(source, at) {
            let end = closing(&source.tokens, open);
            found.push((
                name,
                at,
                source.tokens[end].line - source.tokens[at].line + 1,
            ));
        }
    }
    found
}

/// Where a function's body opens; `None` for one that is only declared.
fn body(source: &Source, from: usize) -> Option<usize> {
    let mut at = from;
    while at < source.tokens.len() {
        match &*source.tokens[at].word {
            "{" => return Some(at),
            ";" => return None,
            "(" | "[" => at = closing(&source.tokens, at),
            _ => {}
        }
        at += 1;
    }
    None
}

fn median(mut values: Vec<usize>) -> usize {
    values.sort_unstable();
    values[values.len() / 2]
}

#[test]
fn files_are_short() {
    let lengths: Vec<_> = sources()
        .iter()
        .map(|source| (source.path.clone(), source.text.lines().count()))
        .collect();
    println!(
        "{} files, median {} lines",
        lengths.len(),
        median(lengths.iter().map(|(_, lines)| *lines).collect())
    );
    let long = lengths.iter().filter(|(_, lines)| *lines > LONGEST_FILE);
    none(
        &long
            .map(|(path, lines)| format!("src/{path} has {lines} lines, at most {LONGEST_FILE}"))
            .collect::<Vec<_>>(),
    );
}

#[test]
fn functions_are_short() {
    let (mut lengths, mut faults) = (Vec::new(), Vec::new());
    for source in sources() {
        for (name, at, lines) in functions(&source) {
            lengths.push(lines);
            if lines > LONGEST_FUNCTION {
                faults.push(source.fault(
                    at,
                    &format!("{name} has {lines} lines, at most {LONGEST_FUNCTION}"),
                ));
            }
        }
    }
    assert!(
        lengths.len() > 300,
        "only {} functions found",
        lengths.len()
    );
    println!(
        "{} functions, median {} lines",
        lengths.len(),
        median(lengths)
    );
    none(&faults);
}

#[test]
fn lines_of_functions_are_counted_right() {
    let text = "trait A {\n    fn declared(&self, f: fn(u8) -> [u8; 3]);\n}\nfn one() {}\nfn three(\n    a: u8,\n) -> u8 { a }\nfn four()\nwhere\n    u8: Copy,\n{ if true { \"}\" } else { '}' } }\n";
    let found = functions(&Source::new("x.rs", text));
    let found: Vec<_> = found
        .iter()
        .map(|(name, _, lines)| (&**name, *lines))
        .collect();
    assert_eq!(found, [("one", 1), ("three", 3), ("four", 4)]);
}
