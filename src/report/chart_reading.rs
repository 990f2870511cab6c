//! What a chart of an outcome shows: its points, the best of them, and where there is nothing to choose.

use glam::DVec2;

use super::course::Course;
use super::value::Style;
use crate::physics::{Flyby, Measure, boundary, peak_between};
use crate::scenario::Field;

/// The chart of an outcome against a setting, both in display units.
#[derive(Clone, Debug, PartialEq)]
pub struct ChartReading {
    /// The outcome as a function of the setting.
    pub course: Course,
    /// Points of the curve where the probe passes: part of the range (0..1) and outcome, which may be infinite.
    pub points: Vec<DVec2>,
    /// The present outcome; `None` where the probe strikes.
    pub now: Option<f64>,
    /// What kind of curve it is.
    pub shape: Shape,
    /// The best point, where there is one that is better than others.
    pub best: Option<Best>,
    /// The parts of the range, from and to, where the probe leaves the Sun and the aphelion is infinite.
    pub leaves: Vec<[f64; 2]>,
}

/// Kinds of curves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// There is none: the probe strikes everywhere.
    Strikes,
    /// There is none: the probe leaves the Sun everywhere.
    Leaves,
    /// Less change than the outcome's digits show: its middle, and how far it goes from there.
    Flat {
        /// The middle value.
        middle: f64,
        /// The largest distance from it.
        within: f64,
    },
    /// Something to see.
    Curve,
}

/// The best point of a curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Best {
    /// The setting's value.
    pub x: f64,
    /// The outcome there.
    pub value: f64,
    /// Where on the curve it lies.
    pub place: Place,
    /// Whether it is a loss of speed or energy, because no gain is to be had.
    pub is_loss: bool,
}

/// Where on a curve its best point lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// With worse points on both sides.
    Inside,
    /// At the planet's surface.
    Surface,
    /// At the end of the range.
    End,
}

/// Points of the curve.
const POINTS: u32 = 160;
/// A part of the way from point to point, beside one of them, that is rounding only.
const SHORT: f64 = 1e-6;

impl ChartReading {
    /// Reads the chart of an outcome against the periapsis, the approach angle or v-infinity (whatever else is asked for
    /// counts as the periapsis).
    pub fn of(flyby: &Flyby, measure: Measure, against: Field) -> Self {
        let course = Course::new(flyby, measure, against);
        let chart = Self::read(&course);
        let at_the_end = chart.best.is_some_and(|best| best.place == Place::End);
        if course.against == Field::Periapsis && at_the_end {
            let farther = Self::read(&course.farther());
            if farther.best.is_some_and(|best| best.place == Place::Inside) {
                return farther;
            }
        }
        chart
    }

    fn read(course: &Course) -> Self {
        let now = (!course.strikes()).then(|| course.value(course.now()));
        let mut chart = Self {
            course: *course,
            points: Vec::new(),
            now,
            shape: Shape::Strikes,
            best: None,
            leaves: Vec::new(),
        };
        if let Some(from) = course.passes_from() {
            chart.sample(course.range.part(from));
            chart.find_leaves();
            chart.shape = chart.find_shape();
            if chart.shape == Shape::Curve && chart.leaves.is_empty() {
                chart.best = chart.find_best();
            }
        }
        chart
    }

    fn sample(&mut self, from: f64) {
        for i in 0..POINTS {
            let part = from + (1.0 - from) * f64::from(i) / f64::from(POINTS - 1);
            self.points.push(DVec2::new(part, self.at(part)));
        }
    }

    /// The outcome at a part of the range.
    fn at(&self, part: f64) -> f64 {
        self.course.value(self.course.range.at(part))
    }

    fn find_leaves(&mut self) {
        let mut ends = Vec::new();
        let mut last = DVec2::new(self.points[0].x, 0.0);
        for point in &self.points {
            if point.y.is_finite() != last.y.is_finite() {
                let stays = |part| self.at(part).is_finite();
                ends.push(boundary([last.x, point.x], &stays));
            }
            last = *point;
        }
        // It has not come to an end where the range has.
        ends.push(last.x);
        self.leaves = ends.as_chunks().0.to_vec();
    }

