//! The velocity diagram: the planet's velocity plus the velocity relative to the planet is the velocity round the Sun.
//! It joins the two stages.

use glam::{DVec2, DVec3};

use super::drawing::{Drawing, curve};
use super::label::Words;
use super::picture::{Dash, Picture, Role};
use super::scene::Scene;
use super::stage::letter_size;
use super::view::View;
use crate::physics::{Encounter, Flyby, sincos};
use crate::report::{degrees, fixed};

/// A direction whose north component is smaller than this counts as lying in the orbit plane.
const IN_PLANE: f64 = 1e-9;

/// Points of a whole circle.
const CIRCLE: i32 = 72;

/// The velocity diagram, seen from north, as large as `size` allows.
pub fn velocity_diagram(scene: &Scene<'_>, size: DVec2) -> Picture {
    let letter = letter_size(size);
    let title = "Velocity diagram: relative to the planet + planet = round the Sun";
    let mut diagram = Diagram {
        flyby: scene.flyby,
        view: view(scene.flyby, size, letter),
        drawing: Drawing::new(size, letter, title.into()),
    };
    diagram.draw();
    diagram.drawing.picture
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
    drawing: Drawing,
}

/// A velocity of the diagram.
struct Velocity {
    from: DVec3,
    to: DVec3,
    role: Role,
    dash: Dash,
}

