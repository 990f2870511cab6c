//! What stands in the corners of a stage: the ruler, the direction of the Sun, the beads' interval.

use glam::{DVec2, DVec3};

use super::arrow::Arrow;
use super::drawing::Drawing;
use super::label::Words;
use super::look::Look;
use super::picture::{Mark, Role, Stroke};
use super::room::Area;
use super::ticks::round_below;
use super::view::View;
use crate::report::{short, short_span};

impl Drawing {
    /// The ruler: a bar of a round number of planet radii, with its length in km.
    pub(super) fn ruler(&mut self, view: &View, radius_km: f64) {
        let letter = self.letter;
        let radii = round_below(0.32 * view.size.x * view.scale / radius_km);
        let bar = view.length(radii * radius_km);
        let text = short(radii, 1) + " R = " + &kilometres(radii * radius_km);
        let words = Words::new(&text, Role::Quiet, letter);
        let half = DVec2::new(0.5 * bar.max(words.width()) + 2.0, 1.1 * letter);
        let Some(centre) = self.take_corner(half, Edge::Bottom) else {
            return;
        };
        let middle = centre + DVec2::new(0.0, 0.7 * letter);
        let (along, tick) = (DVec2::new(0.5 * bar, 0.0), DVec2::new(0.0, 0.3 * letter));
        let (left, right) = (middle - along, middle + along);
        for &(from, to) in &[
            (left, right),
            (left - tick, left + tick),
            (right - tick, right + tick),
        ] {
            self.picture.line(from, to, Stroke::solid(Role::Quiet, 1.5));
        }
        self.put(centre - DVec2::new(0.0, 0.4 * letter), words);
    }

    /// The arrow that says where the Sun is, seen from north: to the left, far outside the picture.
    pub(super) fn sun_note(&mut self) {
        self.pointer(DVec2::NEG_X, "to the Sun", Edge::Top);
    }

    /// From where a stage is seen, and arrows for the directions that are left to see: a column of notes. No words say
    /// again what those of the look have said.
    pub(super) fn compass(&mut self, view: &View, look: Look, planet: &str) {
        let letter = self.letter;
        let words = look.words(planet);
        if !self.note(Words::new(&words, Role::Ink, letter), Edge::Column)
            && let Some(short) = words.strip_suffix(" the orbit plane")
        {
            self.note(Words::new(short, Role::Ink, letter), Edge::Column);
        }
        for &(direction, name) in &[
            (DVec3::Z, "north"),
            (DVec3::Y, "the planet's motion"),
            (DVec3::NEG_X, "to the Sun"),
        ] {
            if view.can_be_shown(direction) {
                self.pointer(view.run(direction), name, Edge::Column);
            } else if direction.x != 0.0 && look != Look::SIDE {
                let away = view.axes.toward.x > 0.0;
                let text = if away {
                    "the Sun lies behind the picture"
                } else {
                    "the Sun lies in front of the picture"
                };
                self.note(Words::new(text, Role::Quiet, letter), Edge::Column);
            }
        }
    }

    /// An arrow along a direction as it runs in the picture, as long as that is seen, and its name beside it.
    fn pointer(&mut self, direction: DVec2, name: &str, first: Edge) {
        let words = Words::new(name, Role::Quiet, self.letter);
        let (text, gap) = (words.width(), 0.5 * self.letter);
        let run = direction * (2.2 * self.letter);
        let arrow = run.abs();
        let half = DVec2::new(
            0.5 * (text + arrow.x + gap),
            (0.75 * self.letter).max(0.5 * arrow.y),
        );
        let Some(centre) = self.take_corner(half, first) else {
            return;
        };
        let left = centre.x - half.x;
        let middle = DVec2::new(left + 0.5 * arrow.x, centre.y);
        self.picture.marks.push(Mark::Arrow(Arrow::of(
            middle - 0.5 * run,
            middle + 0.5 * run,
            Stroke::solid(Role::Quiet, 1.5),
        )));
        self.put(
            DVec2::new(left + arrow.x + gap + 0.5 * text, centre.y),
            words,
        );
    }

    /// What a step from bead to bead means.
    pub(super) fn bead_note(&mut self, bead_s: f64) {
        let text = String::from("bead to bead: ") + &short_span(bead_s);
        self.corner_note(Words::new(&text, Role::Quiet, self.letter));
    }

    /// Words in a corner, or along an edge.
    pub(super) fn corner_note(&mut self, words: Words<'_>) {
        self.note(words, Edge::Bottom);
    }

    /// Says whether there was room.
    fn note(&mut self, words: Words<'_>, first: Edge) -> bool {
        let half = DVec2::new(0.5 * words.width(), 0.6 * self.letter);
        let found = self.take_corner(half, first);
        if let Some(centre) = found {
            self.put(centre, words);
        }
        found.is_some()
    }

    /// Takes a free block in a corner or along an edge, and says where its middle is; rows farther in are tried last.
    fn take_corner(&mut self, half: DVec2, first: Edge) -> Option<DVec2> {
        const ACROSS: [f64; 5] = [0.0, 1.0, 0.5, 0.25, 0.75];
        const DOWN: [f64; 7] = [0.0, 1.0, 0.08, 0.92, 0.16, 0.84, 0.5];
        let edge = half + DVec2::splat(0.5 * self.letter);
        let (low, run) = (edge, self.picture.size - edge - edge);
        let rows = if first == Edge::Column {
            31
        } else {
            DOWN.len()
        };
        for i in 0..rows * ACROSS.len() {
            let place = match first {
                Edge::Column => DVec2::new(ACROSS[i / rows], (i % rows) as f64 / 30.0),
                Edge::Top => DVec2::new(ACROSS[i % 5], DOWN[i / 5]),
                Edge::Bottom => DVec2::new(ACROSS[i % 5], 1.0 - DOWN[i / 5]),
            };
            let area = Area::around(low + run * place, half);
            if self.room.taken(area) == Some(0) {
                self.room.take(area);
                return Some(low + run * place);
            }
        }
        None
    }
}

/// A length in km as people say it: "1.43 million km".
pub(super) fn kilometres(km: f64) -> String {
    let (value, unit) = match km {
        km if km >= 1e9 => (km / 1e9, " billion km"),
        km if km >= 1e6 => (km / 1e6, " million km"),
        km => (km, " km"),
    };
    short(value, 3) + unit
}

/// Where to try first.
#[derive(Clone, Copy, PartialEq)]
enum Edge {
    Top,
    Bottom,
    /// Down along the left edge, then along the right one.
    Column,
}
