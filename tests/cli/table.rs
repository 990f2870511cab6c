//! `table`: one row a step, and in each row the numbers that `solve` prints.

use std::fs;

use serde_json::Value;
use two_frames::scenario::Field;

use crate::support::TemporaryFolder;
use crate::{errors, feed, printed, refusals, run};

fn table(text: &str, vary: &str, steps: &str) -> String {
    printed(run(&["table", text, "--vary", vary, "--steps", steps]))
}

/// The records of a table, each as its cells. Source: RFC 4180, section 2 (from memory): CRLF ends every record, a
/// cell in double quotes may hold commas.
fn records(table: &str) -> Vec<Vec<String>> {
    let whole = table
        .strip_suffix("\r\n")
        .expect("the last record has an end");
    let records = whole.split("\r\n");
    records.map(cells).collect()
}

fn cells(record: &str) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut quoted = false;
    for character in record.chars() {
        match character {
            '"' => quoted = !quoted,
            ',' if !quoted => cells.push(String::new()),
            other => cells.last_mut().expect("there is one").push(other),
        }
    }
    assert!(!quoted && !record.contains('\n'), "{record}");
    cells
}

/// The columns after the varied number, with the paths of the same numbers in `solve`'s object.
const COLUMNS: [(&str, &str); 13] = [
    ("outcome", "/outcome"),
    ("turn [deg]", "/planet_frame/turn_deg"),
    ("impact parameter [km]", "/planet_frame/impact_parameter_km"),
    ("periapsis [km]", "/planet_frame/periapsis_km"),
    (
        "speed at periapsis, planet frame [km/s]",
        "/planet_frame/periapsis_speed_km_s",
    ),
    ("speed in, Sun frame [km/s]", "/sun_frame/speed_in_km_s"),
    ("speed out, Sun frame [km/s]", "/sun_frame/speed_out_km_s"),
    (
        "speed change, Sun frame [km/s]",
        "/sun_frame/speed_change_km_s",
    ),
    (
        "energy change, Sun frame [km^2/s^2]",
        "/sun_frame/energy_change_km2_s2",
    ),
    ("perihelion after [AU]", "/orbit_after/perihelion_au"),
    ("aphelion after [AU]", "/orbit_after/aphelion_au"),
    ("inclination after [deg]", "/orbit_after/inclination_deg"),
    (
        "speed left far from the Sun [km/s]",
        "/orbit_after/speed_left_at_infinity_km_s",
    ),
];

#[test]
fn the_header_names_each_column_with_its_unit() {
    let header = &records(&table("", "periapsis=1..50", "1"))[0];
    assert_eq!(header[0], "periapsis [planet radii]");
    let names: Vec<_> = COLUMNS.iter().map(|(name, _)| *name).collect();
    assert_eq!(header[1..], names);
    let angle = &records(&table("", "approach=-180..180", "1"))[0];
    assert_eq!(angle[0], "approach [deg]");
}

#[test]
fn the_rows_go_from_the_first_to_the_last_value() {
    let records = records(&table("", "periapsis=1..50", "200"));
    assert_eq!(records.len(), 1 + 201);
    assert_eq!(records[1][0], "1");
    assert_eq!(records[201][0], "50");
    let values = records[1..].iter().map(|row| row[0].parse::<f64>());
    let values: Vec<_> = values.map(|value| value.expect("a number")).collect();
    assert!(values.is_sorted());
    // Periapsis is varied in equal ratios: 200 of them make 50.
    let ratio = libm::pow(50.0, 1.0 / 200.0);
    for pair in values.windows(2) {
        assert!((pair[1] / pair[0] / ratio - 1.0).abs() < 1e-12, "{pair:?}");
    }
}

#[test]
fn each_row_has_the_numbers_of_solve() {
    // From a strike through a pass to one that hardly turns, and up to the escape from the Sun.
    let sweeps = [
        ("", "periapsis", "0.3..3000"),
        ("planet=venus&v-infinity=6", "approach", "-180..180"),
        ("planet=saturn", "v-infinity", "20..2"),
        (
            "planet=custom&gm=5e5&radius=7000&orbit=0.5",
            "gm",
            "1e3..1e8",
        ),
    ];
    for (text, key, range) in sweeps {
        let records = records(&table(text, &format!("{key}={range}"), "12"));
        let line = |row: &Vec<String>| match key {
            "gm" => format!("{}\n", text.replace("gm=5e5", &format!("gm={}", row[0]))),
            _ => format!("{text}&{key}={}\n", row[0]),
        };
        let lines: String = records[1..].iter().map(line).collect();
        let answers = printed(feed(&["solve", "-"], lines.as_bytes()));
        for (row, answer) in records[1..].iter().zip(answers.lines()) {
            check_row(row, &serde_json::from_str(answer).expect("JSON"));
        }
    }
}

fn check_row(row: &[String], answer: &Value) {
    for (cell, (name, path)) in row[1..].iter().zip(COLUMNS) {
        match answer.pointer(path).expect("a key of the contract") {
            Value::Null => assert_eq!(cell, "", "{name}"),
            Value::String(word) => assert_eq!(cell, word, "{name}"),
            number => {
                let read = cell.parse::<f64>().map(f64::to_bits);
                assert_eq!(
                    read.ok(),
                    number.as_f64().map(f64::to_bits),
                    "{name}: {cell}"
                );
            }
        }
    }
}

#[test]
fn a_strike_has_no_numbers_after_it() {
    let records = records(&table("", "periapsis=0.5..1.5", "1"));
    assert_eq!(records[1][1], "strikes");
    assert_eq!(records[1][2], "");
    assert_eq!(records[2][1], "passes");
    assert_ne!(records[2][2], "");
}

#[test]
fn a_value_out_of_range_is_refused_in_the_library_s_words() {
    for (key, from, to) in [
        ("periapsis", "0", "50"),
        ("periapsis", "1", "1e5"),
        ("aim", "0", "NaN"),
    ] {
        let output = run(&["table", "", "--vary", &format!("{key}={from}..{to}")]);
        assert_eq!(output.status.code(), Some(2));
        assert!(output.stdout.is_empty());
        let field = Field::from_key(key).expect("a key");
        let notice = field
            .read(from)
            .and(field.read(to))
            .expect_err("one is bad");
        let errors = errors(&output);
        assert!(errors.contains(&notice.to_string()), "{errors}");
    }
}

#[test]
fn what_cannot_vary_is_refused() {
    let refused = refusals(&run(&["table", "", "--vary", "gm=1..5"]));
    assert_eq!(
        refused,
        ["gm=1: only planet=custom has a gm of its own; try planet=custom."]
    );
    for (vary, words) in [
        ("planet=1..2", "try one of gm, radius"),
        ("periapsis", "try periapsis=1..50"),
    ] {
        let output = run(&["table", "", "--vary", vary]);
        assert_eq!(output.status.code(), Some(2));
        assert!(errors(&output).contains(words), "{}", errors(&output));
    }
}

#[test]
fn a_file_holds_what_would_be_printed() {
    let folder = TemporaryFolder::new("table");
    let file = folder.path().join("table.csv");
    let name = file.to_str().expect("a plain name");
    let said = printed(run(&[
        "table",
        "",
        "--vary",
        "aim=0..180",
        "--steps",
        "4",
        "--out",
        name,
    ]));
    assert_eq!(said, format!("Wrote {name}\n"));
    let text = fs::read_to_string(&file).expect("it is there");
    assert_eq!(text, table("", "aim=0..180", "4"));
}
