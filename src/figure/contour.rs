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

    /// Where a level crosses an edge, by linear interpolation.
    fn crossing(&self, edge: usize, level: f64) -> DVec2 {
        let from = edge / 2;
        let (to, step) = if edge.is_multiple_of(2) {
            (from + 1, DVec2::X)
        } else {
            (from + self.columns, DVec2::Y)
        };
        let corner = DVec2::new((from % self.columns) as f64, (from / self.columns) as f64);
        let (low, high) = (self.values[from], self.values[to]);
        corner + step * ((level - low) / (high - low))
    }
}

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
    let pieces = pieces(&grid, levels);
    let mut owners = vec![0; 2 * grid.values.len()];
    let mut found = Vec::new();
    for (level, pieces) in pieces.into_iter().enumerate() {
        for edges in Chains::of(pieces, &mut owners) {
            let mut points: Vec<DVec2> = Vec::with_capacity(edges.len());
            for edge in edges {
                // A line through a point of the grid crosses several edges there.
                let point = grid.crossing(edge, levels[level]);
                if points.last() != Some(&point) {
                    points.push(point);
                }
            }
            if points.len() > 1 {
                found.push(Contour { level, points });
            }
        }
    }
    found
}

/// A line's piece in one cell, from one edge to another. Edges are numbered: twice the point that they start at, plus 0
/// for the one to the right and 1 for the one down.
type Piece = [usize; 2];

/// The pieces of every level, in one pass over the cells.
fn pieces(grid: &Grid<'_>, levels: &[f64]) -> Vec<Vec<Piece>> {
    let mut found = vec![Vec::new(); levels.len()];
    let columns = grid.columns;
    for row in 1..grid.rows() {
        let lower = row * columns;
        for point in lower - columns..lower - 1 {
            let [a, b, c, d] = [point, point + 1, point + columns + 1, point + columns];
            let corners = [a, b, c, d].map(|corner| grid.values[corner]);
            let low = least(least(corners[0], corners[1]), least(corners[2], corners[3]));
            let high = most(most(corners[0], corners[1]), most(corners[2], corners[3]));
            let sum: f64 = corners.iter().sum();
            let first = levels.partition_point(|level| *level <= low);
            let crossed = levels[first..].iter().take_while(|level| **level <= high);
            for (level, pieces) in crossed.zip(&mut found[first..]) {
                if sum.is_finite() {
                    let edges = [2 * a, 2 * b + 1, 2 * d, 2 * a + 1];
                    push_pieces(
                        pieces,
                        corners.map(|corner| corner >= *level),
                        edges,
                        0.25 * sum >= *level,
                    );
                }
            }
        }
    }
    found
}

/// The smaller of two numbers; what is not a number is found by the sum.
fn least(a: f64, b: f64) -> f64 {
    if a < b { a } else { b }
}

fn most(a: f64, b: f64) -> f64 {
    if a > b { a } else { b }
}

/// The pieces in one cell: its corners, and its edges from each corner to the next, both round the cell.
fn push_pieces(pieces: &mut Vec<Piece>, above: [bool; 4], edges: [usize; 4], middle_above: bool) {
    let [top, right, bottom, left] = edges;
    let [a, b, c, d] = above;
    let crossed = [a != b, b != c, c != d, d != a];
    if crossed == [true; 4] {
        if a == middle_above {
            pieces.extend([[top, right], [bottom, left]]);
        } else {
            pieces.extend([[left, top], [right, bottom]]);
        }
        return;
    }
    let mut ends = edges
        .into_iter()
        .zip(crossed)
        .filter(|(_, crossed)| *crossed);
    if let (Some((from, _)), Some((to, _))) = (ends.next(), ends.next()) {
        pieces.push([from, to]);
    }
}

/// The pieces of one level, joined end to end.
struct Chains {
    pieces: Vec<Piece>,
    /// At each end of each piece, the piece that goes on there, counted from 1; 0 for none.
    next: Vec<[u32; 2]>,
    done: Vec<bool>,
}

impl Chains {
    /// The chains, open ones first, each as the edges that it crosses. `owners` has a place for every edge and is 0
    /// everywhere before and after.
    fn of(pieces: Vec<Piece>, owners: &mut [u32]) -> Vec<Vec<usize>> {
        let mut next = vec![[0; 2]; pieces.len()];
        for (piece, ends) in pieces.iter().enumerate() {
            for (end, edge) in ends.iter().enumerate() {
                // An edge has a cell on either side, and each has at most one piece that ends there.
                let owner = std::mem::replace(&mut owners[*edge], piece as u32 + 1);
                if owner > 0 {
                    let other = owner as usize - 1;
                    next[piece][end] = owner;
                    next[other][usize::from(pieces[other][1] == *edge)] = piece as u32 + 1;
                }
            }
        }
        for edge in pieces.as_flattened() {
            owners[*edge] = 0;
        }
        let done = vec![false; pieces.len()];
        Self { pieces, next, done }.all()
    }

    fn all(mut self) -> Vec<Vec<usize>> {
        let mut chains = Vec::new();
        for piece in 0..self.pieces.len() {
            if let Some(end) = self.next[piece].iter().position(|next| *next == 0) {
                chains.extend(self.walk(piece, end));
            }
        }
        for piece in 0..self.pieces.len() {
            chains.extend(self.walk(piece, 0));
        }
        chains
    }

    /// The edges from one end of a piece on, as far as they go; `None` if the piece is in a chain already.
    fn walk(&mut self, mut piece: usize, mut end: usize) -> Option<Vec<usize>> {
        if self.done[piece] {
            return None;
        }
        let mut edges = vec![self.pieces[piece][end]];
        while !self.done[piece] {
            self.done[piece] = true;
            let edge = self.pieces[piece][1 - end];
            edges.push(edge);
            let next = self.next[piece][1 - end];
            if next == 0 {
                break;
            }
            piece = next as usize - 1;
            end = usize::from(self.pieces[piece][1] == edge);
        }
        Some(edges)
    }
}
