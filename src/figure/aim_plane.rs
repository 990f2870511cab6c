//! The aim plane: where the probe is aimed, seen along its incoming direction, with an outcome as colours and lines.

use glam::DVec2;

use super::aim_map::{Lines, Window};
use super::contour::Contour;
use super::drawing::Drawing;
use super::picture::{Dash, Mark, Picture, Role};
use super::raster::Raster;
use super::room::Area;
use super::stage::letter_size;
use crate::physics::{Approach, Body, Flyby, Goal, Measure, Planet};
use crate::report::Aiming;

/// What the picture shows.
#[derive(Clone, Copy, Debug)]
pub struct AimScene<'a> {
    /// The pass.
    pub flyby: &'a Flyby,
    /// The outcome that the colours show.
    pub measure: Measure,
    /// What is aimed for, if it makes sense here.
    pub aiming: Option<&'a Aiming>,
    /// Half the side of the piece of the plane shown, km: see [`aim_window_km`].
    pub half_km: f64,
    /// Cells to a side of the map.
    pub columns: usize,
}

/// Half the side, km, of the piece of the aim plane that shows a pass: four strike radii, or as much as takes in the aim.
pub fn aim_window_km(flyby: &Flyby) -> f64 {
    let [t, r] = flyby.aim_point_km;
    let strike = flyby.approach().strike_radius_km();
    (4.0 * strike).max(t.abs().max(r.abs()) / 0.85)
}

/// Where the map is in a picture of a size: its upper left corner and its side.
pub fn aim_square(size: DVec2) -> (DVec2, f64) {
    let letter = letter_size(size);
    let room = size - DVec2::new(letter, LEGEND * letter);
    let side = room.min_element().max(1.0);
    (DVec2::new(0.5 * (size.x - side), 0.5 * letter), side)
}

/// The point (B·T, B·R), km, at a place of the picture.
pub fn aim_point_at(place: DVec2, half_km: f64, size: DVec2) -> [f64; 2] {
    let (at, side) = aim_square(size);
    let part = (place - at) * (2.0 / side) - DVec2::ONE;
    (part * half_km).to_array()
}

/// The place of the picture where a point (B·T, B·R), km, is.
pub fn aim_place([t, r]: [f64; 2], half_km: f64, size: DVec2) -> DVec2 {
    let (at, side) = aim_square(size);
    at + (DVec2::new(t, r) / half_km + DVec2::ONE) * (0.5 * side)
}

/// Height of the legend and the margins, letter heights.
const LEGEND: f64 = 5.2;

/// The aim plane's picture.
pub fn aim_plane(scene: &AimScene<'_>, size: DVec2) -> Picture {
    let letter = letter_size(size);
    let (at, side) = aim_square(size);
    let approach = scene.flyby.approach();
    let name = approach.planet.name;
    let mut plane = AimPicture {
        scene,
        approach: &approach,
        at,
        side,
        drawing: Drawing::new(
            size,
            letter,
            String::from("Aim plane: where the probe is aimed past ") + name,
        ),
    };
    plane.draw();
    plane.drawing.picture
}

pub(super) struct AimPicture<'a> {
    pub(super) scene: &'a AimScene<'a>,
    pub(super) approach: &'a Approach,
    pub(super) at: DVec2,
    pub(super) side: f64,
    pub(super) drawing: Drawing,
}