impl Diagram<'_> {
    fn draw(&mut self) {
        self.circle();
        self.reach();
        let velocities = self.velocities();
        for velocity in &velocities {
            self.arrow(velocity);
        }
        if !self.flyby.strikes() {
            self.turn();
        }
        self.ends();
        for velocity in &velocities {
            self.speed(velocity);
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

    /// The circle of all velocities with the same speed relative to the planet.
    fn circle(&mut self) {
        let centre = self.view.place_in_space(self.planet());
        let radius = self.view.length(self.flyby.encounter.v_infinity_km_s);
        let stroke = self.drawing.stroke(Role::Relative, 1.0, Dash::Dotted);
        self.drawing.picture.ring(centre, radius, stroke);
        let points = curve(CIRCLE, &|part| {
            let (sin, cos) = sincos(std::f64::consts::TAU * part);
            centre + DVec2::new(cos, sin) * radius
        });
        self.drawing.room.take_path(&points);
    }

    /// The part of the circle that this planet can turn the probe to without being struck. Out of the orbit plane it is
    /// a cap of a sphere, and its rim is drawn.
    fn reach(&mut self) {
        let widest = widest_turn(&self.flyby.encounter);
        let plane = self.flyby.aim_plane;
        let direction = |turn: f64, side: DVec3| {
            let (sin, cos) = sincos(turn);
            plane.s * cos + side * sin
        };
        let in_plane = plane.s.z.abs() < IN_PLANE;
        let points = curve(2 * CIRCLE, &|part| {
            let part = 2.0 * part - 1.0;
            let unit = if in_plane {
                direction(widest * part, plane.t)
            } else {
                let (sin, cos) = sincos(std::f64::consts::PI * part);
                direction(widest, plane.t * cos + plane.r * sin)
            };
            self.view
                .place_in_space(self.planet() + unit * self.flyby.encounter.v_infinity_km_s)
        });
        let stroke = self.drawing.stroke(Role::Relative, 4.5, Dash::Solid);
        self.drawing.picture.path(points, stroke);
    }

    /// The planet's velocity, and the probe's before (dashed) and after (solid) in both frames.
    fn velocities(&self) -> Vec<Velocity> {
        let (flyby, planet) = (self.flyby, self.planet());
        let velocity = |from, to, role, dash| Velocity {
            from,
            to,
            role,
            dash,
        };
        let relative = |v: DVec3, dash| velocity(planet, planet + v, Role::Relative, dash);
        let round_sun = |v: DVec3, dash| velocity(DVec3::ZERO, v, Role::RoundSun, dash);
        let mut velocities = vec![
            velocity(DVec3::ZERO, planet, Role::PlanetMotion, Dash::Solid),
            relative(flyby.velocity_in.km_s, Dash::Dashed),
            round_sun(flyby.sun_velocity_in.km_s, Dash::Dashed),
        ];
        if !flyby.strikes() {
            velocities.push(relative(flyby.velocity_out.km_s, Dash::Solid));
            velocities.push(round_sun(flyby.sun_velocity_out.km_s, Dash::Solid));
        }
        velocities
    }

    /// Where a velocity's arrow starts and ends.
    fn ends_of(&self, velocity: &Velocity) -> (DVec2, DVec2) {
        let place = |v| self.view.place_in_space(v);
        (place(velocity.from), place(velocity.to))
    }

    fn arrow(&mut self, velocity: &Velocity) {
        let (from, to) = self.ends_of(velocity);
        let stroke = self.drawing.stroke(velocity.role, 2.2, velocity.dash);
        self.drawing.arrow(from, to, stroke);
    }

    /// The speed that an arrow stands for.
    fn speed(&mut self, velocity: &Velocity) {
        let (from, to) = self.ends_of(velocity);
        let mut text = fixed((velocity.to - velocity.from).length(), 2);
        if velocity.role == Role::PlanetMotion {
            text.insert_str(0, "planet ");
        }
        let words = Words::bold(&text, velocity.role, self.drawing.letter);
        let points = [0.5, 0.62, 0.38, 0.75, 0.25, 0.9].map(|part| from + (to - from) * part);
        self.drawing.place_near(&points, words, true);
    }

    /// The turn angle, as an arc between the two relative velocities.
    fn turn(&mut self) {
        let centre = self.view.place_in_space(self.planet());
        let radius = 0.3 * self.view.length(self.flyby.encounter.v_infinity_km_s);
        let plane = self.flyby.aim_plane;
        let turn = self.flyby.turn_rad;
        // The path turns away from the aim point: towards minus the aim direction.
        let away = -plane.direction(self.flyby.encounter.aim_rad);
        let at = |part: f64| {
            let (sin, cos) = sincos(turn * part);
            let direction = plane.s * cos + away * sin;
            centre + DVec2::new(direction.x, -direction.y) * radius
        };
        let points = curve(24, &at);
        let stroke = self.drawing.stroke(Role::Ink, 1.2, Dash::Solid);
        self.drawing.path(points, stroke);
        let text = String::from("turn ") + &degrees(turn, 1);
        let words = Words::new(&text, Role::Ink, self.drawing.letter);
        let [middle, start, end] = [0.5, 0.3, 0.7].map(at);
        self.drawing
            .place_near(&[middle, start, end, centre], words, true);
    }

    /// The names of the two end points.
    fn ends(&mut self) {
        let (before, after) = (self.flyby.sun_velocity_in, self.flyby.sun_velocity_out);
        self.end(before.km_s, "before");
        if !self.flyby.strikes() {
            self.end(after.km_s, "after");
        }
    }

    fn end(&mut self, velocity: DVec3, text: &str) {
        let at = self.view.place_in_space(velocity);
        let words = Words::new(text, Role::Ink, self.drawing.letter);
        self.drawing.place_near(&[at], words, true);
    }

    /// What the circle means, and the unit of all numbers.
    fn note(&mut self) {
        self.note_lines(if self.is_in_plane() {
            [
                "every end point lies on the circle:",
                "same speed relative to the planet",
            ]
        } else {
            [
                "end points lie on a sphere: same speed",
                "relative to the planet, seen from north",
            ]
        });
        let name = self.flyby.encounter.planet.name;
        let thick = ["thick: ", name, " can turn it there"].concat();
        for text in &["speeds in km/s", &*thick] {
            let words = Words::new(text, Role::Quiet, 0.92 * self.drawing.letter);
            self.drawing.corner_note(words);
        }
    }

    /// Two quiet lines, one under the other, at the upper edge or else at the lower one; left out when neither is free.
    fn note_lines(&mut self, lines: [&str; 2]) {
        let letter = 0.92 * self.drawing.letter;
        let row = DVec2::new(0.0, 1.35 * letter);
        let words = lines.map(|text| Words::new(text, Role::Quiet, letter));
        let half = DVec2::new(0.5 * words[0].width().max(words[1].width()), row.y);
        let (middle, edge) = (0.5 * self.view.size.x, half.y + 0.2 * letter);
        let centres = [edge, self.view.size.y - edge].map(|y| DVec2::new(middle, y));
        if let Some(centre) = self.drawing.room.first_free(&centres, half) {
            let [above, below] = words;
            self.drawing.put(centre - 0.5 * row, above);
            self.drawing.put(centre + 0.5 * row, below);
        }
    }
}

/// The largest turn without a strike, rad: periapsis at the surface. tan(δ/2) = a/b, both in planet radii.
fn widest_turn(encounter: &Encounter) -> f64 {
    let v = encounter.v_infinity_km_s;
    let a = encounter.planet.gm / encounter.planet.radius_km / v / v;
    2.0 * libm::atan2(a, (1.0 + 2.0 * a).sqrt())
}
