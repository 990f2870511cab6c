//! The controls: built from the fields' descriptions, so that words, units and ranges stand in one place.

use std::fmt::Write as _;

use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlInputElement, HtmlSelectElement};

use super::dom::{escaped, find, set_attribute, set_hidden, set_text};
use crate::report::short;
use crate::sandbox::{Panel, Sandbox, SideChoice};
use crate::scenario::{Field, PRESETS, PlanetChoice, Scale, Spec, print_number};

/// Fields that most people need, those of a planet of one's own, those that lead out of the orbit plane, and the one that
/// stays folded away until asked for.
const FIRST: [Field; 3] = [Field::VInfinity, Field::Approach, Field::Periapsis];
const CUSTOM: [Field; 3] = [Field::Gm, Field::Radius, Field::Orbit];
const OUT: [Field; 2] = [Field::Crank, Field::Aim];
const FOLDED: [Field; 1] = [Field::ProbeMass];

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
    /// Fills the page's control slots and remembers what is in them.
    pub(super) fn build(root: &Element) -> Self {
        let slots: [(_, &[Field]); 4] = [
            ("first", &FIRST),
            ("custom", &CUSTOM),
            ("out", &OUT),
            ("folded", &FOLDED),
        ];
        for (slot, fields) in slots {
            let markup: String = fields
                .iter()
                .map(|field| field_markup(field.spec()))
                .collect();
            find::<Element>(root, &format!("[data-slot={slot}]")).set_inner_html(&markup);
        }
        let planet: HtmlSelectElement = find(root, "[data-action=planet]");
        planet.set_inner_html(&planet_options());
        let presets: HtmlSelectElement = find(root, "[data-action=preset]");
        presets.set_inner_html(&preset_options());
        Self {
            fields: Field::ALL.map(|field| FieldControl::find(root, field)),
            planet,
            presets,
            custom: find(root, "[data-slot=custom]"),
            published: find(root, "#planet-meaning"),
            sides: [Side::find(root, 0), Side::find(root, 1)],
        }
    }

    /// Shows the sandbox's settings. `typing` is the element that has the focus: a number field that is being typed in
    /// keeps its text.
    pub(super) fn show(&self, sandbox: &Sandbox, typing: Option<&Element>) {
        let scenario = sandbox.scenario();
        self.planet.set_value(scenario.planet().key());
        let preset = sandbox.preset().map_or("", |preset| preset.id);
        self.presets.set_value(preset);
        let custom = matches!(scenario.planet(), PlanetChoice::Custom(_));
        set_hidden(&self.custom, !custom);
        set_hidden(&self.published, custom);
        for control in &self.fields {
            if let Some(value) = scenario.get(control.field) {
                control.show(value, typing);
            }
        }
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
        let part = |name: &str| format!("[data-field={}] [data-part={name}]", field.spec().key);
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
            &format!("{text} {}", spec.unit),
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
    fn find(root: &Element, index: usize) -> Self {
        let choice = format!("[data-side=\"{index}\"]");
        Self {
            button: find(root, &format!("{choice} input")),
            label: find(root, &format!("{choice} span")),
        }
    }

    fn show(&self, choice: &SideChoice) {
        self.button.set_checked(choice.chosen);
        set_text(&self.label, &choice.label);
    }
}

/// Label, slider, number, − and +, meaning and message of a field.
fn field_markup(spec: &Spec) -> String {
    let Spec {
        key,
        label,
        unit,
        meaning,
        min,
        max,
        ..
    } = spec;
    let (low, high, step) = spec.slider_range();
    let (low, high, step) = (print_number(low), print_number(high), print_number(step));
    let range = range_words(spec);
    let (label, meaning) = (escaped(label), escaped(meaning));
    let mut limits = String::new();
    if spec.default.is_some() {
        let _ = write!(
            limits,
            "min=\"{}\" max=\"{}\"",
            print_number(*min),
            print_number(*max)
        );
    }
    format!(
        "<div class=\"field\" data-field=\"{key}\">\
         <label for=\"{key}-number\">{label}</label>\
         <span class=\"value\"><input id=\"{key}-number\" data-part=\"number\" type=\"number\" step=\"any\" {limits} \
         aria-describedby=\"{key}-meaning {key}-error\"> <span class=\"unit\">{unit}</span></span>\
         <span class=\"slide\"><button type=\"button\" data-part=\"less\" aria-label=\"Less: {label}\">−</button>\
         <input data-part=\"slider\" type=\"range\" min=\"{low}\" max=\"{high}\" step=\"{step}\" aria-label=\"{label}\" \
         aria-describedby=\"{key}-meaning\">\
         <button type=\"button\" data-part=\"more\" aria-label=\"More: {label}\">+</button></span>\
         <p class=\"meaning\" id=\"{key}-meaning\">{meaning} <span class=\"range\">{range}</span></p>\
         <p class=\"error\" id=\"{key}-error\" data-part=\"error\" role=\"alert\" hidden></p></div>"
    )
}

/// The field's range, and its scale where that is not the usual one.
fn range_words(spec: &Spec) -> String {
    let scale = if spec.scale == Scale::Logarithmic {
        "; slider in equal ratios"
    } else {
        ""
    };
    let Spec { min, max, unit, .. } = *spec;
    let space = if unit == "°" { "" } else { " " };
    match spec.default {
        Some(_) => format!(
            "From {} to {}{space}{unit}{scale}.",
            short(min, 1),
            short(max, 1)
        ),
        None => format!("Any number above 0, in {unit}{scale}."),
    }
}

fn planet_options() -> String {
    let mut options = String::new();
    for (key, body) in PlanetChoice::KNOWN {
        let _ = write!(
            options,
            "<option value=\"{key}\">{}</option>",
            crate::physics::Planet::of(body).name
        );
    }
    let _ = write!(
        options,
        "<option value=\"{}\">A planet of your own</option>",
        PlanetChoice::CUSTOM
    );
    options
}

fn preset_options() -> String {
    let mut options = String::from("<option value=\"\" disabled>Your own settings</option>");
    for preset in &PRESETS {
        let _ = write!(
            options,
            "<option value=\"{}\">{}</option>",
            preset.id,
            escaped(preset.title)
        );
    }
    options
}
