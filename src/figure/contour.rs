//! Lines of equal value on a grid, by marching squares.
//!
//! Source: the common textbook method (M). Where a cell's opposite corners are on the same side of the level, the mean
//! of its four corners decides which of them the lines cut off.

use glam::DVec2;

/// Values on a grid of points. Grid coordinates: x counts columns and y rows, the first value is at (0, 0).
#[derive(Clone, Copy, Debug)]
pub struct Grid<'a> {
    /// Points in a row.
    pub columns: usize,
    /// The values, row by row; an unfinished row is left out. No line goes through a cell with a corner that is not a
    /// finite number.
    pub values: &'a [f64],
}

impl Grid<'_> {
    fn rows(&self) -> usize {
        self.values.len().checked_div(self.columns).unwrap_or(0)
    }

    /// Whether a point has a cell to its lower right. Cells are numbered like their upper left corners.
    fn is_cell(&self, point: usize) -> bool {
        let columns = self.columns;
        point < self.rows().saturating_sub(1) * columns && point % columns < columns - 1
    }

    /// The corners of a cell, one after the other round it.
    fn corners(&self, cell: usize) -> [f64; 4] {
        let below = cell + self.columns;
        [cell, cell + 1, below + 1, below].map(|point| self.values[point])
    }

    /// Whether some corners of a cell are below a level and others not.
    fn is_crossed(&self, cell: usize, level: f64) -> bool {
        let [a, b, c, d] = self.corners(cell).map(|corner| corner >= level);
        a != b || a != c || a != d
    }

    /// The pieces of a level's lines in a cell; [`NO_EDGE`] to [`NO_EDGE`] where there are fewer than two.
    fn pieces(&self, cell: usize, level: f64) -> [Piece; 2] {
        const NONE: Piece = [NO_EDGE; 2];
        let corners = self.corners(cell);
        let mean = 0.25 * (corners[0] + corners[1] + corners[2] + corners[3]);
        if !mean.is_finite() {
            return [NONE; 2];
        }
        let [top, left] = [2 * cell, 2 * cell + 1];
        let [right, bottom] = [left + 2, top + 2 * self.columns];
        let above = corners.map(|corner| corner >= level);
        let (mut ends, mut count) = ([NO_EDGE; 4], 0);
        for (i, edge) in [top, right, bottom, left].iter().enumerate() {
            if above[i] != above[(i + 1) % 4] {
                ends[count % 4] = *edge;
                count += 1;
            }
        }
        let [a, b, c, d] = ends;
        if d != NO_EDGE && above[0] != (mean >= level) {
            [[d, a], [b, c]]
        } else {
            [[a, b], [c, d]]
        }
    }

    /// Where a level crosses an edge, by linear interpolation.
    fn crossing(&self, edge: usize, level: f64) -> DVec2 {
        let (from, down) = (edge / 2, edge % 2);
        let (step, along) = [(1, DVec2::X), (self.columns, DVec2::Y)][down];
        let corner = DVec2::new((from % self.columns) as f64, (from / self.columns) as f64);
        let (low, high) = (self.values[from], self.values[from + step]);
        corner + along * ((level - low) / (high - low))
    }
}

/// A line's piece in one cell, from one edge to another. Edges are numbered: twice the point that they start at, plus 0
/// for the one to the right and 1 for the one down.
type Piece = [usize; 2];

const NO_EDGE: usize = usize::MAX;

/// A line of equal value.
#[derive(Clone, Debug, PartialEq)]
pub struct Contour {
    /// Which of the levels asked for it has.
    pub level: usize,
    /// Its points, at least two, in grid coordinates; no two that follow each other are equal. A closed line ends where
    /// it begins, any other at the edge of the grid or of a hole in it.
    pub points: Vec<DVec2>,
}

impl Contour {
    /// Whether it ends where it begins.
    pub fn is_closed(&self) -> bool {
        self.points.first() == self.points.last()
    }
}

/// The lines of equal value at some levels, which have to ascend. Between the points of the grid values are taken to be
/// linear along its edges: lines of a linear function are exact, others are off by at most about an eighth of the second
/// difference from point to point, divided by the slope.
pub fn contours(grid: Grid<'_>, levels: &[f64]) -> Vec<Contour> {
    debug_assert!(levels.is_sorted(), "levels have to ascend");
    let mut found = Vec::new();
    let mut tracer = Tracer {
        grid,
        level: 0.0,
        mark: 0,
        seen: vec![0; 2 * grid.values.len()],
    };
    for (level, value) in levels.iter().enumerate() {
        tracer.level = *value;
        tracer.mark = level + 1;
        for cell in 0..grid.values.len() {
            if !grid.is_cell(cell) || !grid.is_crossed(cell, *value) {
                continue;
            }
            for [start, _] in grid.pieces(cell, *value) {
                let points = tracer.line(cell, start);
                if points.len() > 1 {
                    found.push(Contour { level, points });
                }
            }
        }
    }
    found
}

/// Follows the lines of one level.
struct Tracer<'a> {
    grid: Grid<'a>,
    level: f64,
    /// The level's number, counted from 1.
    mark: usize,
    /// For each edge the mark of the last level whose line through it has been followed.
    seen: Vec<usize>,
}

impl Tracer<'_> {
    /// The whole line that enters a cell through an edge, unless it is known or the edge is none.
    fn line(&mut self, cell: usize, edge: usize) -> Vec<DVec2> {
        if self.seen.get(edge).is_none_or(|seen| *seen == self.mark) {
            return Vec::new();
        }
        let (points, end_cell, end) = self.follow(cell, edge);
        if end == edge {
            return points;
        }
        // It has two ends, and we began somewhere between: back from this one to the other.
        self.follow(end_cell, end).0
    }

    /// Follows a line from an edge of a cell through that cell and on: its points, its last cell and its last edge.
    fn follow(&mut self, mut cell: usize, start: usize) -> (Vec<DVec2>, usize, usize) {
        let mut points = vec![self.grid.crossing(start, self.level)];
        let mut edge = start;
        loop {
            let pieces = self.grid.pieces(cell, self.level);
            let ends = pieces.as_flattened();
            // The other end of the piece that ends here.
            let Some(i) = ends.iter().position(|end| *end == edge) else {
                // A hole: the line ended at the edge to it.
                return (points, self.across(edge, cell), edge);
            };
            edge = ends[i ^ 1];
            self.seen[edge] = self.mark;
            let point = self.grid.crossing(edge, self.level);
            // A line through a point of the grid crosses several edges there.
            if points.last() != Some(&point) {
                points.push(point);
            }
            let next = self.across(edge, cell);
            if edge == start || !self.grid.is_cell(next) {
                return (points, cell, edge);
            }
            cell = next;
        }
    }

    /// The cell on the other side of an edge, if there is one.
    fn across(&self, edge: usize, cell: usize) -> usize {
        let (one, down) = (edge / 2, edge % 2);
        let other = one.wrapping_sub([self.grid.columns, 1][down]);
        if cell == one { other } else { one }
    }
}
