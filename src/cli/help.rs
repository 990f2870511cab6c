//! What stands below the arguments in each `--help`: examples, the keys of a scenario text, the exit status.

use crate::decimal::shortest;
use crate::scenario::{Field, Most, PlanetChoice, Scale, Scenario, WishKind};

/// Below the help of the whole command.
pub(super) fn command() -> String {
    "Examples:
  two-frames                                  build the page and serve it
  two-frames solve \"planet=venus&aim=180\"     the numbers of a pass
  two-frames aim \"\" --for reach=saturn        the pass that reaches a goal
  two-frames figure \"\" --part diagram         a picture of the default pass
  two-frames solve --help                     what a scenario text may hold

Exit status: 0 done; 1 something failed on the way; 2 the command line asks for
something impossible. What is wrong is said on standard error."
        .into()
}

/// Below the help of `solve`.
pub(super) fn solve() -> String {
    format!(
        "Examples:
  two-frames solve \"\"
  two-frames solve \"planet=venus&v-infinity=6&periapsis=1.1\"
  two-frames solve - < texts.txt > answers.jsonl

{LINES}
Units are in the names, angles in degrees. A number prints with all its digits
and reads back to the same bits; null is a value that does not exist.

{}

{}",
        scenario(),
        status("a line of standard input has no answer")
    )
}

/// What `-` means.
const LINES: &str = "\
With `-`, line n of the output answers line n of the input. An empty line is the
default scenario, as \"\" is. A line that has no answer gives
{\"line\": n, \"error\": \"...\"} in its place, and exit status 1 at the end.";

/// Below the help of `aim`.
pub(super) fn aim() -> String {
    format!(
        "Examples:
  two-frames aim \"\" --for aphelion=9.5
  two-frames aim \"planet=venus&v-infinity=6\" --for most=gain --free approach
  two-frames aim - --for leave=0 < texts.txt > answers.jsonl

The answer is the pass with the largest periapsis that reaches the goal; for the
most of something it is the best pass. A goal out of reach is an answer too:
\"met\" is false, \"answer\" is the pass that comes nearest, and the sentences say
why. Passes out of the orbit plane count.
{LINES}

{}

{}

{}",
        goals(),
        scenario(),
        status("a line of standard input has no answer")
    )
}

/// The goals, from the wishes themselves.
fn goals() -> String {
    let mut text =
        "Goals, for the orbit round the Sun after the pass unless it says otherwise:".to_owned();
    for kind in WishKind::ALL {
        let spec = kind.spec();
        let range = format!(
            "{} to {} {}",
            shortest(spec.min),
            shortest(spec.max),
            plain(spec.unit)
        );
        let key = format!("{}={}", spec.key, shortest(spec.usual));
        text.push_str(&goal(&key, &range, kind.label()));
    }
    text.push_str(&goal(
        "reach=saturn",
        "a planet's key",
        "Just reach that planet's orbit",
    ));
    for (word, most) in Most::ALL {
        text.push_str(&goal(&format!("most={word}"), "", most.label()));
    }
    text
}

fn goal(example: &str, range: &str, label: &str) -> String {
    format!("\n  {example:<18}{range:<23}{label}")
}

/// Below the help of `figure`.
pub(super) fn figure() -> String {
    format!(
        "Examples:
  two-frames figure \"\" --part planet-frame --out pass.svg
  two-frames figure \"aim=90\" --part sun-frame --look side --time -12h
  two-frames figure \"aim=180\" --part record --size 1280x480 --out record.svg

A time outside what is drawn of the pass is refused, and the refusal says what
is drawn. The file is replaced if it exists.

{}

{}",
        scenario(),
        status("the file cannot be written")
    )
}

/// Below the help of `table`.
pub(super) fn table() -> String {
    format!(
        "Examples:
  two-frames table \"\" --vary periapsis=1..50 --steps 200 > table.csv
  two-frames table \"planet=saturn\" --vary approach=-180..180 --steps 72
  two-frames table \"\" --vary v-infinity=20..2 --steps 18 --out speeds.csv

The first column is what varies; its value in the scenario text does not count.
Units are in the header; an empty cell is a value that does not exist. The file
is replaced if it exists. Steps have equal differences, or equal ratios for
{}.

{}

{}",
        equal_ratios(),
        scenario(),
        status("the file cannot be written")
    )
}

/// The keys that a table varies in equal ratios.
fn equal_ratios() -> String {
    let keys: Vec<_> = Field::ALL
        .into_iter()
        .map(Field::spec)
        .filter(|spec| spec.scale == Scale::Logarithmic)
        .map(|spec| spec.key)
        .collect();
    keys.join(", ")
}

fn status(failure: &str) -> String {
    format!("Exit status: 0 done; 1 {failure};\n2 the command line asks for something impossible.")
}

/// The keys of a scenario text, from the fields themselves.
fn scenario() -> String {
    let mut text = format!(
        "Scenario text: key=value pairs with & between them, in any order; what is left
out has its [default]. Put it in quotes, because & means something to the shell.
  planet     {}, or custom (with gm, radius and orbit)",
        planets()
    );
    for field in Field::ALL {
        text.push_str(&line(field));
    }
    text
}

/// The planets' keys in two lines, the default one marked.
fn planets() -> String {
    let default = Scenario::default().planet().key();
    let name = |(key, _): &(&str, _)| match *key {
        key if key == default => format!("[{key}]"),
        key => key.to_owned(),
    };
    let line = |part: &[_]| part.iter().map(name).collect::<Vec<_>>().join(", ");
    let lines: Vec<_> = PlanetChoice::KNOWN.chunks(6).map(line).collect();
    lines.join(",\n             ")
}

/// One key: its default, range and unit, and what it is.
fn line(field: Field) -> String {
    let spec = field.spec();
    let (default, range) = match spec.default {
        Some(value) => (
            format!("[{}]", shortest(value)),
            format!("{} to {}", shortest(spec.min), shortest(spec.max)),
        ),
        None => (String::new(), "above 0".to_owned()),
    };
    format!(
        "\n  {:<11}{default:<7}{:<27}{}",
        spec.key,
        format!("{range} {}", plain(spec.unit)),
        spec.label
    )
}

/// A unit in plain letters.
fn plain(unit: &str) -> &str {
    match unit {
        "°" => "degrees",
        unit => unit,
    }
}
