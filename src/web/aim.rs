//! Aiming on the page: the aim plane with its fields, the wish and its answer, and the switch that keeps the probe in the
//! orbit plane.

use glam::DVec2;
use web_sys::{Element, HtmlInputElement, HtmlSelectElement};

use super::canvas::Canvas;
use super::chart::Chart;
use super::dom::{document, escaped, find, set_attribute, set_hidden, set_text};
use super::palette::Palette;
use super::readout::{list, sentence_of};
use crate::decimal::round_significant;
use crate::physics::{FlybyError, Free};
use crate::report::{MeasureWords, aim_sentences, describe_aim_plane, refusal};
use crate::sandbox::{AimChange, Sandbox};
use crate::scenario::{Wish, WishKind, print_number};

/// Cells to a side of the map.
const COLUMNS: usize = 256;

/// What may change for a wish, by the values of the page's list.
const FREE: [(&str, Free); 3] = [
    ("periapsis", Free::Periapsis),
    ("aim-point", Free::AimPoint),
    ("approach", Free::Approach),
];

/// The elements that show and change the aim.
pub(super) struct Aim {
    pub(super) canvas: Canvas,
    pub(super) chart: Chart,
    plane_only: HtmlInputElement,
    measure: HtmlSelectElement,
    /// B·T and B·R.
    point: [HtmlInputElement; 2],
    wish: HtmlSelectElement,
    value: HtmlInputElement,
    value_holder: Element,
    unit: Element,
    free: HtmlSelectElement,
    section: Element,
    error: Element,
    answer: Element,
    /// The answer's markup as it is shown: what has not changed is not touched.
    answered: String,
    take: Element,
    /// What was painted last: the sandbox's revision and the pictures' sizes.
    painted: Option<(u32, [DVec2; 2])>,
}

impl Aim {
    pub(super) fn find(root: &Element) -> Self {
        Self {
            canvas: Canvas::find(root, "aim"),
            chart: Chart::find(root),
            plane_only: find(root, "[data-action=plane-only]"),
            measure: find(root, "[data-action=measure]"),
            point: ["t", "r"].map(|axis| find(root, &["[data-aim=", axis, "]"].concat())),
            wish: find(root, "[data-action=wish]"),
            value: find(root, "[data-part=wish]"),
            value_holder: find(root, ".wish-value"),
            unit: find(root, ".wish-value .unit"),
            free: find(root, "[data-action=free]"),
            section: find(root, ".wish"),
            error: find(root, "#wish-error"),
            answer: find(root, "[data-text=answer]"),
            answered: String::new(),
            take: find(root, "[data-action=take]"),
            painted: None,
        }
    }

    /// The picture has to be painted anew, in other colours.
    pub(super) fn repaint(&mut self) {
        self.painted = None;
    }

    /// Shows what the sandbox has; nothing is computed when nothing has changed. `typing` is the element that has the
    /// focus: a number field that is being typed in keeps its text.
    pub(super) fn show(
        &mut self,
        root: &Element,
        sandbox: &mut Sandbox,
        palette: &Palette,
        typing: Option<&Element>,
    ) {
        let sizes = [self.canvas.size(), self.chart.canvas.size()];
        let now = (sandbox.revision(), sizes);
        if self.painted == Some(now) {
            return;
        }
        let settings = *sandbox.aim_settings();
        self.plane_only.set_checked(settings.in_plane);
        // In the plane the aim is on the T axis.
        self.point[1].set_disabled(settings.in_plane);
        if settings.in_plane {
            set_attribute(root, "data-plane-only", "");
        } else {
            // Taking away what is not there cannot fail.
            let _ = root.remove_attribute("data-plane-only");
        }
        self.measure
            .set_value(MeasureWords::of(settings.measure).key);
        let free = FREE.iter().find(|(_, free)| *free == settings.free);
        self.free.set_value(free.map_or("", |(key, _)| key));
        self.show_wish(settings.wish, typing);
        self.show_answer(sandbox);
        match sandbox.aim_picture(sizes[0], COLUMNS) {
            Ok(picture) => self.canvas.paint(&picture, palette),
            Err(error) => self.refuse(&error),
        }
        self.chart.show(sandbox, palette);
        if let Ok(solved) = sandbox.solved() {
            let point = solved.flyby.aim_point_km;
            for (field, km) in self.point.iter().zip(point) {
                // What is left of a zero by rounding is shown as one.
                let is_zero = km.abs() < 1e-12 * solved.flyby.impact_parameter_km;
                let shown = if is_zero { 0.0 } else { km };
                show_number(field, round_significant(shown, 7), typing);
                set_attribute(field, "data-value", &print_number(km));
            }
            let words = describe_aim_plane(&solved.pass());
            set_attribute(&self.canvas.element, "aria-label", &words);
        }
        self.painted = Some(now);
    }

