//! The `two-frames` command, started as a person starts it.

mod aim;
mod figure;
mod figure_aim;
mod help;
mod lines;
mod looks;
mod site;
mod solve;
#[path = "../support/mod.rs"]
mod support;
mod table;

use std::io::Write as _;
use std::net::TcpListener;
use std::process::{Command, Output, Stdio};
use std::thread;

fn two_frames(arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_two-frames"));
    command.args(arguments);
    command
}

fn run(arguments: &[&str]) -> Output {
    two_frames(arguments).output().expect("the command starts")
}

/// Runs the command with bytes on standard input.
fn feed(arguments: &[&str], input: &[u8]) -> Output {
    let mut command = two_frames(arguments);
    command
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped());
    let mut child = command.spawn().expect("the command starts");
    let mut stdin = child.stdin.take().expect("it is piped");
    thread::scope(|scope| {
        // Written beside the reading: a long input would else wait for a long output.
        scope.spawn(move || stdin.write_all(input));
        child.wait_with_output().expect("the command ends")
    })
}

/// What it printed, where it succeeded.
fn printed(output: Output) -> String {
    assert!(output.status.success(), "{}", errors(&output));
    assert!(output.stderr.is_empty(), "{}", errors(&output));
    String::from_utf8(output.stdout).expect("the output is UTF-8")
}

fn errors(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

/// The lines on standard error, without the command's name before each, after a refusal that printed nothing.
fn refusals(output: &Output) -> Vec<String> {
    let errors = errors(output);
    assert_eq!(output.status.code(), Some(2), "{errors}");
    assert!(output.stdout.is_empty());
    let line = |line: &str| line.strip_prefix("two-frames: ").map(str::to_owned);
    let lines: Option<_> = errors.lines().map(line).collect();
    lines.unwrap_or_else(|| panic!("a line without the command's name: {errors}"))
}

/// The last line on standard error, which must be the command's own one sentence.
fn sentence(output: &Output) -> String {
    let errors = errors(output);
    let last = errors.lines().last().unwrap_or_default().to_owned();
    assert!(
        last.starts_with("two-frames: ") && last.ends_with('.'),
        "{errors}"
    );
    last
}

#[test]
fn a_misspelt_word_exits_with_2() {
    let output = run(&["biuld"]);
    assert_eq!(output.status.code(), Some(2));
    assert!(errors(&output).contains("biuld"), "{}", errors(&output));
}

#[test]
fn a_taken_port_is_said_at_once_and_another_is_suggested() {
    let taken = TcpListener::bind("127.0.0.1:0").expect("a free port");
    let port = taken
        .local_addr()
        .expect("it has an address")
        .port()
        .to_string();
    for arguments in [["--port", &port].as_slice(), &["serve", "--port", &port]] {
        let output = run(arguments);
        assert_eq!(output.status.code(), Some(1));
        assert!(errors(&output).lines().count() == 1, "{}", errors(&output));
        let text = sentence(&output);
        assert!(
            text.contains(&format!("port {port} is taken")) && text.contains("--port"),
            "{text}"
        );
    }
}

#[test]
fn numbers_of_the_command_line_are_refused_with_their_rule() {
    let cases: [(&[&str], &str); 2] = [
        (&["--port", "70000"], "from 0 to 65535; try 8000"),
        (
            &["table", "", "--vary", "aim=0..1", "--steps", "0"],
            "from 1 to 100000; try 200",
        ),
    ];
    for (arguments, rule) in cases {
        let output = run(arguments);
        assert_eq!(output.status.code(), Some(2));
        assert!(errors(&output).contains(rule), "{}", errors(&output));
    }
}

/// As under `head`, which reads what it wants and goes.
#[test]
fn a_reader_who_goes_away_is_no_error() {
    let cases: [&[&str]; 5] = [
        &["solve", ""],
        &["aim", "", "--for", "leave=5"],
        &["figure", "", "--part", "record"],
        &["table", "", "--vary", "periapsis=1..50", "--steps", "2000"],
        &["--help"],
    ];
    for arguments in cases {
        let mut command = two_frames(arguments);
        command.stdout(Stdio::piped()).stderr(Stdio::piped());
        let mut child = command.spawn().expect("the command starts");
        drop(child.stdout.take());
        let output = child.wait_with_output().expect("the command ends");
        assert_eq!(errors(&output), "", "{arguments:?}");
        assert!(output.status.success(), "{arguments:?}");
    }
}
