//! Where there is still room in a picture: a coarse map of taken cells, so that no label covers a line or a label.

use std::ops::Range;

use glam::DVec2;

use crate::decimal::within;

/// Cells along the longer side; a row is one machine word of them.
const CELLS: usize = 128;

/// A rectangle of the picture, from its upper left to its lower right corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Area {
    pub(super) low: DVec2,
    pub(super) high: DVec2,
}

impl Area {
    pub(super) fn around(centre: DVec2, half: DVec2) -> Self {
        Self {
            low: centre - half,
            high: centre + half,
        }
    }
}

/// The map of taken cells of one picture.
pub(super) struct Room {
    rows: [u128; CELLS],
    /// Those of them that words stand on.
    words: [u128; CELLS],
    size: DVec2,
    cell: f64,
}

impl Room {
    pub(super) fn new(size: DVec2) -> Self {
        Self {
            rows: [0; CELLS],
            words: [0; CELLS],
            size,
            cell: size.max_element() / CELLS as f64,
        }
    }

    /// Takes the cells along a line through points.
    pub(super) fn take_path(&mut self, points: &[DVec2]) {
        for pair in points.windows(2) {
            self.take_line(pair[0], pair[1]);
        }
    }

    pub(super) fn take_line(&mut self, from: DVec2, to: DVec2) {
        let Some((from, to)) = self.clipped(from, to) else {
            return;
        };
        // Steps of half a cell cannot jump over one.
        let steps = (2.0 * from.distance(to) / self.cell).ceil().max(1.0);
        let step = (to - from) / steps;
        let points = steps as usize + 1;
        for i in 0..points {
            self.take_cell(from + step * i as f64);
        }
    }

    /// The part of a line inside the picture (Liang-Barsky), so that a far end costs nothing.
    fn clipped(&self, from: DVec2, to: DVec2) -> Option<(DVec2, DVec2)> {
        let run = to - from;
        let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
        for &(step, before, after) in &[
            (run.x, from.x, self.size.x - from.x),
            (run.y, from.y, self.size.y - from.y),
        ] {
            if step == 0.0 {
                if before < 0.0 || after < 0.0 {
                    return None;
                }
            } else {
                let (a, b) = (-before / step, after / step);
                enter = enter.max(a.min(b));
                leave = leave.min(a.max(b));
            }
        }
        (enter <= leave).then(|| (from + run * enter, from + run * leave))
    }

    pub(super) fn take_disc(&mut self, centre: DVec2, radius: f64) {
        self.take(Area::around(centre, DVec2::splat(radius)));
    }

    /// Takes every cell that a rectangle touches.
    pub(super) fn take(&mut self, area: Area) {
        if let Some((rows, mask)) = self.cells(area) {
            self.rows[rows].iter_mut().for_each(|row| *row |= mask);
        }
    }

    /// Takes every cell under words.
    pub(super) fn take_words(&mut self, area: Area) {
        self.take(area);
        if let Some((rows, mask)) = self.cells(area) {
            self.words[rows].iter_mut().for_each(|row| *row |= mask);
        }
    }

    /// The number of taken cells under a rectangle, words counted tenfold: rather on a line than on other words. `None`
    /// when it leaves the picture.
    pub(super) fn taken(&self, area: Area) -> Option<u32> {
        let inside = area.low.cmpge(DVec2::ZERO).all() && area.high.cmple(self.size).all();
        // A line is taken by points along it, which may miss the corner of a cell that it cuts.
        let edge = DVec2::splat(0.3 * self.cell);
        let wider = Area {
            low: area.low - edge,
            high: area.high + edge,
        };
        let (rows, mask) = self.cells(wider).filter(|_| inside)?;
        let count =
            |cells: &[u128]| -> u32 { cells.iter().map(|row| (row & mask).count_ones()).sum() };
        Some(count(&self.rows[rows.clone()]) + 9 * count(&self.words[rows]))
    }

    /// Whether words already stand under a rectangle.
    pub(super) fn has_words(&self, area: Area) -> bool {
        self.cells(area)
            .is_some_and(|(rows, mask)| self.words[rows].iter().any(|row| row & mask != 0))
    }

    /// The first of some centres round which a box of this half size covers nothing.
    pub(super) fn first_free(&self, centres: &[DVec2], half: DVec2) -> Option<DVec2> {
        let free = |centre: &&DVec2| self.taken(Area::around(**centre, half)) == Some(0);
        centres.iter().find(free).copied()
    }

    fn take_cell(&mut self, place: DVec2) {
        let (column, row) = (place.x / self.cell, place.y / self.cell);
        if (0.0..CELLS as f64).contains(&column) && (0.0..CELLS as f64).contains(&row) {
            self.rows[row as usize] |= 1 << column as usize;
        }
    }

    /// The rows and the columns (as a mask) that a rectangle touches.
    fn cells(&self, area: Area) -> Option<(Range<usize>, u128)> {
        let last = (CELLS - 1) as f64;
        let (low, high) = (area.low / self.cell, area.high / self.cell);
        if !(high.x >= 0.0 && high.y >= 0.0 && low.x <= last && low.y <= last) {
            return None;
        }
        let index = |value: f64| within(value, 0.0, last) as usize;
        let (left, right) = (index(low.x), index(high.x));
        let columns = (u128::MAX >> (CELLS - 1 - (right - left))) << left;
        let end = index(high.y) + 1;
        Some((index(low.y)..end, columns))
    }
}
