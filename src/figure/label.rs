//! Finding a place for a label: near what it names, over nothing.

use glam::DVec2;

use super::drawing::Drawing;
use super::picture::{Anchor, Label, Mark, Role};
use super::room::Area;

/// Words to place.
#[derive(Clone, Copy)]
pub(super) struct Words<'a> {
    pub(super) text: &'a str,
    pub(super) role: Role,
    pub(super) size: f64,
    pub(super) bold: bool,
    pub(super) halo: bool,
}

impl<'a> Words<'a> {
    pub(super) fn new(text: &'a str, role: Role, size: f64) -> Self {
        Self {
            text,
            role,
            size,
            bold: false,
            halo: false,
        }
    }

    pub(super) fn bold(text: &'a str, role: Role, size: f64) -> Self {
        Self {
            bold: true,
            ..Self::new(text, role, size)
        }
    }

    pub(super) fn width(&self) -> f64 {
        text_width(self.text, self.size, self.bold)
    }

    /// Half the width and height of the box that the words fill.
    pub(super) fn half_box(&self) -> DVec2 {
        0.5 * DVec2::new(self.width(), ASCENT * self.size + DESCENT * self.size)
    }
}

/// Height of capitals and ascenders above the baseline, and of descenders below it, in letter heights.
const ASCENT: f64 = 0.78;
const DESCENT: f64 = 0.24;

/// Directions in which a label may stand from its point, best first: beside, then above and below, then across.
const DIRECTIONS: [(f64, f64); 8] = [
    (1.0, 0.0),
    (-1.0, 0.0),
    (0.7, -1.0),
    (-0.7, -1.0),
    (0.7, 1.0),
    (-0.7, 1.0),
    (0.0, -1.0),
    (0.0, 1.0),
];

/// Gaps between a point and its label, in letter heights, best first.
const GAPS: [f64; 5] = [0.55, 1.1, 1.9, 3.0, 4.5];

impl Drawing {
    /// Places words near the first of `points` that has room, and takes the room. Without room anywhere the words go
    /// where they cover least when `needed`, and are left out otherwise. Says whether they stand somewhere.
    pub(super) fn place_near(&mut self, points: &[DVec2], words: Words<'_>, needed: bool) -> bool {
        let found = self.best_near(points, &words);
        let found = found.filter(|(taken, _)| *taken == 0 || needed);
        if let Some((_, centre)) = found {
            self.put(centre, words);
        }
        found.is_some()
    }

    /// Places words that are needed near a point, or, without room there, near the first of some others that has room.
    pub(super) fn place_first(&mut self, point: DVec2, others: &[DVec2], words: Words<'_>) {
        // From a little aside the words may stand above the point and all on one side of it.
        let aside = DVec2::new(0.35 * words.width(), 0.0);
        let found = self.place_near(&[point], words, false)
            || self.place_near(&[point + aside, point - aside], words, false)
            || others
                .iter()
                .any(|other| self.place_near(&[*other], words, false));
        if !found {
            self.place_near(others, words, true);
        }
    }

    /// Places words over the first of `points` at which they cover no other words and stay inside an area: for the name of a
    /// line, which may be broken by it.
    pub(super) fn place_over(&mut self, points: &[DVec2], words: Words<'_>, inside: Area) {
        let half = words.half_box();
        let free = |point: &&DVec2| {
            let area = Area::around(**point, half);
            area.low.cmpge(inside.low).all()
                && area.high.cmple(inside.high).all()
                && !self.room.has_words(area)
        };
        if let Some(centre) = points.iter().find(free) {
            self.put(*centre, words);
        }
    }

    /// The middle of the first free box near one of some points, or of the box that covers least; with the number of
    /// cells that it covers.
    fn best_near(&self, points: &[DVec2], words: &Words<'_>) -> Option<(u32, DVec2)> {
        let half = words.half_box();
        let mut best: Option<(u32, DVec2)> = None;
        for gap in &GAPS {
            let reach = half + DVec2::splat(*gap * words.size);
            for point in points {
                for &(x, y) in &DIRECTIONS {
                    let centre = *point + DVec2::new(x, y) * reach;
                    let Some(taken) = self.room.taken(Area::around(centre, half)) else {
                        continue;
                    };
                    if best.is_none_or(|(fewest, _)| taken < fewest) {
                        best = Some((taken, centre));
                    }
                    if taken == 0 {
                        return best;
                    }
                }
            }
        }
        best
    }

    /// Puts words with the middle of their box at `centre`.
    pub(super) fn put(&mut self, centre: DVec2, words: Words<'_>) {
        self.room.take_words(Area::around(centre, words.half_box()));
        let baseline = centre.y + 0.5 * (ASCENT - DESCENT) * words.size;
        self.picture.marks.push(Mark::Label(Label {
            at: DVec2::new(centre.x, baseline),
            anchor: Anchor::Middle,
            text: words.text.into(),
            role: words.role,
            size: words.size,
            bold: words.bold,
            halo: words.halo,
        }));
    }
}

impl Label {
    /// Width of the line round the letters of a label with a halo, picture units; half of it is inside them.
    pub fn halo_width(&self) -> f64 {
        0.28 * self.size
    }

    /// The box that the label fills: upper left and lower right corner.
    pub fn bounds(&self) -> [DVec2; 2] {
        let width = text_width(&self.text, self.size, self.bold);
        let left = match self.anchor {
            Anchor::Start => self.at.x,
            Anchor::Middle => self.at.x - 0.5 * width,
            Anchor::End => self.at.x - width,
        };
        let top = self.at.y - ASCENT * self.size;
        [
            DVec2::new(left, top),
            DVec2::new(left + width, self.at.y + DESCENT * self.size),
        ]
    }
}

/// The width of a text, picture units, for letters of a height. An upper estimate that holds for the common sans-serif
/// fonts: each class of letters is as wide as in the widest of them.
pub fn text_width(text: &str, size: f64, bold: bool) -> f64 {
    let ems: f64 = text.chars().map(letter_width).sum();
    ems * size * if bold { 1.1 } else { 1.0 }
}

/// The width of a letter in letter heights.
fn letter_width(letter: char) -> f64 {
    match letter {
        'i' | 'j' | 'l' | '|' | '\'' | 'I' => 0.3,
        ' ' | '.' | ',' | ':' | ';' | '!' | '/' | 'f' | 't' | 'r' | '(' | ')' | '\u{202f}' => 0.4,
        'm' | 'w' | 'M' | 'W' | '+' | '−' | '=' | '×' | '∞' | '→' => 0.9,
        'A'..='Z' => 0.72,
        _ => 0.63,
    }
}
