//! The numbers and sentences on the page, each number with its path and its unrounded value.

use web_sys::Element;

use super::dom::{escaped, find, set_attribute, set_text};
use super::table::{Table, all, attributes};
use crate::report::{Piece, Sentence};
use crate::sandbox::Panel;
use crate::scenario::Notice;

/// The places that show numbers and sentences.
pub(super) struct Readout {
    slots: [Slot; SLOTS.len()],
    /// Where the planet's name stands.
    names: Vec<Element>,
    rows: Table,
    facts: Table,
    now: Table,
    title: Element,
    look: Element,
    reason: Element,
    /// Who passes; the title adds which planet.
    probe: String,
    spoken: Element,
    pictures: [Element; 4],
}

/// A place for markup. It remembers what it shows: what has not changed is not touched.
struct Slot {
    name: &'static str,
    element: Element,
    shown: String,
}

/// The slots, by their `data-text`.
const SLOTS: [&str; 7] = [
    "planet-sentence",
    "sun-sentence",
    "why",
    "cautions",
    "planet-note",
    "sun-note",
    "notices",
];

impl Readout {
    pub(super) fn find(root: &Element) -> Self {
        let named = |name: &str| find::<Element>(root, &["[data-text=", name, "]"].concat());
        let slot = |name| Slot {
            name,
            element: named(name),
            shown: String::new(),
        };
        let picture = |name: &str| find(root, &["[data-picture=", name, "] canvas"].concat());
        Self {
            slots: SLOTS.map(slot),
            names: all(root, "[data-text=name]"),
            rows: Table::new(named("rows")),
            facts: Table::new(named("facts")),
            now: Table::new(named("now")),
            title: named("title"),
            look: named("look"),
            reason: named("reason"),
            probe: String::new(),
            spoken: named("spoken"),
            pictures: ["planet", "sun", "diagram", "record"].map(picture),
        }
    }

    /// Shows the panel of a moment.
    pub(super) fn show(&mut self, panel: &Panel) {
        self.put("planet-sentence", sentence(&panel.planet_sentence));
        self.put("sun-sentence", sentence(&panel.sun_sentence));
        self.put("why", sentence(&panel.why));
        let cautions: Vec<_> = panel.cautions.iter().map(sentence).collect();
        self.put("cautions", list(&cautions));
        set_text(
            &self.title,
            &[&self.probe, " passes ", panel.planet].concat(),
        );
        self.put("planet-note", [panel.planet, " stands still"].concat());
        self.put("sun-note", sentence(&panel.motion_note));
        for name in &self.names {
            set_text(name, panel.planet);
        }
        self.rows.show(panel.rows.iter().flat_map(|row| &row.cells));
        self.facts.show(panel.facts.iter().map(|fact| &fact.value));
        self.now.show(panel.now.iter().map(|fact| &fact.value));
    }

    /// Shows what the settings are called and what to look at: what the chosen entry of the list of examples carries.
    pub(super) fn show_preset(&mut self, chosen: &Element) {
        let words = |name| chosen.get_attribute(name).unwrap_or_default();
        self.probe = words("data-probe");
        set_text(&self.look, &words("data-look"));
        set_text(&self.reason, &words("data-why"));
    }

    /// Shows what the link had that could not be used.
    pub(super) fn show_notices(&mut self, notices: &[Notice]) {
        let items: Vec<_> = notices
            .iter()
            .map(|notice| escaped(&notice.text()))
            .collect();
        self.put("notices", list(&items));
    }

    /// Shows one sentence in place of all results when the settings have no flyby.
    pub(super) fn show_refusal(&mut self, refusal: &str) {
        self.put("why", escaped(refusal));
        for name in &["planet-sentence", "sun-sentence"] {
            self.put(name, "No flyby with these settings.".into());
        }
        for name in &["cautions", "planet-note", "sun-note"] {
            self.put(name, String::new());
        }
        for table in &[&self.rows, &self.facts, &self.now] {
            table.clear();
        }
    }

    /// Says the result to screen readers and renews the pictures' descriptions; called when things have settled.
    pub(super) fn say(&self, panel: &Panel) {
        let sentences = [&panel.planet_sentence, &panel.sun_sentence, &panel.why];
        self.say_only(&sentences.map(Sentence::text).join(" "));
        for (picture, description) in self.pictures.iter().zip(&panel.descriptions) {
            set_attribute(picture, "aria-label", description);
        }
    }

    /// Says a refusal to screen readers; the pictures show nothing that holds.
    pub(super) fn say_refusal(&self, refusal: &str) {
        self.say_only(refusal);
        for picture in &self.pictures {
            set_attribute(picture, "aria-label", refusal);
        }
    }

    /// A short message to screen readers.
    pub(super) fn say_only(&self, message: &str) {
        set_text(&self.spoken, message);
    }

    fn put(&mut self, name: &str, markup: String) {
        if let Some(slot) = self
            .slots
            .iter_mut()
            .find(|slot| slot.name == name && slot.shown != markup)
        {
            slot.element.set_inner_html(&markup);
            slot.shown = markup;
        }
    }
}

/// Items of a list, from the markup of each.
pub(super) fn list(items: &[String]) -> String {
    let mut markup = String::new();
    for item in items {
        markup += &["<li>", item, "</li>"].concat();
    }
    markup
}

/// A sentence as markup, its numbers with their paths.
pub(super) fn sentence(sentence: &Sentence) -> String {
    sentence_of(sentence, "")
}

/// A sentence about another pass than the one shown: its numbers' paths start with the word for that pass, `owner`.
pub(super) fn sentence_of(sentence: &Sentence, owner: &str) -> String {
    let mut markup = String::new();
    for piece in sentence.pieces() {
        match piece {
            Piece::Words(words) => markup += &escaped(words),
            Piece::Number(value) => {
                let (attributes, text) = (attributes(value, owner), escaped(&value.text));
                markup += &[
                    "<span class=\"number\" ",
                    &attributes,
                    ">",
                    &text,
                    "</span>",
                ]
                .concat();
            }
        }
    }
    markup
}
