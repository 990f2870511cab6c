//! Lines of equal value: where they run, how they are joined, where they end.

#![allow(
    clippy::float_cmp,
    reason = "along an edge of the grid one coordinate is a whole number, exactly"
)]

use fastrand::Rng;
use glam::{DVec2, dvec2};
use two_frames::figure::{Contour, Grid, contours};

/// Values of a function at the points of a grid, row by row.
fn values(columns: usize, rows: usize, function: impl Fn(f64, f64) -> f64) -> Vec<f64> {
    let points = (0..rows).flat_map(|y| (0..columns).map(move |x| (x as f64, y as f64)));
    points.map(|(x, y)| function(x, y)).collect()
}

fn lines(columns: usize, values: &[f64], levels: &[f64]) -> Vec<Contour> {
    contours(Grid { columns, values }, levels)
}

/// Whether a point lies on the edge of a grid.
fn on_edge(point: DVec2, columns: usize, rows: usize) -> bool {
    let last = dvec2(columns as f64 - 1.0, rows as f64 - 1.0);
    point.x == 0.0 || point.y == 0.0 || point.x == last.x || point.y == last.y
}

/// A quadratic is off by an eighth of its second difference, 2, at most: elementary interpolation error, h²/8 max |f''|.
///
/// Source: common practice, no source.
#[test]
fn a_circle_is_one_closed_line_near_the_true_circle() {
    let centre = dvec2(30.3, 28.7);
    let square = |x, y| dvec2(x, y).distance_squared(centre);
    for radius in [1.5, 7.0, 20.0, 25.25] {
        let found = lines(61, &values(61, 61, square), &[radius * radius]);
        assert_eq!(found.len(), 1, "{radius}");
        let line = &found[0];
        assert!(line.is_closed() && line.points.len() > 8, "{radius}");
        for point in &line.points {
            let error = (square(point.x, point.y) - radius * radius).abs();
            assert!(error <= 0.25 + 1e-12, "{radius}: {point} is off by {error}");
        }
        // It goes round once: the angles from point to point add up to a whole turn.
        let turn: f64 = line
            .points
            .windows(2)
            .map(|pair| (pair[0] - centre).angle_to(pair[1] - centre))
            .sum();
        let whole = std::f64::consts::TAU;
        assert!((turn.abs() - whole).abs() < 1e-9, "{radius}: {turn}");
    }
}

#[test]
fn a_straight_line_is_exact_and_open() {
    let plane = values(20, 12, |x, y| 2.0 * x - 0.5 * y + 3.0);
    let found = lines(20, &plane, &[17.25]);
    assert_eq!(found.len(), 1);
    let points = &found[0].points;
    assert!(!found[0].is_closed());
    for point in points {
        let value = 2.0 * point.x - 0.5 * point.y + 3.0;
        // Two roundings of numbers below 64.
        assert!((value - 17.25).abs() < 2e-14, "{point}: {value}");
    }
    let mut ends = [points[0].y, points[points.len() - 1].y];
    ends.sort_by(f64::total_cmp);
    assert_eq!(ends, [0.0, 11.0]);
}

#[test]
fn a_line_through_points_of_the_grid_has_each_of_them_once() {
    for level in [3.0, 5.0] {
        let found = lines(9, &values(9, 6, |x, y| x + 0.0 * y), &[level]);
        assert_eq!(found.len(), 1);
        let mut rows: Vec<_> = found[0].points.iter().map(|point| point.y).collect();
        rows.sort_by(f64::total_cmp);
        assert_eq!(rows, [0.0, 1.0, 2.0, 3.0, 4.0, 5.0], "{level}");
        assert!(found[0].points.iter().all(|point| point.x == level));
    }
    // A single summit at the level itself is no line.
    let summit = values(5, 5, |x, y| -dvec2(x - 2.0, y - 2.0).length_squared());
    assert_eq!(lines(5, &summit, &[0.0]), []);
}

#[test]
fn two_islands_are_two_lines() {
    let hills = |x: f64, y: f64| {
        let hill = |at: DVec2| 1.0 / (1.0 + dvec2(x, y).distance_squared(at));
        hill(dvec2(8.2, 10.1)) + hill(dvec2(22.4, 10.3))
    };
    let found = lines(31, &values(31, 21, hills), &[0.1]);
    assert_eq!(found.len(), 2);
    let mut middles: Vec<_> = found
        .iter()
        .map(|line| line.points.iter().sum::<DVec2>() / line.points.len() as f64)
        .collect();
    middles.sort_by(|a, b| a.x.total_cmp(&b.x));
    assert!(found.iter().all(Contour::is_closed));
    assert!(middles[0].distance(dvec2(8.2, 10.1)) < 0.5, "{middles:?}");
    assert!(middles[1].distance(dvec2(22.4, 10.3)) < 0.5, "{middles:?}");
}

