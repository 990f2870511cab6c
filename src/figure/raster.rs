//! A grid of coloured cells: a map of values over a rectangle of the picture.

use std::sync::Arc;

use glam::DVec2;

use super::color_map::ColorMap;

/// A grid of coloured cells, stretched over a rectangle and blended from cell to cell. A cell's colour is exact at the
/// cell's middle.
#[derive(Clone, Debug, PartialEq)]
pub struct Raster {
    /// The rectangle's upper left corner, picture units.
    pub at: DVec2,
    /// Its width and height, picture units.
    pub size: DVec2,
    /// Cells in a row.
    pub columns: usize,
    /// The cells, row by row from the top, each row from the left: places in the map's palette, or [`Raster::EMPTY`].
    /// Shared, so that a picture composed anew with the same map copies nothing and a painter may keep what it painted.
    pub cells: Arc<[u8]>,
    /// The cells' colours.
    pub map: ColorMap,
}

impl Raster {
    /// A cell without a value: what lies under the raster shows.
    pub const EMPTY: u8 = 255;

    /// The cell of a part of the way from the lowest value (0) to the highest (1). What lies outside has the cell of the
    /// nearer end; what is not a number is empty.
    pub fn cell(part: f64) -> u8 {
        if part.is_nan() {
            return Self::EMPTY;
        }
        // A cast to a whole number keeps within its range.
        let last = (ColorMap::COLORS - 1) as u8;
        ((part * f64::from(last) + 0.5) as u8).min(last)
    }

    /// Rows of cells; an unfinished one is not shown.
    pub fn rows(&self) -> usize {
        self.cells.len().checked_div(self.columns).unwrap_or(0)
    }

    /// Where a point of the grid lies in the picture: (0, 0) is the middle of the first cell, x counts columns and y rows.
    /// Lines drawn through here fit the colours.
    pub fn place(&self, grid: DVec2) -> DVec2 {
        let cells = DVec2::new(self.columns as f64, self.rows() as f64);
        self.at + (grid + DVec2::splat(0.5)) / cells * self.size
    }

    /// Whether another raster's cells have the same colours, wherever they are.
    pub fn looks_like(&self, other: &Self) -> bool {
        self.map == other.map && self.columns == other.columns && self.cells == other.cells
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn raster(columns: usize, cells: &[u8]) -> Raster {
        Raster {
            at: DVec2::new(10.0, 20.0),
            size: DVec2::new(40.0, 10.0),
            columns,
            cells: cells.into(),
            map: ColorMap::Vik,
        }
    }

    #[test]
    fn parts_become_cells() {
        for (part, cell) in [
            (0.0, 0),
            (0.5, 127),
            (1.0, 254),
            (-3.0, 0),
            (7.0, 254),
            (f64::NEG_INFINITY, 0),
            (f64::INFINITY, 254),
            (f64::NAN, Raster::EMPTY),
        ] {
            assert_eq!(Raster::cell(part), cell, "{part}");
        }
    }

    #[test]
    fn middles_of_cells_are_whole_numbers() {
        let raster = raster(4, &[0; 8]);
        assert_eq!(raster.rows(), 2);
        assert_eq!(raster.place(DVec2::ZERO), DVec2::new(15.0, 22.5));
        assert_eq!(raster.place(DVec2::new(3.0, 1.0)), DVec2::new(45.0, 27.5));
        assert_eq!(raster.place(DVec2::splat(-0.5)), raster.at);
    }

    #[test]
    fn unfinished_rows_and_missing_columns_are_no_rows() {
        assert_eq!(raster(4, &[0; 7]).rows(), 1);
        assert_eq!(raster(0, &[0; 7]).rows(), 0);
    }
}
