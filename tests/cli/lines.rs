//! `solve -`: one text a line, one object a line.

use std::io::{BufRead as _, BufReader, Write as _};
use std::process::Stdio;
use std::sync::mpsc;
use std::thread;
use std::time::Duration;

use serde_json::{Value, json};
use two_frames::scenario::{Notice, Scenario};

use crate::{errors, feed, printed, run, sentence, two_frames};

fn values(output: &[u8]) -> Vec<Value> {
    let text = std::str::from_utf8(output).expect("the output is UTF-8");
    let read = |line| serde_json::from_str(line).expect("each line is JSON");
    text.lines().map(read).collect()
}

#[test]
fn each_line_is_answered_as_if_it_stood_alone() {
    let texts = ["planet=mars", "", "v=1&planet=venus&periapsis=0.5"];
    let alone: String = texts.map(|text| printed(run(&["solve", text]))).concat();
    for end in ["\n", "\r\n"] {
        let input = texts.map(|text| format!("{text}{end}")).concat();
        assert_eq!(printed(feed(&["solve", "-"], input.as_bytes())), alone);
    }
    let without_last_end = texts.join("\n");
    assert_eq!(
        printed(feed(&["solve", "-"], without_last_end.as_bytes())),
        alone
    );
}

#[test]
fn no_lines_have_no_answers() {
    assert_eq!(printed(feed(&["solve", "-"], b"")), "");
}

#[test]
fn a_bad_line_is_answered_in_its_place() {
    let bad = "periapsis=0&flavour=3";
    let input = [
        b"planet=mars\n",
        bad.as_bytes(),
        b"\n\xff\xfe\nplanet=venus",
    ]
    .concat();
    let output = feed(&["solve", "-"], &input);
    assert_eq!(output.status.code(), Some(1));
    assert!(
        sentence(&output).contains("2 of 4 lines"),
        "{}",
        errors(&output)
    );

    let values = values(&output.stdout);
    let notices = Scenario::read_strictly(bad).expect_err("it is bad");
    let words: Vec<_> = notices.iter().map(Notice::to_string).collect();
    assert_eq!(values.len(), 4);
    assert_eq!(values[0]["planet"]["name"], "Mars");
    assert_eq!(values[1], json!({ "line": 2, "error": words.join(" ") }));
    assert_eq!(values[2]["line"], 3);
    assert_eq!(values[3]["planet"]["name"], "Venus");
}

#[test]
fn an_impossible_planet_is_a_bad_line() {
    let text = "planet=custom&gm=1e300&radius=1e200&orbit=1e200";
    let output = feed(&["solve", "-"], text.as_bytes());
    assert_eq!(output.status.code(), Some(1));
    let error = values(&output.stdout)[0]["error"].to_string();
    assert!(error.contains("only sizes from 1e-60 to 1e60"), "{error}");
}

/// A program may write a line, wait for its answer and then decide what to ask next.
#[test]
fn a_line_is_answered_before_the_next_one_comes() {
    let mut command = two_frames(&["solve", "-"]);
    command.stdin(Stdio::piped()).stdout(Stdio::piped());
    let mut child = command.spawn().expect("the command starts");
    let mut stdin = child.stdin.take().expect("it is piped");
    let stdout = BufReader::new(child.stdout.take().expect("it is piped"));
    let (send, answers) = mpsc::channel();
    thread::spawn(move || stdout.lines().try_for_each(|line| send.send(line)));
    for planet in ["mars", "venus"] {
        writeln!(stdin, "planet={planet}").expect("the command reads");
        let answer = answers.recv_timeout(Duration::from_secs(20));
        let answer = answer.expect("an answer in time").expect("a line of text");
        assert!(answer.contains(&format!("planet={planet}")), "{answer}");
    }
    drop(stdin);
    assert!(child.wait().expect("the command ends").success());
}

#[test]
fn a_reader_who_goes_away_ends_it_quietly() {
    let mut command = two_frames(&["solve", "-"]);
    command
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped());
    let mut child = command.spawn().expect("the command starts");
    let mut stdin = child.stdin.take().expect("it is piped");
    let mut stdout = BufReader::new(child.stdout.take().expect("it is piped"));
    writeln!(stdin, "planet=mars").expect("the command reads");
    let mut first = String::new();
    stdout.read_line(&mut first).expect("an answer");
    drop(stdout);
    // It stops reading too, so this fails at some time.
    while writeln!(stdin, "planet=mars").is_ok() {}
    let output = child.wait_with_output().expect("the command ends");
    assert!(output.status.success());
    assert_eq!(errors(&output), "");
}
