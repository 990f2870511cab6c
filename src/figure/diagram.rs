//! The velocity diagram: the planet's velocity plus the velocity relative to the planet is the velocity round the Sun.
//! It joins the two stages.

use glam::{DVec2, DVec3};

use super::label::{Words, place_at_best, place_near, text_width};
use super::picture::{Arrow, Dash, Head, Mark, Picture, Role, Shaft, Stroke};
use super::room::Room;
use super::scene::Scene;
use super::stage::letter_size;
use super::view::View;
use crate::physics::{Encounter, Flyby};
use crate::report::{degrees, fixed};

/// A direction whose north component is smaller than this counts as lying in the orbit plane.
const IN_PLANE: f64 = 1e-9;

/// Points of a whole circle.
const CIRCLE: i32 = 72;

/// The velocity diagram, seen from north, as large as `size` allows.
pub fn velocity_diagram(scene: &Scene<'_>, size: DVec2) -> Picture {
    let letter = letter_size(size);
    let mut diagram = Diagram {
        flyby: scene.flyby,
        view: view(scene.flyby, size, letter),
        letter,
        picture: Picture::new(
            size,
            "Velocity diagram: relative to the planet + planet = round the Sun",
        ),
        room: Room::new(size),
    };
    diagram.draw();
    diagram.picture
}

/// The view in km/s: the origin, the planet's velocity and the whole circle fit.
fn view(flyby: &Flyby, size: DVec2, letter: f64) -> View {
    let planet = flyby.motion().velocity().km_s.truncate();
    let around = DVec2::splat(flyby.encounter.v_infinity_km_s);
    let (low, high) = (
        (planet - around).min(DVec2::ZERO),
        (planet + around).max(DVec2::ZERO),
    );
    View::fitting(low, high, size, 3.0 * letter)
}

struct Diagram<'a> {
    flyby: &'a Flyby,
    view: View,
    letter: f64,
    picture: Picture,
    room: Room,
}

/// An arrow of the diagram with its name.
struct Named {
    from: DVec3,
    to: DVec3,
    role: Role,
    head: Head,
    shaft: Shaft,
    dash: Dash,
    text: String,
}