/// Corners 1, 0 / 0, 1: the mean is a half. A level below it joins the high corners, so that each line cuts off a low
/// one; a level above it joins the low ones.
#[test]
fn a_saddle_is_decided_by_the_mean_of_its_corners() {
    let saddle = [1.0, 0.0, 0.0, 1.0];
    for (level, cut_off) in [
        (0.4, [dvec2(1.0, 0.0), dvec2(0.0, 1.0)]),
        (0.6, [dvec2(0.0, 0.0), dvec2(1.0, 1.0)]),
    ] {
        let found = lines(2, &saddle, &[level]);
        assert_eq!(found.len(), 2, "{level}");
        for corner in cut_off {
            // Both ends lie on the two edges that meet there.
            let cuts = |line: &&Contour| {
                let near = |point: &DVec2| point.x == corner.x || point.y == corner.y;
                line.points.len() == 2 && line.points.iter().all(near)
            };
            assert_eq!(found.iter().filter(cuts).count(), 1, "{level}: {found:?}");
        }
    }
}

#[test]
fn nothing_crosses_a_level_out_of_range() {
    let plane = values(8, 8, |x, y| x + y);
    assert_eq!(lines(8, &plane, &[-0.5, 14.5, f64::INFINITY]), []);
    assert_eq!(lines(8, &plane, &[]), []);
    assert_eq!(lines(8, &[1.0; 64], &[1.0]), [], "flat at the level");
    assert_eq!(lines(0, &[], &[1.0]), []);
    assert_eq!(lines(1, &[0.0, 2.0], &[1.0]), [], "no cell");
    assert_eq!(lines(2, &[0.0, 2.0], &[1.0]), [], "no cell");
}

#[test]
fn no_line_goes_through_a_hole() {
    for hole in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let mut plane = values(11, 11, |x, _| x);
        plane[5 * 11 + 4] = hole;
        let found = lines(11, &plane, &[4.5]);
        let mut spans: Vec<_> = found
            .iter()
            .map(|line| {
                let rows = line.points.iter().map(|point| point.y);
                (
                    rows.clone().fold(f64::MAX, f64::min),
                    rows.fold(0.0, f64::max),
                )
            })
            .collect();
        spans.sort_by(|a, b| a.0.total_cmp(&b.0));
        assert_eq!(spans, [(0.0, 4.0), (6.0, 10.0)], "{hole}");
    }
}

#[test]
fn lines_know_their_level() {
    let plane = values(9, 5, |x, _| x);
    let found = lines(9, &plane, &[-1.0, 0.5, 2.25, 2.5, 7.75, 9.0]);
    let levels: Vec<_> = found
        .iter()
        .map(|line| (line.level, line.points[0].x))
        .collect();
    assert_eq!(levels, [(1, 0.5), (2, 2.25), (3, 2.5), (4, 7.75)]);
}

/// On any grid: each edge between a value below a level and one above it is crossed by exactly one line, once; lines step
/// from edge to edge of one cell, and end only at the edge of the grid.
#[test]
fn every_crossed_edge_is_on_one_line() {
    let mut rng = Rng::with_seed(1);
    for _ in 0..200 {
        let (columns, rows) = (rng.usize(2..14), rng.usize(2..14));
        let values: Vec<_> = (0..columns * rows).map(|_| rng.f64()).collect();
        let at = |x: usize, y: usize| values[y * columns + x];
        let level = rng.f64();
        let crosses = |a: f64, b: f64| usize::from((a >= level) != (b >= level));
        let mut edges = 0;
        for (x, y) in (0..rows).flat_map(|y| (0..columns).map(move |x| (x, y))) {
            edges += if x + 1 < columns {
                crosses(at(x, y), at(x + 1, y))
            } else {
                0
            };
            edges += if y + 1 < rows {
                crosses(at(x, y), at(x, y + 1))
            } else {
                0
            };
        }
        let mut crossings = Vec::new();
        for line in lines(columns, &values, &[level]) {
            for pair in line.points.windows(2) {
                let middle = 0.5 * (pair[0] + pair[1]);
                let reach = (pair[0] - pair[1]).abs().max_element();
                assert!(
                    reach <= 1.0,
                    "{} to {} is more than a cell",
                    pair[0],
                    pair[1]
                );
                assert!(middle.fract().min_element() > 0.0, "{middle} is in no cell");
            }
            let ends = [line.points[0], line.points[line.points.len() - 1]];
            let closed = usize::from(line.is_closed());
            assert!(closed == 1 || ends.iter().all(|end| on_edge(*end, columns, rows)));
            crossings.extend_from_slice(&line.points[closed..]);
        }
        assert_eq!(crossings.len(), edges, "{columns} x {rows}");
        crossings.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
        crossings.dedup();
        assert_eq!(crossings.len(), edges, "an edge is crossed twice");
    }
}