    /// Shows no aim and no outcome, where there is none.
    fn refuse(&self, error: &FlybyError) {
        for field in &self.point {
            field.set_value("");
            // Taking away what is not there cannot fail.
            let _ = field.remove_attribute("data-value");
        }
        let words = refusal(error);
        set_attribute(&self.canvas.element, "aria-label", &words);
        self.chart.refuse(&words);
    }

    /// The aim plane in words, if it has the focus.
    pub(super) fn words_if_held(&self) -> Option<String> {
        let canvas: &Element = self.canvas.element.as_ref();
        let focus = document().active_element()?;
        if focus == *canvas {
            canvas.get_attribute("aria-label")
        } else {
            None
        }
    }

    /// Whether the answer is still changing: screen readers wait until it is not.
    pub(super) fn wait(&self, waiting: bool) {
        let busy = if waiting { "true" } else { "false" };
        set_attribute(&self.answer, "aria-busy", busy);
    }

    fn show_wish(&self, wish: Option<Wish>, typing: Option<&Element>) {
        let value = match wish {
            Some(Wish::Value(kind, value)) => {
                self.wish.set_value(kind.spec().key);
                set_text(&self.unit, kind.spec().unit);
                if show_number(&self.value, value, typing) {
                    self.show_error(None);
                }
                true
            }
            other => {
                let text = other.map(Wish::text);
                self.wish.set_value(&text.unwrap_or_default());
                false
            }
        };
        set_hidden(&self.value_holder, !value);
    }

    fn show_answer(&mut self, sandbox: &mut Sandbox) {
        let (sentences, words, usable) = match sandbox.aiming() {
            Ok(aiming) => {
                let markup = |words| sentence_of(words, "page.aim.");
                let sentences: Vec<_> = aim_sentences(aiming).iter().map(markup).collect();
                let words = if aiming.met {
                    "Use this aim"
                } else {
                    "Use what comes nearest"
                };
                (sentences, words, true)
            }
            Err(bad) => (vec![escaped(&bad.text())], "Use this aim", false),
        };
        let markup = list(&sentences);
        if self.answered != markup {
            self.answer.set_inner_html(&markup);
            self.answered = markup;
        }
        set_text(&self.take, words);
        if usable {
            let _ = self.take.remove_attribute("disabled");
        } else {
            set_attribute(&self.take, "disabled", "");
        }
    }

    /// What a change of one of the lists means.
    pub(super) fn chosen(action: &str, value: &str) -> Option<AimChange> {
        match action {
            "measure" => MeasureWords::from_key(value).map(AimChange::Measure),
            "free" => FREE
                .iter()
                .find(|(key, _)| *key == value)
                .map(|(_, free)| AimChange::Free(*free)),
            "against" => Some(AimChange::Against(Chart::field(value))),
            "wish" if value.is_empty() => Some(AimChange::NoWish),
            "wish" => {
                let kind = WishKind::ALL
                    .into_iter()
                    .find(|kind| kind.spec().key == value);
                let wish = match kind {
                    Some(kind) => Ok(Wish::Value(kind, kind.spec().usual)),
                    None => Wish::read(value),
                };
                wish.ok().map(AimChange::Wish)
            }
            _ => None,
        }
    }

    /// The wish that the list and the number say; a number that is not allowed is answered at its field.
    pub(super) fn typed_wish(&self) -> Option<AimChange> {
        let key = self.wish.value();
        let kind = WishKind::ALL
            .into_iter()
            .find(|kind| kind.spec().key == key)?;
        let wish = kind.read(&self.value.value());
        let message = wish.as_ref().err().map(crate::scenario::BadWish::text);
        self.show_error(message.as_deref());
        wish.ok().map(AimChange::Wish)
    }

    fn show_error(&self, message: Option<&str>) {
        set_text(&self.error, message.unwrap_or_default());
        set_hidden(&self.error, message.is_none());
        let invalid = if message.is_some() { "true" } else { "false" };
        set_attribute(&self.value, "aria-invalid", invalid);
        // What is answered is no longer what stands in the field.
        set_attribute(&self.section, "data-stale", invalid);
    }

    /// The aim point, km, of which one number is typed in a field; the other is as it was, with all its digits.
    pub(super) fn typed_point(&self, typed: &Element) -> Option<AimChange> {
        let number = |field: &HtmlInputElement| {
            let own = typed == AsRef::<Element>::as_ref(field);
            let text = if own {
                field.value()
            } else {
                field.get_attribute("data-value")?
            };
            crate::decimal::parse(&text)
        };
        let [t, r] = &self.point;
        Some(AimChange::At([number(t)?, number(r)?]))
    }
}

/// Shows a number in a field, unless it is being typed in. Returns whether that changed what stood there.
fn show_number(field: &HtmlInputElement, value: f64, typing: Option<&Element>) -> bool {
    let own = typing.is_some_and(|typing| typing == AsRef::<Element>::as_ref(field));
    let text = print_number(value);
    let changed = !own && field.value() != text;
    if changed {
        field.set_value(&text);
    }
    changed
}
