//! What the colours of a map mean: a bar of them with numbers, and a title with the unit.

use glam::DVec2;

use super::color_map::ColorMap;
use super::drawing::Drawing;
use super::label::Words;
use super::picture::{Dash, Mark, Role};
use super::raster::Raster;
use super::room::Area;
use crate::decimal::within;

/// A legend, before it is drawn.
#[derive(Clone, Copy)]
pub(super) struct Legend<'a> {
    /// Upper left corner of its box.
    pub(super) at: DVec2,
    /// Size of its box, labels included: the bar runs along the longer side.
    pub(super) size: DVec2,
    pub(super) map: ColorMap,
    /// What the colours mean, with the unit.
    pub(super) title: &'a str,
    /// Places along the bar, 0 at the lowest value and 1 at the highest, in rising order, each with its words.
    pub(super) ticks: &'a [(f64, &'a str)],
}

impl Drawing {
    /// Draws a legend: the title above, then the bar, with ticks and their words below it or, upright, to its right.
    /// Where words would run into each other every second one is left out, from the first on, until they do not.
    pub(super) fn legend(&mut self, legend: &Legend<'_>) {
        let bar = self.bar(legend);
        self.colors(legend, bar);
        let title = Words::bold(legend.title, Role::Ink, self.letter);
        let half = DVec2::new(0.5 * title.width(), 0.6 * self.letter);
        self.put(legend.at + half, title);
        let edge = self.stroke(Role::Quiet, 1.0, Dash::Solid);
        let step = self.step(legend, bar);
        for (i, (part, text)) in legend.ticks.iter().enumerate() {
            let (from, to) = tick(legend, bar, *part, 0.35 * self.letter);
            self.line(from, to, edge);
            if i % step == 0 {
                let words = Words::new(text, Role::Ink, self.letter);
                self.put(self.words_at(legend, to, &words), words);
            }
        }
        self.room.take(Area {
            low: legend.at,
            high: legend.at + legend.size,
        });
    }

    /// Where the bar is: short of the ends of the box by as much as the words of the first and last tick need.
    fn bar(&self, legend: &Legend<'_>) -> Area {
        let (low, high) = (legend.at, legend.at + legend.size);
        let top = low.y + 1.5 * self.letter;
        if legend.upright() {
            return Area {
                low: DVec2::new(low.x, top + 0.3 * self.letter),
                high: DVec2::new(low.x + 1.1 * self.letter, high.y - 0.5 * self.letter),
            };
        }
        let half = |tick: Option<&(f64, &str)>| {
            let words = tick.map_or("", |(_, text)| text);
            0.5 * Words::new(words, Role::Ink, self.letter).width()
        };
        let bottom = (high.y - 1.5 * self.letter).max(top + 2.0);
        Area {
            low: DVec2::new(low.x + half(legend.ticks.first()), top),
            high: DVec2::new(high.x - half(legend.ticks.last()), bottom),
        }
    }

    fn colors(&mut self, legend: &Legend<'_>, bar: Area) {
        let last = (ColorMap::COLORS - 1) as u8;
        let upright = legend.upright();
        let cell = |i: u8| if upright { last - i } else { i };
        self.picture.marks.push(Mark::Raster(Raster {
            at: bar.low,
            size: bar.high - bar.low,
            columns: if upright { 1 } else { ColorMap::COLORS },
            cells: (0..=last).map(cell).collect(),
            map: legend.map,
        }));
        let (low, high) = (bar.low, bar.high);
        let corners = [
            low,
            DVec2::new(high.x, low.y),
            high,
            DVec2::new(low.x, high.y),
            low,
        ];
        self.picture
            .path(corners.into(), self.stroke(Role::Quiet, 1.0, Dash::Solid));
    }

    /// The middle of the words of a tick that ends at `end`, kept inside the legend along the bar.
    fn words_at(&self, legend: &Legend<'_>, end: DVec2, words: &Words<'_>) -> DVec2 {
        let half = DVec2::new(0.5 * words.width(), 0.5 * self.letter);
        let (low, high) = (legend.at + half, legend.at + legend.size - half);
        if legend.upright() {
            DVec2::new(
                end.x + half.x + 0.2 * self.letter,
                within(end.y, low.y, high.y),
            )
        } else {
            DVec2::new(
                within(end.x, low.x, high.x),
                end.y + half.y + 0.1 * self.letter,
            )
        }
    }

    /// Of how many ticks one gets its words: 1, 2, 4 and so on.
    fn step(&self, legend: &Legend<'_>, bar: Area) -> usize {
        let span = |(part, text): &(f64, &str)| {
            let words = Words::new(text, Role::Ink, self.letter);
            let centre = self.words_at(legend, tick(legend, bar, *part, 0.0).1, &words);
            if legend.upright() {
                // Upwards, as the ticks go.
                (-centre.y, 0.55 * self.letter)
            } else {
                (centre.x, 0.5 * words.width() + 0.25 * self.letter)
            }
        };
        let spans: Vec<_> = legend.ticks.iter().map(span).collect();
        let mut step = 1;
        while step < spans.len() {
            let mut shown = spans.iter().step_by(step);
            let mut before = shown.next();
            let apart = shown.all(|next| {
                let last = before.replace(next);
                last.is_none_or(|last| last.0 + last.1 <= next.0 - next.1)
            });
            if apart {
                break;
            }
            step *= 2;
        }
        step
    }
}

impl Legend<'_> {
    fn upright(&self) -> bool {
        self.size.y > self.size.x
    }
}

/// A tick of a length: from the bar to its words.
fn tick(legend: &Legend<'_>, bar: Area, part: f64, length: f64) -> (DVec2, DVec2) {
    let size = bar.high - bar.low;
    if legend.upright() {
        let from = DVec2::new(bar.high.x, bar.high.y - part * size.y);
        (from, from + DVec2::new(length, 0.0))
    } else {
        let from = DVec2::new(bar.low.x + part * size.x, bar.high.y);
        (from, from + DVec2::new(0.0, length))
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
