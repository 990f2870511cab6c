//! The controls: what they show. Their markup is in `index.html`; a test compares its words and ranges with the fields'.

use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlInputElement, HtmlSelectElement};

use super::dom::{find, set_attribute, set_hidden, set_text};
use crate::sandbox::{Panel, Sandbox, SideChoice};
use crate::scenario::{Field, PlanetChoice, Preset, print_number};

/// The controls of all fields, the planet and the side.
pub(super) struct Controls {
    fields: [FieldControl; Field::ALL.len()],
    planet: HtmlSelectElement,
    presets: HtmlSelectElement,
    custom: Element,
    published: Element,
    sides: [Side; 2],
}

struct FieldControl {
    field: Field,
    slider: HtmlInputElement,
    number: HtmlInputElement,
    error: Element,
}

struct Side {
    button: HtmlInputElement,
    label: Element,
}

impl Controls {
    pub(super) fn find(root: &Element) -> Self {
        Self {
            fields: Field::ALL.map(|field| FieldControl::find(root, field)),
            planet: find(root, "[data-action=planet]"),
            presets: find(root, "[data-action=preset]"),
            custom: find(root, "[data-slot=custom]"),
            published: find(root, "#planet-meaning"),
            sides: ["0", "1"].map(|index| Side::find(root, index)),
        }
    }

    /// Shows the sandbox's settings. `typing` is the element that has the focus: a number field that is being typed in
    /// keeps its text.
    pub(super) fn show(&self, sandbox: &Sandbox, typing: Option<&Element>) {
        let scenario = sandbox.scenario();
        self.planet.set_value(scenario.planet().key());
        let preset = Preset::index_of(scenario).and_then(Preset::at);
        self.presets.set_value(preset.map_or("", |(id, _)| id));
        let custom = matches!(scenario.planet(), PlanetChoice::Custom(_));
        set_hidden(&self.custom, !custom);
        set_hidden(&self.published, custom);
        for control in &self.fields {
            if let Some(value) = scenario.get(control.field) {
                control.show(value, typing);
            }
        }
    }

    /// The entry of the list of examples that is shown.
    pub(super) fn chosen_preset(&self) -> Element {
        find(&self.presets, ":checked")
    }

    /// Shows which side the probe passes on, and what each side means now.
    pub(super) fn show_sides(&self, panel: &Panel) {
        for (side, choice) in self.sides.iter().zip(&panel.sides) {
            side.show(choice);
        }
    }

    /// Shows or clears the message at a field.
    pub(super) fn show_error(&self, field: Field, message: Option<&str>) {
        if let Some(control) = self.fields.iter().find(|control| control.field == field) {
            control.show_error(message);
        }
    }
}

impl FieldControl {
    fn find(root: &Element, field: Field) -> Self {
        let part =
            |name: &str| ["[data-field=", field.spec().key, "] [data-part=", name, "]"].concat();
        Self {
            field,
            slider: find(root, &part("slider")),
            number: find(root, &part("number")),
            error: find(root, &part("error")),
        }
    }

    fn show(&self, value: f64, typing: Option<&Element>) {
        let spec = self.field.spec();
        let text = print_number(value);
        let own = |element: &HtmlInputElement| {
            typing.is_some_and(|typing| typing == element.unchecked_ref::<Element>())
        };
        if !own(&self.number) && self.number.value() != text {
            self.number.set_value(&text);
            self.show_error(None);
        }
        if !own(&self.slider) {
            self.slider
                .set_value(&print_number(spec.slider_position(value)));
        }
        set_attribute(
            &self.slider,
            "aria-valuetext",
            &[&text, " ", spec.unit].concat(),
        );
    }

    fn show_error(&self, message: Option<&str>) {
        set_text(&self.error, message.unwrap_or_default());
        set_hidden(&self.error, message.is_none());
        let invalid = if message.is_some() { "true" } else { "false" };
        set_attribute(&self.number, "aria-invalid", invalid);
    }
}

impl Side {
    fn find(root: &Element, index: &str) -> Self {
        let choice = ["[data-side=\"", index, "\"]"].concat();
        Self {
            button: find(root, &[&choice, " input"].concat()),
            label: find(root, &[&choice, " span"].concat()),
        }
    }

    fn show(&self, choice: &SideChoice) {
        self.button.set_checked(choice.chosen);
        set_text(&self.label, &choice.label);
    }
}
