//! Boxes, lines and circles of a picture, worked out apart from the code under test.

use glam::DVec2;

/// A rectangle from its upper left to its lower right corner.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Box2 {
    pub(crate) low: DVec2,
    pub(crate) high: DVec2,
}

impl Box2 {
    pub(crate) fn new([low, high]: [DVec2; 2]) -> Self {
        Self { low, high }
    }

    pub(crate) fn centre(&self) -> DVec2 {
        0.5 * (self.low + self.high)
    }

    /// How far two rectangles reach into each other, along the axis where it is less; 0 or less when they are apart.
    pub(crate) fn overlap(&self, other: &Self) -> f64 {
        (self.high.min(other.high) - self.low.max(other.low)).min_element()
    }

    /// Whether the rectangle lies in a picture of this size, give or take the rounding of coordinates.
    pub(crate) fn is_in(&self, size: DVec2) -> bool {
        let slack = DVec2::splat(1e-9);
        self.low.cmpge(-slack).all() && self.high.cmple(size + slack).all()
    }

    /// The distance of a point from the rectangle; 0 inside it.
    pub(crate) fn distance(&self, point: DVec2) -> f64 {
        (self.low - point)
            .max(point - self.high)
            .max(DVec2::ZERO)
            .length()
    }

    /// The distance of the rectangle's farthest corner from a point.
    fn farthest(&self, point: DVec2) -> f64 {
        (self.low - point)
            .abs()
            .max((self.high - point).abs())
            .length()
    }

    /// Whether a straight line touches the rectangle: by separating axes, those of the rectangle and the line's normal.
    pub(crate) fn touches_line(&self, from: DVec2, to: DVec2) -> bool {
        let apart = from.max(to).cmplt(self.low).any() || from.min(to).cmpgt(self.high).any();
        let normal = (to - from).perp();
        let (middle, half) = (self.centre(), 0.5 * (self.high - self.low));
        let reach = half.dot(normal.abs());
        !apart && (middle - from).dot(normal).abs() <= reach
    }

    /// Whether a filled circle touches the rectangle.
    pub(crate) fn touches_disc(&self, centre: DVec2, radius: f64) -> bool {
        self.distance(centre) < radius
    }

    /// Whether the line of a circle touches the rectangle.
    pub(crate) fn touches_ring(&self, centre: DVec2, radius: f64) -> bool {
        self.distance(centre) < radius && self.farthest(centre) > radius
    }
}

/// The distance of a point from a straight line between two points.
fn distance_to_line(point: DVec2, from: DVec2, to: DVec2) -> f64 {
    let run = to - from;
    let part = if run == DVec2::ZERO {
        0.0
    } else {
        (point - from).dot(run) / run.length_squared()
    };
    point.distance(from + run * part.clamp(0.0, 1.0))
}

/// The distance of a rectangle from a line through points.
pub(crate) fn distance_to_path(area: &Box2, points: &[DVec2]) -> f64 {
    let corners = [
        area.low,
        area.high,
        DVec2::new(area.low.x, area.high.y),
        DVec2::new(area.high.x, area.low.y),
    ];
    let pairs = points.windows(2).map(|pair| (pair[0], pair[1]));
    pairs.fold(f64::INFINITY, |least, (from, to)| {
        if area.touches_line(from, to) {
            return 0.0;
        }
        let ends = area.distance(from).min(area.distance(to));
        let corners = corners.map(|corner| distance_to_line(corner, from, to));
        corners.into_iter().fold(least.min(ends), f64::min)
    })
}

#[test]
fn lines_and_circles_touch_a_box_where_they_should() {
    let area = Box2::new([DVec2::new(1.0, 1.0), DVec2::new(3.0, 2.0)]);
    let at = DVec2::new;
    assert!(area.touches_line(at(0.0, 0.0), at(4.0, 3.0)));
    assert!(area.touches_line(at(2.0, 1.5), at(2.1, 1.6)));
    // Its box overlaps, the line itself passes the corner.
    assert!(!area.touches_line(at(0.0, 1.6), at(1.6, 0.0)));
    assert!(!area.touches_line(at(3.1, 0.0), at(3.1, 9.0)));
    assert!(area.touches_disc(at(0.0, 1.5), 9.0) && !area.touches_ring(at(0.0, 1.5), 9.0));
    assert!(area.touches_ring(at(0.0, 1.5), 1.5) && !area.touches_disc(at(0.0, 1.5), 0.9));
    assert!(area.overlap(&Box2::new([at(2.5, 0.0), at(9.0, 9.0)])) > 0.4);
    assert!(area.overlap(&Box2::new([at(3.0, 0.0), at(9.0, 9.0)])) <= 0.0);
    assert!((distance_to_path(&area, &[at(0.0, 3.0), at(9.0, 3.0)]) - 1.0).abs() < 1e-12);
}
