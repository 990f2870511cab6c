//! What the colours of a map mean: a bar of them with numbers, and a title with the unit.

use glam::DVec2;

use super::color_map::ColorMap;
use super::drawing::Drawing;
use super::label::Words;
use super::picture::{Dash, Mark, Role};
use super::raster::Raster;
use super::room::Area;

/// A legend, before it is drawn.
#[derive(Clone, Copy)]
pub(super) struct Legend<'a> {
    /// Upper left corner of its box.
    pub(super) at: DVec2,
    /// Size of its box, labels included, at least four letters high.
    pub(super) size: DVec2,
    pub(super) map: ColorMap,
    /// What the colours mean, with the unit.
    pub(super) title: &'a str,
    /// Places along the bar, 0 at the lowest value and 1 at the highest, in rising order, each with its words.
    pub(super) ticks: &'a [(f64, String)],
}

impl Drawing {
    /// Draws a legend: the title above, then the bar, with ticks and their words below it. Where words would run into each
    /// other every second one is left out, from the first on, until they do not.
    pub(super) fn legend(&mut self, legend: &Legend<'_>) {
        let letter = self.letter;
        let mut widest = 0.0;
        for (_, text) in legend.ticks {
            widest = Words::new(text, Role::Ink, letter).width().max(widest);
        }
        // Short of the ends of the box by as much as the words of the ticks there need. A bar without height is no bar,
        // even where the box has no room for one.
        let at = legend.at + DVec2::new(0.5 * widest, 1.5 * letter);
        let size = (legend.size - DVec2::new(widest, 3.1 * letter)).max(DVec2::splat(2.0));
        self.colors(legend, at, size);
        let title = Words::bold(legend.title, Role::Ink, letter);
        let half = DVec2::new(0.5 * title.width(), 0.6 * letter);
        self.put(legend.at + half, title);
        let edge = self.stroke(Role::Quiet, 1.0, Dash::Solid);
        let step = step(legend.ticks, (widest + 0.5 * letter) / size.x);
        for (i, (part, text)) in legend.ticks.iter().enumerate() {
            let from = at + DVec2::new(size.x * part, size.y);
            let to = from + DVec2::new(0.0, 0.35 * letter);
            self.picture.line(from, to, edge);
            if i % step == 0 {
                let words = Words::new(text, Role::Ink, letter);
                self.put(to + DVec2::new(0.0, 0.6 * letter), words);
            }
        }
        self.room.take(Area {
            low: legend.at,
            high: legend.at + legend.size,
        });
    }

    /// The bar, lowest value left, and its edge.
    fn colors(&mut self, legend: &Legend<'_>, at: DVec2, size: DVec2) {
        let mut cells = [0; ColorMap::COLORS];
        for (i, cell) in cells.iter_mut().enumerate() {
            *cell = i as u8;
        }
        self.picture.marks.push(Mark::Raster(Raster {
            at,
            size,
            columns: ColorMap::COLORS,
            cells: cells.as_slice().into(),
            map: legend.map,
        }));
        let (across, high) = (DVec2::new(size.x, 0.0), at + size);
        let corners = vec![at, at + across, high, high - across, at];
        let edge = self.stroke(Role::Quiet, 1.0, Dash::Solid);
        self.picture.path(corners, edge);
    }
}

/// Of how many ticks one gets its words: 1, 2, 4 and so on, until those that are left are `apart`, as a part of the bar.
fn step(ticks: &[(f64, String)], apart: f64) -> usize {
    let mut step = 1;
    while (step..ticks.len())
        .step_by(step)
        .any(|i| ticks[i].0 - ticks[i - step].0 < apart)
    {
        step *= 2;
    }
    step
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figure::{Label, Picture};

    const TICKS: [(f64, &str); 9] = [
        (0.0, "−20"),
        (0.125, "−15"),
        (0.25, "−10"),
        (0.375, "−5"),
        (0.5, "0"),
        (0.625, "+5"),
        (0.75, "+10"),
        (0.875, "+15"),
        (1.0, "+20"),
    ];

    fn legend(size: DVec2) -> Picture {
        let mut drawing = Drawing::new(DVec2::splat(400.0), 13.0, "A legend".into());
        drawing.legend(&Legend {
            at: DVec2::new(20.0, 30.0),
            size,
            map: ColorMap::Vik,
            title: "Change, km/s",
            ticks: &TICKS.map(|(part, text)| (part, text.into())),
        });
        drawing.picture
    }

    fn raster(picture: &Picture) -> &Raster {
        let raster = picture.marks.iter().find_map(|mark| match mark {
            Mark::Raster(raster) => Some(raster),
            _ => None,
        });
        raster.expect("a bar")
    }

    /// The words of the ticks that are left, after a check that no words touch others or leave the legend.
    fn words(size: DVec2) -> Vec<String> {
        let picture = legend(size);
        let labels: Vec<&Label> = picture.labels().collect();
        for (i, label) in labels.iter().enumerate() {
            let [low, high] = label.bounds();
            assert!(
                low.cmpge(DVec2::new(20.0, 30.0) - 0.5).all(),
                "{size}: {label:?}"
            );
            assert!(
                high.cmple(DVec2::new(20.0, 30.0) + size + 0.5).all(),
                "{size}: {label:?}"
            );
            for other in &labels[..i] {
                let [other_low, other_high] = other.bounds();
                let apart = other_high.cmple(low) | other_low.cmpge(high);
                assert!(apart.any(), "{size}: “{}” and “{}”", label.text, other.text);
            }
        }
        assert_eq!(labels[0].text, "Change, km/s");
        labels[1..].iter().map(|label| label.text.clone()).collect()
    }

    #[test]
    fn words_that_have_room_are_all_there() {
        assert_eq!(words(DVec2::new(370.0, 50.0)), TICKS.map(|tick| tick.1));
    }

    #[test]
    fn words_that_have_none_are_thinned_out_and_both_ends_stay() {
        let some = words(DVec2::new(220.0, 50.0));
        assert_eq!(some, ["−20", "−10", "0", "+10", "+20"]);
        assert_eq!(words(DVec2::new(110.0, 50.0)), ["−20", "0", "+20"]);
    }

    #[test]
    fn a_box_too_small_still_has_a_bar() {
        for size in [DVec2::new(10.0, 5.0), DVec2::new(5.0, 10.0), DVec2::ZERO] {
            assert!(raster(&legend(size)).size.min_element() >= 2.0, "{size}");
        }
    }

    #[test]
    fn low_is_left() {
        let picture = legend(DVec2::new(300.0, 50.0));
        let bar = raster(&picture);
        assert_eq!((bar.rows(), bar.cells[0], bar.cells[254]), (1, 0, 254));
        let of = |text: &str| picture.labels().find(|label| label.text == text);
        let place = |text| of(text).expect("it has room").at.x;
        assert!(place("−20") < place("0") && place("0") < place("+20"));
    }
}
