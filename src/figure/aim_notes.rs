//! The words of the aim plane: its axes, its marks and lines, what its colours mean.

use glam::{DVec2, DVec3};

use super::aim_map::Scale;
use super::aim_plane::AimPicture;
use super::label::Words;
use super::legend::Legend;
use super::picture::Role;
use super::room::Area;
use super::ruler::kilometres;
use super::ticks::round_below;
use crate::physics::{Measure, ZoneKind};
use crate::report::{MeasureWords, short};

impl AimPicture<'_> {
    /// What the colours mean.
    pub(super) fn legend(&mut self, scale: &Scale) {
        let words = MeasureWords::of(self.scene.measure);
        let ticks = ticks(self.scene.measure, scale, words);
        let letter = self.drawing.letter;
        let size = self.drawing.picture.size;
        let top = self.at.y + self.side + 0.7 * letter;
        self.drawing.legend(&Legend {
            at: DVec2::new(self.at.x, top),
            size: DVec2::new(self.side, size.y - top - 0.2 * letter),
            map: scale.map(),
            title: &[words.label, ", ", words.unit].concat(),
            ticks: &ticks,
        });
    }

    /// The ends of the axes in words, with the trade's names of the axes.
    pub(super) fn axis_words(&mut self) {
        let plane = self.approach.aim_plane;
        let letter = 0.92 * self.drawing.letter;
        let across = (self.side - letter) * 0.5;
        let middle = self.place_of_part(DVec2::ZERO);
        let [right, left] = [plane.t, -plane.t].map(direction_words);
        let up = String::from("↑ ") + &direction_words(-plane.r) + " · −B·R";
        // The horizontal axis has its words along the lower edge: the aim is often on the axis itself.
        let left = String::from("← ") + &left;
        let right = right + " · B·T →";
        for (text, side, row) in &[(up, 0.0, -1.0), (left, -1.0, 1.0), (right, 1.0, 1.0)] {
            let words = over(text, Role::Ink, letter);
            let inwards = DVec2::new(0.5 * words.width(), 0.5 * letter);
            let at = middle + DVec2::new(*side, *row) * (DVec2::splat(across) - inwards);
            self.drawing.put(at, words);
        }
    }

    /// Says so where the colours tell nothing.
    pub(super) fn flat_note(&mut self, scale: &Scale) {
        if !scale.is_flat() {
            return;
        }
        let words = MeasureWords::of(self.scene.measure);
        let [least, most] = scale.found;
        let text = if least.is_infinite() {
            "every pass leaves the Sun".into()
        } else {
            let value = words.style.text(0.5 * (least + most) * words.factor);
            ["nearly the same everywhere: ", &value, " ", words.unit].concat()
        };
        let over = over(&text, Role::Ink, self.drawing.letter);
        let places = [0.25, 0.75, 0.12, 0.88].map(|y| self.at + self.side * DVec2::new(0.5, y));
        self.drawing.place_near(&places, over, true);
    }

    /// The names of the marks, the circles and the lines, the most needed first.
    pub(super) fn names(&mut self, named: &[(&'static str, Vec<DVec2>)]) {
        let letter = self.drawing.letter;
        let bold = |text| Words {
            bold: true,
            ..over(text, Role::Ink, letter)
        };
        let aim = self.place(self.scene.flyby.aim_point_km);
        self.drawing.place_near(&[aim], bold("aim"), true);
        let centre = self.place([0.0, 0.0]);
        let strike = self.length(self.approach.strike_radius_km());
        let inside = AROUND.map(|(x, y)| centre + 0.62 * strike * DVec2::new(x, y));
        let area = self.area();
        self.drawing.place_over(&inside, bold("strikes"), area);
        if let Some((place, km)) = self.answer_place() {
            let edge = 0.4 * letter;
            let inside = place
                .max(area.low + DVec2::splat(edge))
                .min(area.high - DVec2::splat(edge));
            let text = if inside == place {
                "answer".into()
            } else {
                String::from("answer, ") + &kilometres(km)
            };
            // Above or below its mark, inside the map; a line may be broken by it.
            let words = over(&text, Role::Ink, 0.92 * letter);
            let half = words.half_box();
            let middle = place.max(area.low + half).min(area.high - half);
            let beside = [1.6, 4.4, -4.4, -1.6, 3.0, -3.0]
                .map(|rows| middle + DVec2::new(0.0, rows * letter));
            self.drawing.place_over(&beside, words, area);
        }
        self.line_names(named);
        let words = over("periapsis", Role::Ink, 0.92 * letter);
        self.drawing.place_near(&[self.periapsis()], words, false);
        for zone in self.approach.planet.zones {
            let Some(radius) = self.zone_radius(zone) else {
                continue;
            };
            let text = match zone.kind {
                ZoneKind::Atmosphere => "air",
                ZoneKind::Rings => "rings",
                ZoneKind::RadiationBelt => "radiation",
            };
            let on = AROUND.map(|(x, y)| centre + radius * DVec2::new(x, y));
            let words = over(text, Role::Ink, 0.92 * letter);
            self.drawing.place_over(&on, words, area);
        }
    }

    /// Each line's name once, the goal's first, on the line.
    fn line_names(&mut self, named: &[(&'static str, Vec<DVec2>)]) {
        let area = self.area();
        for &is_goal in &[true, false] {
            let mut last = "";
            for (name, points) in named {
                // Lines of one name follow each other.
                if (*name == "goal") == is_goal && *name != last && !points.is_empty() {
                    last = name;
                    self.line_name(name, points, area);
                }
            }
        }
    }

    fn line_name(&mut self, name: &str, points: &[DVec2], area: Area) {
        let text = match name {
            "goal" | "no change" | "leaves the Sun" => name.into(),
            planet => String::from("to ") + planet,
        };
        let words = over(&text, Role::Ink, 0.92 * self.drawing.letter);
        self.drawing.place_over(points, words, area);
    }
}

/// Directions from the planet's centre in which a circle's name may stand.
const AROUND: [(f64, f64); 4] = [(0.0, 1.0), (0.0, -1.0), (0.7, 0.7), (-0.7, 0.7)];

/// Words that are seen on every colour.
fn over(text: &str, role: Role, size: f64) -> Words<'_> {
    Words {
        halo: true,
        ..Words::new(text, role, size)
    }
}

/// Places along the colours, each with its words.
fn ticks(measure: Measure, scale: &Scale, words: &MeasureWords) -> Vec<(f64, String)> {
    let mut ticks = Vec::new();
    if measure == Measure::Aphelion {
        // One over the distance is what the colours show in equal steps.
        let whole = 1.0 - scale.low / scale.high;
        let tick = |part: f64| {
            let value = scale.low / (1.0 - part * whole) * words.factor;
            let text = if value.is_finite() {
                short(value, 2)
            } else {
                "leaves".into()
            };
            (part, text)
        };
        return if scale.is_flat() {
            [0.5].map(tick).into()
        } else {
            [0.0, 0.25, 0.5, 0.75, 1.0].map(tick).into()
        };
    }
    let high = scale.high * words.factor;
    let is_about_zero = scale.low < 0.0;
    let step = round_below(if is_about_zero { 0.9 } else { 0.45 } * high.max(1e-300));
    let most = (high / step * (1.0 + 1e-9)).floor();
    let mut i = if is_about_zero { -most } else { 0.0 };
    while i <= most {
        let value = i * step;
        ticks.push((scale.part(value / words.factor), short(value, 3)));
        i += 1.0;
    }
    ticks
}

/// A direction in words: ahead or behind first, because that decides what a pass does.
pub(super) fn direction_words(direction: DVec3) -> String {
    let parts = [
        (direction.y, "ahead", "behind"),
        (direction.x, "outward", "sunward"),
        (direction.z, "north", "south"),
    ];
    let mut words = String::new();
    for (part, plus, minus) in parts {
        if part.abs() > 0.3 {
            if !words.is_empty() {
                words.push_str(", ");
            }
            words.push_str(if part > 0.0 { plus } else { minus });
        }
    }
    words
}
