//! All numbers of a pass as JSON: one text, or one a line.

use std::io::{self, BufRead, Write};
use std::str;

use serde::Serialize;

use super::output::print;
use super::{Failure, Refusal, SolveArguments, open};

/// Prints the answer to one text, or to each line of standard input.
pub(crate) fn run(arguments: &SolveArguments) -> Result<(), Failure> {
    if arguments.text == "-" {
        return answer_lines(io::stdin().lock(), io::stdout().lock());
    }
    print(&answer(&arguments.text)?)
}

/// What stands in place of an answer.
#[derive(Serialize)]
struct BadLine {
    line: u64,
    error: String,
}

/// Answers line by line, so that a program may write a line and wait for what comes back.
fn answer_lines(mut input: impl BufRead, mut output: impl Write) -> Result<(), Failure> {
    let (mut line, mut bad) = (0, 0);
    let mut bytes = Vec::new();
    while input
        .read_until(b'\n', &mut bytes)
        .map_err(Failure::Input)?
        > 0
    {
        line += 1;
        let answer = answer_line(&bytes).unwrap_or_else(|refusal| {
            bad += 1;
            let error = refusal.to_string().replace('\n', " ");
            json(&BadLine { line, error })
        });
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

fn answer_line(bytes: &[u8]) -> Result<String, Refusal> {
    let line = str::from_utf8(bytes).map_err(|_| Refusal::NotText)?;
    let line = line.strip_suffix('\n').unwrap_or(line);
    answer(line.strip_suffix('\r').unwrap_or(line))
}

fn answer(text: &str) -> Result<String, Refusal> {
    Ok(json(&open(text)?.solution()?))
}

/// One line of JSON with its line end.
fn json(value: &impl Serialize) -> String {
    let text = serde_json::to_string(value);
    text.expect("it has only plain values and names for keys") + "\n"
}