    /// The least and the greatest finite outcome; `None` where none is finite.
    pub fn extent(&self) -> Option<[f64; 2]> {
        let mut extent = None;
        for point in &self.points {
            if point.y.is_finite() {
                let [low, high] = extent.unwrap_or([point.y; 2]);
                extent = Some([low.min(point.y), high.max(point.y)]);
            }
        }
        extent
    }

    fn find_shape(&self) -> Shape {
        let Some([low, high]) = self.extent() else {
            return Shape::Leaves;
        };
        let middle = 0.5 * (low + high);
        let visible = match self.course.words().style {
            Style::Wide => 2e-3 * high,
            Style::Tenths => 0.1,
            _ => 0.01,
        };
        if high - low <= visible && self.leaves.is_empty() {
            Shape::Flat {
                middle,
                within: 0.5 * (high - low),
            }
        } else {
            Shape::Curve
        }
    }

    /// The largest outcome; the smallest perihelion; the largest loss where nothing is to be gained.
    fn find_best(&self) -> Option<Best> {
        let [_, high] = self.extent()?;
        let is_loss = match self.course.measure {
            Measure::SpeedChange => high < 0.005,
            Measure::EnergyChange => high < 0.05,
            // In the plane, with the orbit's sense turned round: a step, on which no point is better than others.
            Measure::Inclination if high > 180.0 - 1e-6 => return None,
            _ => false,
        };
        let sign = if is_loss || self.course.measure == Measure::Perihelion {
            -1.0
        } else {
            1.0
        };
        let (part, place) = self.highest(sign);
        let x = self.course.range.at(part);
        let x = match place {
            Place::Surface => 1.0,
            _ if self.course.against == Field::Approach && x.abs() > 180.0 => {
                x - 360.0 * x.signum()
            }
            _ => x,
        };
        Some(Best {
            x,
            value: self.course.value(x),
            place,
            is_loss,
        })
    }

    /// The part of the range with the largest outcome times `sign`, of all peaks among the points.
    fn highest(&self, sign: f64) -> (f64, Place) {
        let height = |part: f64| sign * self.at(part);
        let last = self.points.len() - 1;
        let step = self.points[1].x - self.points[0].x;
        let goes_round = self.course.against == Field::Approach;
        let beside = |i: usize| {
            let point = self.points.get(i);
            point.map_or(f64::NEG_INFINITY, |point| sign * point.y)
        };
        let mut best = (f64::NEG_INFINITY, 0.0, Place::Inside);
        for (i, point) in self.points.iter().enumerate() {
            let here = sign * point.y;
            if beside(i.wrapping_sub(1)) >= here || beside(i + 1) > here {
                continue;
            }
            // Beyond half a turn an angle goes on at the other end.
            let reach = |is_end: bool| if is_end && !goes_round { 0.0 } else { step };
            let peak = peak_between(point.x - reach(i == 0), point.x + reach(i == last), &height);
            let there = height(peak);
            let is_end = !goes_round && (i == 0 || i == last);
            let found = if there > here && (peak - point.x).abs() > SHORT * step {
                (there, peak, Place::Inside)
            } else if !is_end {
                (here, point.x, Place::Inside)
            } else if i == 0 && self.course.against == Field::Periapsis {
                (here, point.x, Place::Surface)
            } else {
                (here, point.x, Place::End)
            };
            if found.0 > best.0 {
                best = found;
            }
        }
        (best.1, best.2)
    }

    /// Whether the outcome gets better all the way towards the planet.
    pub(super) fn closer_is_better(&self, sign: f64) -> bool {
        let mut pairs = self.points.windows(2);
        pairs.all(|pair| sign * pair[0].y >= sign * pair[1].y)
    }
}
