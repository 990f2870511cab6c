//! The values of the aim plane's map: one outcome for each cell, the colours that they get, and the lines of equal value.

use glam::DVec2;

use super::color_map::ColorMap;
use super::contour::{Contour, Grid, contours};
use super::raster::Raster;
use crate::physics::{Approach, Goal, Measure};

/// A square piece of an aim plane, the planet's centre in the middle.
#[derive(Clone, Copy)]
pub(super) struct Window<'a> {
    pub(super) approach: &'a Approach,
    /// Half the side, km.
    pub(super) half_km: f64,
}

/// How an outcome's values become colours.
#[derive(Clone, Copy, Debug)]
pub(super) struct Scale {
    measure: Measure,
    /// Core units at the lowest and the highest colour.
    pub(super) low: f64,
    pub(super) high: f64,
    /// The least and the greatest value outside the strike circle, core units.
    pub(super) found: [f64; 2],
}

impl Scale {
    /// Values about zero have zero in the middle of the colours; the rest begins where it can begin.
    fn new(measure: Measure, found: [f64; 2], approach: &Approach) -> Self {
        let orbit = approach.planet.orbit_km;
        let [least, most] = found;
        let (low, high) = match measure {
            Measure::SpeedChange | Measure::EnergyChange => {
                let size = most.max(-least);
                (-size, size)
            }
            // One over the distance, out to infinitely far.
            Measure::Aphelion => (least, most),
            Measure::Perihelion => (0.0, orbit),
            Measure::Inclination | Measure::Turn | Measure::VelocityChange => (0.0, most),
        };
        Self {
            measure,
            low,
            high,
            found,
        }
    }

    pub(super) fn map(&self) -> ColorMap {
        match self.measure {
            Measure::SpeedChange | Measure::EnergyChange => ColorMap::Vik,
            _ => ColorMap::Batlow,
        }
    }

    /// The part of the way from the lowest to the highest colour.
    pub(super) fn part(&self, value: f64) -> f64 {
        if self.measure == Measure::Aphelion {
            let whole = 1.0 - self.low / self.high;
            if whole > 0.0 {
                (1.0 - self.low / value) / whole
            } else {
                0.5
            }
        } else if self.high > self.low {
            (value - self.low) / (self.high - self.low)
        } else {
            0.5
        }
    }

    /// Whether the colours hardly tell anything: the values differ by less than a reading shows.
    pub(super) fn is_flat(&self) -> bool {
        let [least, most] = self.found;
        match self.measure {
            Measure::SpeedChange | Measure::VelocityChange => most - least < 0.005,
            Measure::EnergyChange => most - least < 0.05,
            Measure::Inclination | Measure::Turn => most - least < 1e-3,
            Measure::Aphelion => 1.0 - least / most < 1e-3 || least.is_infinite(),
            Measure::Perihelion => most - least < 1e-3 * self.high,
        }
    }
}

/// The map's cells and how to read them.
pub(super) struct Cells {
    pub(super) cells: Vec<u8>,
    pub(super) scale: Scale,
}

impl Window<'_> {
    /// The point, km, at a part of the way from the middle to the edges: x to the right along T, y down along R.
    fn point(&self, part: DVec2) -> [f64; 2] {
        [part.x * self.half_km, part.y * self.half_km]
    }

    /// The map with so many cells to a side. One value a cell, computed once; nothing is allocated for a cell.
    pub(super) fn cells(&self, measure: Measure, columns: usize) -> Cells {
        let strike = self.approach.strike_radius_km();
        let mut values = Vec::with_capacity(columns * columns);
        let mut found = [f64::INFINITY, f64::NEG_INFINITY];
        let part = |i: usize| (2 * i + 1) as f64 / columns as f64 - 1.0;
        for row in 0..columns {
            let r = part(row) * self.half_km;
            for column in 0..columns {
                let t = part(column) * self.half_km;
                // What strikes lies under the strike circle's disc.
                if t * t + r * r < strike * strike {
                    values.push(f64::NAN);
                    continue;
                }
                let value = measure.of(&self.approach.aimed([t, r]));
                found = [found[0].min(value), found[1].max(value)];
                values.push(value);
            }
        }
        let scale = Scale::new(measure, found, self.approach);
        let mut cells = Vec::with_capacity(values.len());
        for value in values {
            cells.push(Raster::cell(scale.part(value)));
        }
        Cells { cells, scale }
    }

    /// The lines of equal value, each with its points as parts of the way from the middle to the edges.
    pub(super) fn lines(&self, goal: Option<Goal>) -> Lines {
        let size = POINTS * POINTS;
        let mut fields: [Vec<f64>; 4] = std::array::from_fn(|_| Vec::with_capacity(size));
        let part = |i: usize| 2.0 * i as f64 / (POINTS - 1) as f64 - 1.0;
        let forward = self.approach.aim_plane.s.y;
        for row in 0..POINTS {
            for column in 0..POINTS {
                let pass = self
                    .approach
                    .aimed(self.point(DVec2::new(part(column), part(row))));
                let path = pass.sun_path();
                fields[0].push(pass.forward_part() - forward);
                fields[1].push(path.inverse_aphelion());
                fields[2].push(path.perihelion_km());
                fields[3].push(goal.map_or(1.0, |goal| goal.excess(&pass)));
            }
        }
        Lines { fields }
    }
}

/// Points to a side of the grid that lines are found on.
const POINTS: usize = 97;

/// Values on the grid that lines are found on: forward part less that of the approach, 1/aphelion, perihelion, and the
/// excess over the goal.
pub(super) struct Lines {
    fields: [Vec<f64>; 4],
}

impl Lines {
    /// Where the speed round the Sun does not change.
    pub(super) fn no_change(&self) -> Vec<Contour> {
        self.of(0, 0.0)
    }

    /// Where 1/aphelion, 1/km, has a value; 0 is where the probe just leaves the Sun.
    pub(super) fn inverse_aphelion(&self, level: f64) -> Vec<Contour> {
        self.of(1, level)
    }

    /// Where the perihelion, km, has a value.
    pub(super) fn perihelion(&self, level: f64) -> Vec<Contour> {
        self.of(2, level)
    }

    /// Where the goal is met.
    pub(super) fn goal(&self) -> Vec<Contour> {
        self.of(3, 0.0)
    }

    fn of(&self, field: usize, level: f64) -> Vec<Contour> {
        let grid = Grid {
            columns: POINTS,
            values: &self.fields[field],
        };
        let mut found = contours(grid, &[level]);
        for contour in &mut found {
            for point in &mut contour.points {
                *point = *point * (2.0 / (POINTS - 1) as f64) - DVec2::ONE;
            }
        }
        found
    }
}