impl Diagram<'_> {
    fn draw(&mut self) {
        self.circle();
        self.reach();
        let arrows = self.arrows();
        let places: Vec<_> = arrows.iter().map(|arrow| self.arrow(arrow)).collect();
        self.turn();
        self.ends();
        for (arrow, (from, to)) in arrows.into_iter().zip(places) {
            self.name(arrow, from, to);
        }
        self.note();
    }

    fn planet(&self) -> DVec3 {
        self.flyby.motion().velocity().km_s
    }

    /// Whether both velocities lie in the planet's orbit plane, so that the circle shows them in full.
    fn is_in_plane(&self) -> bool {
        let speed = self.flyby.encounter.v_infinity_km_s;
        let velocities = [self.flyby.velocity_in, self.flyby.velocity_out];
        velocities.iter().all(|v| v.km_s.z.abs() < IN_PLANE * speed)
    }

    fn width(&self, units: f64) -> f64 {
        units * self.letter / 13.0
    }

    /// The circle of all velocities with the same speed relative to the planet.
    fn circle(&mut self) {
        let centre = self.view.place_from_north(self.planet());
        let radius = self.view.length(self.flyby.encounter.v_infinity_km_s);
        let stroke = Stroke {
            role: Role::Relative,
            width: self.width(1.0),
            dash: Dash::Dotted,
        };
        self.picture.ring(centre, radius, stroke);
        let at = |i: i32| {
            let (sin, cos) = libm::sincos(std::f64::consts::TAU * f64::from(i) / f64::from(CIRCLE));
            centre + DVec2::new(cos, sin) * radius
        };
        let points: Vec<_> = (0..=CIRCLE).map(at).collect();
        self.room.take_path(&points);
    }

    /// The part of the circle that this planet can turn the probe to without being struck. Out of the orbit plane it is
    /// a cap of a sphere, and its rim is drawn.
    fn reach(&mut self) {
        let widest = widest_turn(&self.flyby.encounter);
        let plane = self.flyby.aim_plane;
        let direction = |turn: f64, side: DVec3| {
            let (sin, cos) = libm::sincos(turn);
            plane.s * cos + side * sin
        };
        let in_plane = plane.s.z.abs() < IN_PLANE;
        let points: Vec<_> = (-CIRCLE..=CIRCLE)
            .map(|i| f64::from(i) / f64::from(CIRCLE))
            .map(|part| {
                let unit = if in_plane {
                    direction(widest * part, plane.t)
                } else {
                    let (sin, cos) = libm::sincos(std::f64::consts::PI * part);
                    direction(widest, plane.t * cos + plane.r * sin)
                };
                self.view
                    .place_from_north(self.planet() + unit * self.flyby.encounter.v_infinity_km_s)
            })
            .collect();
        self.picture
            .path(points, Stroke::solid(Role::Relative, self.width(4.5)));
    }

    /// The arrows: the planet's, and each velocity before (dashed) and after (solid) in both frames.
    fn arrows(&self) -> Vec<Named> {
        let planet = self.planet();
        let speed = |v: DVec3| fixed(v.length(), 2);
        let relative = |v: DVec3, dash| Named {
            from: planet,
            to: planet + v,
            role: Role::Relative,
            head: Head::Filled,
            shaft: Shaft::Single,
            dash,
            text: speed(v),
        };
        let round_sun = |v: DVec3, dash| Named {
            from: DVec3::ZERO,
            to: v,
            role: Role::RoundSun,
            head: Head::Open,
            shaft: Shaft::Single,
            dash,
            text: speed(v),
        };
        let mut arrows = vec![Named {
            from: DVec3::ZERO,
            to: planet,
            role: Role::PlanetMotion,
            head: Head::Filled,
            shaft: Shaft::Double,
            dash: Dash::Solid,
            text: format!("planet {}", speed(planet)),
        }];
        arrows.push(relative(self.flyby.velocity_in.km_s, Dash::Dashed));
        arrows.push(round_sun(self.flyby.sun_velocity_in.km_s, Dash::Dashed));
        if !self.flyby.strikes() {
            arrows.push(relative(self.flyby.velocity_out.km_s, Dash::Solid));
            arrows.push(round_sun(self.flyby.sun_velocity_out.km_s, Dash::Solid));
        }
        arrows
    }

    fn arrow(&mut self, named: &Named) -> (DVec2, DVec2) {
        let (from, to) = (
            self.view.place_from_north(named.from),
            self.view.place_from_north(named.to),
        );
        let stroke = Stroke {
            role: named.role,
            width: self.width(2.2),
            dash: named.dash,
        };
        let (head, shaft) = (named.head, named.shaft);
        self.picture.marks.push(Mark::Arrow(Arrow {
            from,
            to,
            stroke,
            head,
            shaft,
        }));
        self.room.take_line(from, to);
        self.room.take_disc(to, self.width(3.0));
        (from, to)
    }

    /// The turn angle, as an arc between the two relative velocities.
    fn turn(&mut self) {
        if self.flyby.strikes() {
            return;
        }
        let centre = self.view.place_from_north(self.planet());
        let radius = 0.3 * self.view.length(self.flyby.encounter.v_infinity_km_s);
        let plane = self.flyby.aim_plane;
        let turn = self.flyby.turn_rad;
        // The path turns away from the aim point: towards minus the aim direction.
        let away = -plane.direction(self.flyby.encounter.aim_rad);
        let at = |part: f64| {
            let (sin, cos) = libm::sincos(turn * part);
            let direction = plane.s * cos + away * sin;
            centre + DVec2::new(direction.x, -direction.y) * radius
        };
        let points: Vec<_> = (0..=24).map(|i| at(f64::from(i) / 24.0)).collect();
        self.room.take_path(&points);
        self.picture
            .path(points, Stroke::solid(Role::Ink, self.width(1.2)));
        let words = Words::new(format!("turn {}", degrees(turn, 1)), Role::Ink, self.letter);
        place_near(
            &mut self.picture,
            &mut self.room,
            &[at(0.5), at(0.3), at(0.7), centre],
            words,
            true,
        );
    }

    /// The names of the two end points.
    fn ends(&mut self) {
        let mut end = |v: DVec3, text: &str| {
            let at = self.view.place_from_north(v);
            let words = Words::new(text, Role::Ink, self.letter);
            place_near(&mut self.picture, &mut self.room, &[at], words, true);
        };
        end(self.flyby.sun_velocity_in.km_s, "before");
        if !self.flyby.strikes() {
            end(self.flyby.sun_velocity_out.km_s, "after");
        }
    }

    fn name(&mut self, named: Named, from: DVec2, to: DVec2) {
        let words = Words::new(named.text, named.role, self.letter).bold();
        let points: Vec<_> = [0.5, 0.62, 0.38, 0.75, 0.25, 0.9]
            .map(|part| from + (to - from) * part)
            .to_vec();
        place_near(&mut self.picture, &mut self.room, &points, words, true);
    }

    /// What the circle means, and the unit of all numbers.
    fn note(&mut self) {
        let whole = if self.is_in_plane() {
            "circle"
        } else {
            "sphere, seen from north"
        };
        let name = self.flyby.encounter.planet.name;
        let lines = [
            format!("every end point lies on the {whole}:"),
            "same speed relative to the planet".into(),
        ];
        let letter = 0.92 * self.letter;
        let (row, top) = (1.35 * letter, 0.9 * letter);
        let bottom = self.view.size.y - top;
        let middle = 0.5 * self.view.size.x;
        for (text, down) in lines.into_iter().zip([0.0, row]) {
            self.words_at(
                text,
                [top + down, bottom - row + down].map(|y| DVec2::new(middle, y)),
            );
        }
        self.in_a_lower_corner("speeds in km/s".into());
        self.in_a_lower_corner(format!("thick: {name} can turn it there"));
    }

    fn in_a_lower_corner(&mut self, text: String) {
        let letter = 0.92 * self.letter;
        let half = 0.5 * text_width(&text, letter, false) + 0.5 * letter;
        let (left, right) = (half, self.view.size.x - half);
        let rows = [0.9, 2.3, 3.7, 5.1].map(|up| self.view.size.y - up * letter);
        self.words_at(
            text,
            rows.into_iter()
                .flat_map(|y| [left, right].map(|x| DVec2::new(x, y))),
        );
    }

    /// A quiet note in the first of some places that is free; left out when none is.
    fn words_at(&mut self, text: String, centres: impl IntoIterator<Item = DVec2>) {
        let words = Words::new(text, Role::Quiet, 0.92 * self.letter);
        place_at_best(
            &mut self.picture,
            &mut self.room,
            centres.into_iter(),
            words,
            false,
        );
    }
}

/// The largest turn without a strike, rad: periapsis at the surface.
fn widest_turn(encounter: &Encounter) -> f64 {
    let e = 1.0
        + encounter.planet.radius_km / encounter.planet.gm
            * encounter.v_infinity_km_s
            * encounter.v_infinity_km_s;
    2.0 * libm::asin((1.0 / e).min(1.0))
}