impl AimPicture<'_> {
    fn draw(&mut self) {
        let window = Window {
            approach: self.approach,
            half_km: self.scene.half_km,
        };
        let cells = window.cells(self.scene.measure, self.scene.columns);
        self.drawing.picture.marks.push(Mark::Raster(Raster {
            at: self.at,
            size: DVec2::splat(self.side),
            columns: self.scene.columns,
            cells: cells.cells.into(),
            map: cells.scale.map(),
        }));
        self.legend(&cells.scale);
        let lines = window.lines(self.goal());
        let named = self.lines(&lines);
        self.axes();
        self.planet();
        self.marks();
        self.axis_words();
        self.names(&named);
        self.flat_note(&cells.scale);
    }

    fn goal(&self) -> Option<Goal> {
        let goal = self.scene.aiming?.search.goal;
        (!goal.is_most()).then_some(goal)
    }

    /// Where an aim point, km, is in the picture.
    pub(super) fn place(&self, [t, r]: [f64; 2]) -> DVec2 {
        aim_place([t, r], self.scene.half_km, self.drawing.picture.size)
    }

    pub(super) fn place_of_part(&self, part: DVec2) -> DVec2 {
        self.at + (part + DVec2::ONE) * (0.5 * self.side)
    }

    /// A length, km, in picture units.
    pub(super) fn length(&self, km: f64) -> f64 {
        0.5 * self.side * km / self.scene.half_km
    }

    /// The lines of equal value; returns what each is called, with places for its name.
    fn lines(&mut self, lines: &Lines) -> Vec<(&'static str, Vec<DVec2>)> {
        let here = self.approach.planet.orbit_km;
        let mut named = Vec::new();
        for &body in &Body::ALL {
            let planet = Planet::of(body);
            if planet.orbit_km < here * (1.0 - 1e-9) {
                let found = lines.perihelion(planet.orbit_km);
                self.name(&mut named, planet.name, &found, Dash::Dotted, 1.2);
            }
        }
        let found = lines.inverse_aphelion(0.0);
        self.name(&mut named, "leaves the Sun", &found, Dash::Dashed, 1.6);
        // The farthest first, as the distance comes down from leaving the Sun.
        for &body in Body::ALL.iter().rev() {
            let planet = Planet::of(body);
            if planet.orbit_km > here * (1.0 + 1e-9) {
                let found = lines.inverse_aphelion(1.0 / planet.orbit_km);
                self.name(&mut named, planet.name, &found, Dash::Dotted, 1.2);
            }
        }
        self.name(
            &mut named,
            "no change",
            &lines.no_change(),
            Dash::Solid,
            1.4,
        );
        if self.goal().is_some() {
            self.name(&mut named, "goal", &lines.goal(), Dash::Solid, 2.8);
        }
        named
    }

    /// Draws lines that have one name.
    fn name(
        &mut self,
        named: &mut Vec<(&'static str, Vec<DVec2>)>,
        name: &'static str,
        found: &[Contour],
        dash: Dash,
        width: f64,
    ) {
        for contour in found {
            let places = self.line(contour, dash, width);
            named.push((name, places));
        }
    }

    /// One line, and the places along it that lie outside the strike circle.
    fn line(&mut self, contour: &Contour, dash: Dash, width: f64) -> Vec<DVec2> {
        let centre = self.place([0.0, 0.0]);
        let strike = 1.1 * self.length(self.approach.strike_radius_km());
        let (mut points, mut outside) = (Vec::new(), Vec::new());
        for part in &contour.points {
            let point = self.place_of_part(*part);
            points.push(point);
            if point.distance(centre) > strike {
                outside.push(point);
            }
        }
        let stroke = self.drawing.stroke(Role::Ink, width, dash);
        self.drawing.cased_line(points, stroke);
        // Some of them, from a quarter on: the middle of a line is a better place for its name than an end, which may be in a
        // corner.
        let count = outside.len().div_ceil(4);
        let mut places = Vec::new();
        for i in 0..count {
            places.push(outside[4 * ((i + count / 4) % count)]);
        }
        places
    }

    /// The map's square.
    pub(super) fn area(&self) -> Area {
        Area {
            low: self.at,
            high: self.at + DVec2::splat(self.side),
        }
    }

    /// The two axes.
    fn axes(&mut self) {
        let stroke = self.drawing.stroke(Role::Quiet, 1.0, Dash::Solid);
        for &across in &[DVec2::X, DVec2::Y] {
            let (from, to) = (self.place_of_part(-across), self.place_of_part(across));
            self.drawing.cased_line(vec![from, to], stroke);
        }
    }
}
