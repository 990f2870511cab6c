//! The numbers and sentences on the page, each number with its path and its unrounded value.

use std::fmt::Write as _;

use wasm_bindgen::JsValue;
use web_sys::Element;

use super::dom::{escaped, find, set_attribute, set_text};
use crate::report::{Fact, Piece, Row, Sentence, Value};
use crate::sandbox::{Panel, Sandbox};
use crate::scenario::{Notice, print_number};

/// The places that show numbers and sentences. Each remembers its markup: what has not changed is not touched.
pub(super) struct Readout {
    slots: Vec<(&'static str, Element, String)>,
    title: Element,
    spoken: Element,
    pictures: [Element; 4],
}

/// The slots of sentences, by their `data-text`.
const SLOTS: [&str; 11] = [
    "planet-sentence",
    "sun-sentence",
    "why",
    "cautions",
    "rows",
    "facts",
    "now",
    "planet-note",
    "sun-note",
    "preset",
    "notices",
];

impl Readout {
    pub(super) fn find(root: &Element) -> Result<Self, JsValue> {
        let slot = |name: &'static str| {
            let element = find::<Element>(root, &format!("[data-text={name}]"))?;
            Ok::<_, JsValue>((name, element, String::new()))
        };
        let picture = |name: &str| find(root, &format!("[data-picture={name}] canvas"));
        Ok(Self {
            slots: SLOTS.into_iter().map(slot).collect::<Result<_, _>>()?,
            title: find(root, "[data-text=title]")?,
            spoken: find(root, "[data-text=spoken]")?,
            pictures: [
                picture("planet")?,
                picture("sun")?,
                picture("diagram")?,
                picture("record")?,
            ],
        })
    }

    /// Shows the panel of a moment.
    pub(super) fn show(&mut self, panel: &Panel) {
        self.put("planet-sentence", sentence(&panel.planet_sentence));
        self.put("sun-sentence", sentence(&panel.sun_sentence));
        self.put("why", sentence(&panel.why));
        self.put("cautions", list(panel.cautions.iter().map(sentence)));
        self.put("rows", panel.rows.iter().map(row).collect());
        self.put("facts", panel.facts.iter().map(fact).collect());
        self.put("now", panel.now.iter().map(fact).collect());
        self.put(
            "planet-note",
            escaped(&format!("{} stands still", panel.planet)),
        );
        self.put("sun-note", sentence(&panel.motion_note));
    }

    /// Shows what the settings are called and what to look at.
    pub(super) fn show_preset(&mut self, sandbox: &Sandbox) {
        let (title, words) = match sandbox.preset() {
            Some(preset) => (
                preset.probe.to_owned(),
                format!(
                    "<p><strong>What to look at.</strong> {}</p><p><strong>Why it happens.</strong> {}</p>",
                    escaped(preset.look),
                    escaped(preset.why)
                ),
            ),
            None => (
                "Your own settings".to_owned(),
                "<p>Choose an example to see what to look at and why it happens, or go on trying for yourself.</p>".into(),
            ),
        };
        set_text(&self.title, &title);
        self.put("preset", words);
    }

    /// Shows what the link had that could not be used.
    pub(super) fn show_notices(&mut self, notices: &[Notice]) {
        let items = list(notices.iter().map(|notice| escaped(&notice.to_string())));
        let markup = if items.is_empty() {
            String::new()
        } else {
            format!(
                "<p>Parts of this link could not be used; the usual values stand in for them.</p><ul>{items}</ul>"
            )
        };
        self.put("notices", markup);
    }

    /// Shows one sentence in place of the pictures' sentences when the settings have no flyby.
    pub(super) fn show_refusal(&mut self, refusal: &str) {
        self.put(
            "why",
            format!("<span class=\"error\">{}</span>", escaped(refusal)),
        );
        for name in [
            "planet-sentence",
            "sun-sentence",
            "cautions",
            "rows",
            "facts",
            "now",
        ] {
            self.put(name, String::new());
        }
    }

    /// Says the result to screen readers and renews the pictures' descriptions; called when things have settled.
    pub(super) fn say(&self, panel: &Panel) {
        set_text(
            &self.spoken,
            &format!(
                "{} {} {}",
                panel.planet_sentence, panel.sun_sentence, panel.why
            ),
        );
        for (picture, description) in self.pictures.iter().zip(&panel.descriptions) {
            set_attribute(picture, "aria-label", description);
        }
    }

    /// A short message to screen readers.
    pub(super) fn say_only(&self, message: &str) {
        set_text(&self.spoken, message);
    }

    fn put(&mut self, name: &str, markup: String) {
        let slot = self
            .slots
            .iter_mut()
            .find(|(known, _, shown)| *known == name && *shown != markup);
        if let Some((_, element, shown)) = slot {
            element.set_inner_html(&markup);
            *shown = markup;
        }
    }
}

fn list(items: impl Iterator<Item = String>) -> String {
    items.fold(String::new(), |list, item| list + "<li>" + &item + "</li>")
}

fn sentence(sentence: &Sentence) -> String {
    let piece = |piece: &Piece| match piece {
        Piece::Words(words) => escaped(words),
        Piece::Number(value) => format!(
            "<span class=\"number\" {}>{}</span>",
            attributes(value),
            escaped(&value.text)
        ),
    };
    sentence.pieces().iter().map(piece).collect()
}

/// The attributes of an element that shows a value.
fn attributes(value: &Value) -> String {
    let mut attributes = format!("data-quantity=\"{}\"", escaped(&value.path));
    if let Some(number) = value.value {
        let _ = write!(attributes, " data-value=\"{}\"", print_number(number));
    }
    attributes
}

fn row(row: &Row) -> String {
    let cell = |cell: &Option<Value>| match cell {
        Some(value) => format!("<td {}>{}</td>", attributes(value), escaped(&value.text)),
        None => "<td></td>".into(),
    };
    format!(
        "<tr><th scope=\"row\">{}<span class=\"meaning\">{}</span></th>{}{}{}<td class=\"unit\">{}</td></tr>",
        escaped(&row.label),
        escaped(row.meaning),
        cell(&row.before),
        cell(&row.after),
        cell(&row.change),
        escaped(row.unit)
    )
}

fn fact(fact: &Fact) -> String {
    let meaning = if fact.meaning.is_empty() {
        String::new()
    } else {
        format!("<span class=\"meaning\">{}</span>", escaped(fact.meaning))
    };
    format!(
        "<div><dt>{}{meaning}</dt><dd><span class=\"number\" {}>{}</span> {}</dd></div>",
        escaped(&fact.label),
        attributes(&fact.value),
        escaped(&fact.value.text),
        escaped(fact.unit)
    )
}
