//! The words and ranges that stand in `www/index.html`, so that they are no part of the core's download, are those of the
//! library.

use two_frames::physics::Planet;
use two_frames::report::{FACT_WORDS, LineWords, MeasureWords, NOW_WORDS, ROW_WORDS, short};
use two_frames::scenario::{Field, Most, PRESETS, PlanetChoice, Scale, WishKind, print_number};

const PAGE: &str = include_str!("../www/index.html");

/// Text as it stands in markup.
fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('"', "&quot;")
}

/// Fails with what the page should have had.
fn has(wanted: &str) {
    assert!(PAGE.contains(wanted), "www/index.html lacks:\n{wanted}");
}

/// Label, slider, number, − and +, meaning and message of a field.
#[test]
fn the_page_has_every_field_as_the_library_describes_it() {
    for field in Field::ALL {
        has(&markup(field));
    }
}

fn markup(field: Field) -> String {
    let spec = field.spec();
    let (key, label, unit) = (spec.key, escaped(spec.label), spec.unit);
    let (meaning, range) = (escaped(field.meaning()), range(field));
    let (low, high, step) = spec.slider_range();
    let [low, high, step] = [low, high, step].map(print_number);
    let limits = match spec.default {
        Some(_) => format!(
            " min=\"{}\" max=\"{}\"",
            print_number(spec.min),
            print_number(spec.max)
        ),
        None => String::new(),
    };
    format!(
        r#"
      <div class="field" data-field="{key}">
        <label for="{key}-number">{label}</label>
        <span class="value"><input id="{key}-number" data-part="number" type="number" step="any"{limits} aria-describedby="{key}-meaning {key}-error"> <span class="unit">{unit}</span></span>
        <span class="slide">
          <button type="button" data-part="less" aria-label="Less: {label}">−</button>
          <input data-part="slider" type="range" min="{low}" max="{high}" step="{step}" aria-label="{label}" aria-describedby="{key}-meaning">
          <button type="button" data-part="more" aria-label="More: {label}">+</button>
        </span>
        <p class="meaning" id="{key}-meaning">{meaning} <span class="range">{range}</span></p>
        <p class="error" id="{key}-error" data-part="error" role="alert" hidden></p>
      </div>
"#
    )
}

/// The field's range in words, and its scale where that is not the usual one.
fn range(field: Field) -> String {
    let spec = field.spec();
    let scale = match spec.scale {
        Scale::Logarithmic => "; slider in equal ratios",
        Scale::Linear => "",
    };
    let unit = spec.unit;
    let space = if unit == "°" { "" } else { " " };
    match spec.default {
        Some(_) => format!(
            "From {} to {}{space}{unit}{scale}.",
            short(spec.min, 1),
            short(spec.max, 1)
        ),
        None => format!("Any number above 0, in {unit}{scale}."),
    }
}

fn option(value: &str, label: &str) -> String {
    format!("<option value=\"{value}\">{}</option>\n", escaped(label))
}

/// Lines without what they are indented by.
fn flush_left(text: &str) -> String {
    let lines = text.trim().lines();
    lines.flat_map(|line| [line.trim_start(), "\n"]).collect()
}

/// A whole list: its `data-action`, what it has before the entries from the library, and these.
fn has_list(action: &str, first: &str, options: impl Iterator<Item = String>) {
    let list = PAGE.split(&format!("data-action=\"{action}\"")).nth(1);
    let list = list.and_then(|rest| rest.split("</select>").next()?.split_once('>'));
    let (_, list) = list.unwrap_or_else(|| panic!("no list {action}"));
    let wanted: String = options.collect();
    assert_eq!(flush_left(list), flush_left(first) + &wanted);
}

#[test]
fn the_page_lists_every_planet() {
    let known = PlanetChoice::KNOWN.iter();
    let known = known.map(|(key, body)| option(key, Planet::of(*body).name));
    let own = option(PlanetChoice::CUSTOM, "A planet of your own");
    has_list("planet", "", known.chain([own]));
}

