//! What is written in more than one place says the same everywhere.

use std::fs;
use std::path::Path;

fn read(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(name);
    fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// The part of a text between two marks.
fn between<'a>(text: &'a str, start: &str, end: &str) -> &'a str {
    let (_, rest) = text
        .split_once(start)
        .unwrap_or_else(|| panic!("no {start}"));
    rest.split_once(end)
        .unwrap_or_else(|| panic!("no {end} after {start}"))
        .0
}

/// Words with one space between them.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The items of a Markdown list.
fn markdown_items(text: &str) -> Vec<String> {
    text.split("\n- ").skip(1).map(flat).collect()
}

/// What the model leaves out stands in the crate's front page, in the README and on the page.
#[test]
fn what_the_model_leaves_out_is_told_in_the_same_words() {
    let title = "What this model leaves out";
    let crate_front = read("src/lib.rs").replace("//! ", "").replace("//!", "");
    let in_crate = markdown_items(between(&crate_front, &format!("# {title}\n"), "\n# "));
    let in_readme = markdown_items(between(
        &read("README.md"),
        &format!("## {title}\n"),
        "\n\nHow it is built",
    ));
    let page = read("www/index.html");
    let list = between(&page, &format!("<h2>{title}</h2>"), "</ul>");
    let on_page: Vec<_> = list
        .split("<li>")
        .skip(1)
        .map(|item| flat(between(item, "", "</li>")))
        .collect();
    assert_eq!(in_crate.len(), 4);
    assert_eq!(in_readme, in_crate);
    assert_eq!(on_page, in_crate);
}

/// The caution stands wherever somebody may begin.
#[test]
fn the_caution_is_told_everywhere() {
    let caution = "For teaching, not for flying anything.";
    for name in ["README.md", "src/lib.rs", "www/index.html"] {
        assert!(flat(&read(name)).contains(caution), "{name}");
    }
}

/// The map of the house in DEVELOPERS.md names every file of the physics.
#[test]
fn the_map_names_every_room_of_the_physics() {
    let guide = read("DEVELOPERS.md");
    let map = between(&guide, "```", "```");
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/physics");
    for entry in fs::read_dir(folder).expect("the physics") {
        let name = entry
            .expect("a file")
            .file_name()
            .into_string()
            .expect("a plain name");
        let room = name.trim_end_matches(".rs");
        assert!(
            room == "mod" || map.contains(room),
            "{room} is not on the map"
        );
    }
}

/// What others ask us to pass on is in the source and on the built page, and the page leads there.
#[test]
fn licences_of_others_are_passed_on() {
    let others = read("www/licenses.txt");
    // Source: the licence file of the Python package cmcrameri 1.10 (R).
    for words in [
        "Copyright (c) 2020 Fabio Crameri",
        "The above copyright notice and this permission notice shall be included in all",
        "doi:10.5281/zenodo.1243862",
    ] {
        assert!(others.contains(words), "{words}");
    }
    assert!(read("LICENSE").ends_with(&others));
    let page = read("www/index.html");
    let signs = between(&page, "<h2>How to read the pictures</h2>", "</section>");
    assert!(signs.contains("href=\"licenses.txt\""));
}
