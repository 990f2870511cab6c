//! What stands in the corners of a stage: the ruler, the direction of the Sun, the beads' interval.

use glam::DVec2;

use super::label::{Words, put, text_width};
use super::picture::{Arrow, Head, Picture, Role, Shaft, Stroke};
use super::room::{Area, Room};
use super::ticks::round_below;
use super::view::View;
use crate::report::{short, short_span};

/// The ruler: a bar of a round number of planet radii, with its length in km.
pub(super) fn ruler(
    picture: &mut Picture,
    room: &mut Room,
    view: &View,
    radius_km: f64,
    letter: f64,
) {
    let radii = round_below(0.32 * picture.size.x * view.scale / radius_km);
    let bar = view.length(radii * radius_km);
    let text = format!("{} R = {}", short(radii, 1), kilometres(radii * radius_km));
    let words = Words::new(text, Role::Quiet, letter);
    let width = bar.max(text_width(&words.text, letter, false));
    let half = DVec2::new(0.5 * width + 2.0, 1.1 * letter);
    let Some(centre) = free_corner(room, picture.size, half, letter, Side::Bottom) else {
        return;
    };
    room.take(Area::around(centre, half));
    let y = centre.y + 0.7 * letter;
    let (left, right) = (
        DVec2::new(centre.x - 0.5 * bar, y),
        DVec2::new(centre.x + 0.5 * bar, y),
    );
    let stroke = Stroke::solid(Role::Quiet, 1.5);
    let tick = DVec2::new(0.0, 0.3 * letter);
    picture.line(left, right, stroke);
    picture.line(left - tick, left + tick, stroke);
    picture.line(right - tick, right + tick, stroke);
    put(picture, room, centre - DVec2::new(0.0, 0.4 * letter), words);
}

/// A length in km as people say it: "1.43 million km".
fn kilometres(km: f64) -> String {
    match km {
        km if km >= 1e9 => format!("{} billion km", short(km / 1e9, 3)),
        km if km >= 1e6 => format!("{} million km", short(km / 1e6, 3)),
        km => format!("{} km", short(km, 3)),
    }
}

/// The arrow that says where the Sun is: to the left, far outside the picture.
pub(super) fn to_the_sun(picture: &mut Picture, room: &mut Room, letter: f64) {
    let words = Words::new("to the Sun", Role::Quiet, letter);
    let (text, arrow, gap) = (
        text_width(&words.text, letter, false),
        2.2 * letter,
        0.5 * letter,
    );
    let half = DVec2::new(0.5 * (text + arrow + gap), 0.75 * letter);
    let Some(centre) = free_corner(room, picture.size, half, letter, Side::Top) else {
        return;
    };
    room.take(Area::around(centre, half));
    let left = centre.x - half.x;
    picture.marks.push(super::picture::Mark::Arrow(Arrow {
        from: DVec2::new(left + arrow, centre.y),
        to: DVec2::new(left, centre.y),
        stroke: Stroke::solid(Role::Quiet, 1.5),
        head: Head::Filled,
        shaft: Shaft::Single,
    }));
    put(
        picture,
        room,
        DVec2::new(left + arrow + gap + 0.5 * text, centre.y),
        words,
    );
}

/// What a step from bead to bead means.
pub(super) fn bead_note(picture: &mut Picture, room: &mut Room, bead_s: f64, letter: f64) {
    let words = Words::new(
        format!("bead to bead: {}", short_span(bead_s)),
        Role::Quiet,
        letter,
    );
    let half = DVec2::new(0.5 * text_width(&words.text, letter, false), 0.6 * letter);
    if let Some(centre) = free_corner(room, picture.size, half, letter, Side::Bottom) {
        put(picture, room, centre, words);
    }
}

/// Which edge to try first.
#[derive(Clone, Copy, PartialEq)]
enum Side {
    Top,
    Bottom,
}

/// The middle of a free block in a corner or along the upper or lower edge; rows farther in are tried last.
fn free_corner(room: &Room, size: DVec2, half: DVec2, letter: f64, first: Side) -> Option<DVec2> {
    let edge = DVec2::splat(0.5 * letter);
    let (low, high) = (half + edge, size - half - edge);
    let across = [0.0, 1.0, 0.5, 0.25, 0.75];
    let down = [0.0, 1.0, 0.08, 0.92, 0.16, 0.84, 0.5];
    down.into_iter()
        .flat_map(|y| {
            across
                .into_iter()
                .map(move |x| (x, if first == Side::Top { y } else { 1.0 - y }))
        })
        .map(|(x, y)| DVec2::new(low.x + (high.x - low.x) * x, low.y + (high.y - low.y) * y))
        .find(|centre| room.taken(Area::around(*centre, half)) == Some(0))
}
