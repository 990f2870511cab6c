//! What is read from the sandbox: the four pictures, and the numbers and sentences beside them.

use glam::DVec2;

use super::solved::Solved;
use crate::figure::{
    FrameKind, Look, Picture, Scene, Views, speed_record, stage, velocity_diagram,
};
use crate::physics::units::SECONDS_PER_DAY;
use crate::physics::{Encounter, Flyby, Side};
use crate::report::{self, Fact, Instant, Row, Sentence};

/// The sizes that the pictures are composed for, picture units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sizes {
    /// Both stages.
    pub stage: DVec2,
    /// The velocity diagram.
    pub diagram: DVec2,
    /// The speed record.
    pub record: DVec2,
}

impl Sizes {
    /// The same size for every picture.
    pub fn all(size: DVec2) -> Self {
        Self {
            stage: size,
            diagram: size,
            record: size,
        }
    }
}

/// The four pictures of one moment.
#[derive(Clone, Debug, PartialEq)]
pub struct Pictures {
    /// As the planet sees it.
    pub planet_frame: Picture,
    /// As the Sun sees it.
    pub sun_frame: Picture,
    /// The velocity diagram.
    pub diagram: Picture,
    /// The speed record.
    pub record: Picture,
}

impl Pictures {
    /// Composes all four.
    pub fn compose(scene: &Scene<'_>, views: &Views, sizes: &Sizes) -> Self {
        Self {
            planet_frame: stage(scene, FrameKind::Planet, views),
            sun_frame: stage(scene, FrameKind::Sun, views),
            diagram: velocity_diagram(scene, sizes.diagram),
            record: speed_record(scene, sizes.record),
        }
    }
}

/// One of the two in-plane sides that a probe can pass on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SideChoice {
    /// "behind, outward (aim 0°)".
    pub label: String,
    /// Whether the present aim angle is this side.
    pub chosen: bool,
}

/// The numbers and sentences of one moment.
#[derive(Clone, Debug, PartialEq)]
pub struct Panel {
    /// The planet's name.
    pub planet: &'static str,
    /// The pass in the planet frame, one sentence.
    pub planet_sentence: Sentence,
    /// The pass in the Sun frame, one sentence.
    pub sun_sentence: Sentence,
    /// How the planet moves in the Sun frame.
    pub motion_note: Sentence,
    /// The reason, one sentence.
    pub why: Sentence,
    /// Cautions, a sentence each.
    pub cautions: Vec<Sentence>,
    /// The before / after / change table.
    pub rows: Vec<Row>,
    /// Facts of the pass.
    pub facts: Vec<Fact>,
    /// The numbers of the moment.
    pub now: Vec<Fact>,
    /// The moment, days after periapsis.
    pub time_d: f64,
    /// The moment in words.
    pub moment: String,
    /// How much of the pass a second of playing shows at this moment, in words.
    pub rate: String,
    /// The same in seconds.
    pub rate_s: f64,
    /// Where the moment is in what is shown, 0..1.
    pub position: f64,
    /// The pictures in words: planet frame, Sun frame, diagram, record.
    pub descriptions: [String; 4],
    /// The two in-plane sides, at aim angles 0° and 180°.
    pub sides: [SideChoice; 2],
}

impl Panel {
    pub(super) fn new(solved: &Solved, time_s: f64, rate: f64, look: Look) -> Self {
        let (flyby, track, pass) = (&solved.flyby, &solved.track, solved.pass());
        let instant = Instant::of(flyby, time_s);
        let look = look.words(flyby.encounter.planet.name);
        Self {
            planet: flyby.encounter.planet.name,
            planet_sentence: report::planet_sentence(&pass),
            sun_sentence: report::sun_sentence(&pass),
            motion_note: report::motion_note(&pass),
            why: report::why_sentence(&pass),
            cautions: report::cautions(&pass, 2.0 * track.half_s),
            rows: report::readouts(&pass),
            facts: report::facts(&pass),
            now: report::now(&instant),
            time_d: time_s / SECONDS_PER_DAY,
            moment: report::moment(time_s),
            rate: "1 s shows ".to_owned() + &report::span(rate),
            rate_s: rate,
            position: track.position_of(time_s),
            descriptions: [
                report::describe_stage(&pass, &instant, false, &look),
                report::describe_stage(&pass, &instant, true, &look),
                report::describe_diagram(&pass),
                report::describe_record(&pass),
            ],
            sides: [side(flyby, 0.0), side(flyby, std::f64::consts::PI)],
        }
    }
}

/// The side that an in-plane aim angle, rad, passes on; found from where periapsis lies, not from the angle.
fn side(flyby: &Flyby, aim_rad: f64) -> SideChoice {
    let label = match Flyby::solve(&Encounter {
        aim_rad,
        ..flyby.encounter
    }) {
        Ok(other) => {
            let along = match other.side {
                Side::Behind => "behind",
                Side::Ahead => "ahead",
                Side::Neither => "on the flank",
            };
            let across = if other.periapsis_direction.x < 0.0 {
                "sunward"
            } else {
                "outward"
            };
            // The aim angle tells the two apart where both lie on one side.
            let aim = if aim_rad == 0.0 { "0°" } else { "180°" };
            [along, ", ", across, " (aim ", aim, ")"].concat()
        }
        Err(_) => String::new(),
    };
    let turn = (flyby.encounter.aim_rad - aim_rad) / std::f64::consts::TAU;
    SideChoice {
        label,
        chosen: (turn - turn.round()).abs() < 1e-9,
    }
}
