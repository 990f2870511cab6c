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
    /// Size of its box, labels included: the bar runs along the longer side. A flat one is at least four letters high; an
    /// upright one is wide enough for its title and for bar and words, three letters and the longest words.
    pub(super) size: DVec2,
    pub(super) map: ColorMap,
    /// What the colours mean, with the unit.
    pub(super) title: &'a str,
    /// Places along the bar, 0 at the lowest value and 1 at the highest, in rising order, each with its words.
    pub(super) ticks: &'a [(f64, &'a str)],
}

/// Where a legend's bar is.
struct Bar {
    /// Upper left corner and size of the colours.
    at: DVec2,
    size: DVec2,
    /// The bar's lowest value, on the side of the words.
    start: DVec2,
    /// From there to the highest value.
    run: DVec2,
    /// Towards the words; of length 1.
    out: DVec2,
    /// From the middle of a tick's words to the middle of the next ones, at least.
    apart: f64,
}

impl Drawing {
    /// Draws a legend: the title above, then the bar, with ticks and their words below it or, upright, to its right.
    /// Where words would run into each other every second one is left out, from the first on, until they do not.
    pub(super) fn legend(&mut self, legend: &Legend<'_>) {
        let letter = self.letter;
        let bar = self.bar(legend);
        self.colors(legend, &bar);
        let title = Words::bold(legend.title, Role::Ink, letter);
        let half = DVec2::new(0.5 * title.width(), 0.6 * letter);
        self.put(legend.at + half, title);
        let edge = self.stroke(Role::Quiet, 1.0, Dash::Solid);
        let step = bar.step(legend.ticks);
        for (i, (part, text)) in legend.ticks.iter().enumerate() {
            let from = bar.start + bar.run * *part;
            let to = from + bar.out * (0.35 * letter);
            self.picture.line(from, to, edge);
            if i % step == 0 {
                let words = Words::new(text, Role::Ink, letter);
                let half = DVec2::new(0.5 * words.width() + 0.4 * letter, 0.6 * letter);
                self.put(to + bar.out * half, words);
            }
        }
        self.room.take(Area {
            low: legend.at,
            high: legend.at + legend.size,
        });
    }

    /// Where the bar is: short of the ends of the box by as much as the words of the ticks there need.
    fn bar(&self, legend: &Legend<'_>) -> Bar {
        let (letter, size) = (self.letter, legend.size);
        if size.y > size.x {
            let at = legend.at + DVec2::new(0.0, 1.8 * letter);
            let size = DVec2::new(1.1 * letter, (size.y - 2.3 * letter).max(2.0));
            return Bar {
                at,
                size,
                start: at + size,
                run: DVec2::new(0.0, -size.y),
                out: DVec2::X,
                apart: 1.1 * letter,
            };
        }
        let width = |tick: &(f64, &str)| Words::new(tick.1, Role::Ink, letter).width();
        let widest = legend.ticks.iter().map(width).fold(0.0, f64::max);
        let at = legend.at + DVec2::new(0.5 * widest, 1.5 * letter);
        // A bar without height is no bar, even where the box has no room for one.
        let size = (size - DVec2::new(widest, 3.1 * letter)).max(DVec2::splat(2.0));
        Bar {
            at,
            size,
            start: at + DVec2::new(0.0, size.y),
            run: DVec2::new(size.x, 0.0),
            out: DVec2::Y,
            apart: widest + 0.5 * letter,
        }
    }

    fn colors(&mut self, legend: &Legend<'_>, bar: &Bar) {
        let upright = bar.out == DVec2::X;
        let last = (ColorMap::COLORS - 1) as u8;
        let cell = |i: u8| if upright { last - i } else { i };
        self.picture.marks.push(Mark::Raster(Raster {
            at: bar.at,
            size: bar.size,
            columns: if upright { 1 } else { ColorMap::COLORS },
            cells: (0..=last).map(cell).collect(),
            map: legend.map,
        }));
        let (low, across) = (bar.at, DVec2::new(bar.size.x, 0.0));
        let high = low + bar.size;
        let corners = vec![low, low + across, high, high - across, low];
        let edge = self.stroke(Role::Quiet, 1.0, Dash::Solid);
        self.picture.path(corners, edge);
    }
}

impl Bar {
    /// Of how many ticks one gets its words: 1, 2, 4 and so on.
    fn step(&self, ticks: &[(f64, &str)]) -> usize {
        let fits = |step: usize| {
            let shown = ticks.iter().step_by(step);
            let mut gaps = shown.clone().skip(1).zip(shown);
            gaps.all(|(next, tick)| (next.0 - tick.0) * self.run.length() >= self.apart)
        };
        let mut step = 1;
        while step < ticks.len() && !fits(step) {
            step *= 2;
        }
        step
    }
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
            ticks: &TICKS,
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
        for size in [DVec2::new(370.0, 50.0), DVec2::new(110.0, 220.0)] {
            assert_eq!(words(size), TICKS.map(|tick| tick.1), "{size}");
        }
    }

    #[test]
    fn words_that_have_none_are_thinned_out_and_both_ends_stay() {
        for size in [DVec2::new(220.0, 50.0), DVec2::new(110.0, 114.0)] {
            assert_eq!(words(size), ["−20", "−10", "0", "+10", "+20"], "{size}");
        }
        assert_eq!(words(DVec2::new(110.0, 50.0)), ["−20", "0", "+20"]);
    }

    #[test]
    fn a_box_too_small_still_has_a_bar() {
        for size in [DVec2::new(10.0, 5.0), DVec2::new(5.0, 10.0), DVec2::ZERO] {
            assert!(raster(&legend(size)).size.min_element() >= 2.0, "{size}");
        }
    }

    #[test]
    fn low_is_left_or_at_the_bottom() {
        let flat = legend(DVec2::new(300.0, 50.0));
        let cells = &raster(&flat).cells;
        assert_eq!((raster(&flat).rows(), cells[0], cells[254]), (1, 0, 254));
        let upright = legend(DVec2::new(100.0, 300.0));
        let bar = raster(&upright);
        assert_eq!((bar.columns, bar.rows()), (1, 255));
        assert_eq!((bar.cells[0], bar.cells[254]), (254, 0));
        let of = |text: &str| upright.labels().find(|label| label.text == text);
        let height = |text| of(text).expect("it has room").at.y;
        assert!(height("+20") < height("0") && height("0") < height("−20"));
    }
}