#[test]
fn the_page_lists_every_outcome() {
    let outcomes = MeasureWords::ALL.iter();
    has_list(
        "measure",
        "",
        outcomes.map(|words| option(words.key, words.label)),
    );
}

#[test]
fn the_page_lists_every_goal() {
    let values = WishKind::ALL.iter();
    let values = values.map(|kind| option(kind.spec().key, kind.label()));
    let planets = PlanetChoice::KNOWN.iter().map(|(key, body)| {
        let label = format!("Just reach the orbit of {}", Planet::of(*body).name);
        option(&format!("reach={key}"), &label)
    });
    let most = Most::ALL.iter();
    let most = most.map(|(key, most)| option(&format!("most={key}"), most.label()));
    has_list(
        "wish",
        &option("", "No goal"),
        values.chain(planets).chain(most),
    );
}

/// With each example: the probe, what to look at, and why it happens.
#[test]
fn the_page_lists_every_example_with_its_words() {
    let own = PAGE.split("data-action=\"preset\">").nth(1);
    let own = own.and_then(|rest| rest.split_once("</option>"));
    let own = own.expect("an entry for one's own settings").0.trim();
    assert!(own.starts_with("<option value=\"\" disabled"), "{own}");
    assert!(
        own.contains("data-look=") && own.contains("data-why="),
        "{own}"
    );
    let examples = PRESETS.iter().map(|preset| {
        let [probe, look, why] = [preset.probe, preset.look, preset.why].map(escaped);
        let (id, title) = (preset.id, escaped(preset.title));
        format!(
            "<option value=\"{id}\" data-probe=\"{probe}\"\ndata-look=\"{look}\"\ndata-why=\"{why}\">{title}</option>\n"
        )
    });
    has_list("preset", &format!("{own}</option>\n"), examples);
}

/// A line's label, with a place for the planet's name; it unfolds the meaning, if there is one.
fn term(words: &LineWords) -> String {
    let label = escaped(words.label).replace('@', "<span data-text=\"name\"></span>");
    match words.meaning {
        "" => label,
        meaning => {
            let meaning = escaped(meaning);
            format!("<details class=\"term\"><summary>{label}</summary>{meaning}</details>")
        }
    }
}

/// A whole table: its `data-text`, and its lines.
fn has_table(element: &str, text: &str, lines: impl Iterator<Item = String>) {
    let table = PAGE.split(&format!("data-text=\"{text}\">")).nth(1);
    let table = table.and_then(|rest| rest.split(&format!("</{element}>")).next());
    let table = table.unwrap_or_else(|| panic!("no table {text}"));
    assert_eq!(flush_left(table), lines.collect::<String>());
}

#[test]
fn the_page_has_every_line_of_the_tables() {
    let cell = "<td data-cell></td>";
    let row = |words: &LineWords| {
        let (term, unit) = (term(words), words.unit);
        let unit = format!("<td class=\"unit\">{unit}</td>");
        format!("<tr><th scope=\"row\">{term}</th>{cell}{cell}{cell}{unit}</tr>\n")
    };
    has_table("tbody", "rows", ROW_WORDS.iter().map(row));
    let fact = |words: &LineWords| {
        let (term, unit) = (term(words), words.unit);
        let number = "<span class=\"number\" data-cell></span>";
        format!("<div><dt>{term}</dt><dd>{number} {unit}</dd></div>\n")
    };
    has_table("dl", "facts", FACT_WORDS.iter().map(fact));
    has_table("dl", "now", NOW_WORDS.iter().map(fact));
}

/// One line of words for each line of numbers.
#[test]
fn every_line_has_words() {
    let panel = two_frames::sandbox::Sandbox::default().panel();
    let panel = panel.expect("a pass");
    assert_eq!(panel.rows.len(), ROW_WORDS.len());
    assert_eq!(panel.facts.len(), FACT_WORDS.len());
    assert_eq!(panel.now.len(), NOW_WORDS.len());
}
