//! Finding a place for a label: near what it names, over nothing.

use glam::DVec2;

use super::picture::{Anchor, Label, Mark, Picture, Role};
use super::room::{Area, Room};

/// Words to place.
pub(super) struct Words {
    pub(super) text: String,
    pub(super) role: Role,
    pub(super) size: f64,
    pub(super) bold: bool,
}

impl Words {
    pub(super) fn new(text: impl Into<String>, role: Role, size: f64) -> Self {
        Self {
            text: text.into(),
            role,
            size,
            bold: false,
        }
    }

    pub(super) fn bold(self) -> Self {
        Self { bold: true, ..self }
    }

    /// Half the width and height of the box that the words fill.
    fn half_box(&self) -> DVec2 {
        0.5 * DVec2::new(
            text_width(&self.text, self.size, self.bold),
            ASCENT * self.size + DESCENT * self.size,
        )
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
const GAPS: [f64; 4] = [0.55, 1.1, 1.9, 3.0];

/// Places words near the first of `points` that has room, and takes the room. Without room anywhere the words go where
/// they cover least when `needed`, and are left out otherwise.
pub(super) fn place_near(
    picture: &mut Picture,
    room: &mut Room,
    points: &[DVec2],
    words: Words,
    needed: bool,
) {
    let (half, size) = (words.half_box(), words.size);
    let centres = GAPS.iter().flat_map(|gap| {
        let gap = gap * size;
        points.iter().flat_map(move |point| {
            DIRECTIONS
                .iter()
                .map(move |(x, y)| *point + DVec2::new(x * (half.x + gap), y * (half.y + gap)))
        })
    });
    place_at_best(picture, room, centres, words, needed);
}

/// Places words in the first of the given centres that has room; otherwise as [`place_near`].
pub(super) fn place_at_best(
    picture: &mut Picture,
    room: &mut Room,
    centres: impl Iterator<Item = DVec2>,
    words: Words,
    needed: bool,
) {
    let half = words.half_box();
    let mut least: Option<(u32, DVec2)> = None;
    for centre in centres {
        match room.taken(Area::around(centre, half)) {
            Some(taken) if least.is_none_or(|(fewest, _)| taken < fewest) => {
                least = Some((taken, centre));
            }
            _ => {}
        }
        if matches!(least, Some((0, _))) {
            break;
        }
    }
    if let Some((taken, centre)) = least
        && (taken == 0 || needed)
    {
        put(picture, room, centre, words);
    }
}

/// Puts words with the middle of their box at `centre`.
pub(super) fn put(picture: &mut Picture, room: &mut Room, centre: DVec2, words: Words) {
    room.take(Area::around(centre, words.half_box()));
    let baseline = centre.y + 0.5 * (ASCENT - DESCENT) * words.size;
    picture.marks.push(Mark::Label(Label {
        at: DVec2::new(centre.x, baseline),
        anchor: Anchor::Middle,
        text: words.text,
        role: words.role,
        size: words.size,
        bold: words.bold,
    }));
}

impl Label {
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
