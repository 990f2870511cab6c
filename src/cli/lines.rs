//! One scenario text, or one a line of standard input, each answered with one line of JSON.

use std::io::{self, BufRead, Write};
use std::str;

use serde::Serialize;

use super::output::print;
use super::{Failure, Refusal};

/// Prints the answer to a text as JSON; `-` stands for the lines of standard input.
pub(super) fn answer<T: Serialize>(
    text: &str,
    solve: impl Fn(&str) -> Result<T, Refusal>,
) -> Result<(), Failure> {
    if text == "-" {
        return answer_lines(io::stdin().lock(), io::stdout().lock(), &solve);
    }
    print(&json(&solve(text)?))
}

/// What stands in place of an answer.
#[derive(Serialize)]
struct BadLine {
    line: u64,
    error: String,
}

/// Answers line by line, so that a program may write a line and wait for what comes back.
fn answer_lines<T: Serialize>(
    mut input: impl BufRead,
    mut output: impl Write,
    solve: &impl Fn(&str) -> Result<T, Refusal>,
) -> Result<(), Failure> {
    let (mut line, mut bad) = (0, 0);
    let mut bytes = Vec::new();
    while input
        .read_until(b'\n', &mut bytes)
        .map_err(Failure::Input)?
        > 0
    {
        line += 1;
        let answer = text_of(&bytes).and_then(solve);
        let answer = answer.map_or_else(
            |refusal| {
                bad += 1;
                let error = refusal.to_string().replace('\n', " ");
                json(&BadLine { line, error })
            },
            |answer| json(&answer),
        );
        output
            .write_all(answer.as_bytes())
            .and_then(|()| output.flush())
            .map_err(Failure::Output)?;
        bytes.clear();
    }
    if bad == 0 {
        Ok(())
    } else {
        Err(Failure::BadLines { bad, all: line })
    }
}

/// A line without its line end.
fn text_of(bytes: &[u8]) -> Result<&str, Refusal> {
    let line = str::from_utf8(bytes).map_err(|_| Refusal::NotText)?;
    let line = line.strip_suffix('\n').unwrap_or(line);
    Ok(line.strip_suffix('\r').unwrap_or(line))
}

/// One line of JSON with its line end.
fn json(value: &impl Serialize) -> String {
    let text = serde_json::to_string(value);
    text.expect("it has only plain values and names for keys") + "\n"
}
