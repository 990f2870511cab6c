//! What a picture is made of. Lengths are in picture units: one unit is one CSS pixel at the size that the picture was
//! composed for; x runs right, y runs down.

use glam::DVec2;

use super::arrow::Arrow;
use super::raster::Raster;

/// What a mark stands for. A theme gives each role its colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// Motion relative to the planet.
    Relative,
    /// The planet's own motion.
    PlanetMotion,
    /// Motion relative to the Sun.
    RoundSun,
    /// The planet's body.
    Planet,
    /// Text and marks of first importance.
    Ink,
    /// Text and marks of second importance.
    Quiet,
    /// Lines that only help the eye.
    Faint,
    /// The ground that everything stands on.
    Ground,
}

impl Role {
    /// All roles.
    pub const ALL: [Self; 8] = [
        Self::Relative,
        Self::PlanetMotion,
        Self::RoundSun,
        Self::Planet,
        Self::Ink,
        Self::Quiet,
        Self::Faint,
        Self::Ground,
    ];
}

/// How a line is broken: dashed is before the pass, solid is after it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dash {
    /// Unbroken.
    Solid,
    /// Long dashes.
    Dashed,
    /// Dots.
    Dotted,
}

/// A line's looks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stroke {
    /// What it stands for.
    pub role: Role,
    /// Width, picture units.
    pub width: f64,
    /// Broken or not.
    pub dash: Dash,
}

impl Stroke {
    /// An unbroken line.
    pub const fn solid(role: Role, width: f64) -> Self {
        Self {
            role,
            width,
            dash: Dash::Solid,
        }
    }

    /// The same line with another dash.
    #[must_use]
    pub const fn with(self, dash: Dash) -> Self {
        Self { dash, ..self }
    }

    /// Lengths of a dash and of the gap after it, picture units; `None` for an unbroken line.
    pub fn dash_lengths(&self) -> Option<[f64; 2]> {
        match self.dash {
            Dash::Solid => None,
            Dash::Dashed => Some([3.6 * self.width, 2.2 * self.width]),
            Dash::Dotted => Some([self.width, 2.4 * self.width]),
        }
    }
}

/// A line through points.
#[derive(Clone, Debug, PartialEq)]
pub struct Path {
    /// The points, at least two.
    pub points: Vec<DVec2>,
    /// Its looks.
    pub stroke: Stroke,
}

/// A circle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Disc {
    /// Its centre.
    pub centre: DVec2,
    /// Its radius.
    pub radius: f64,
    /// What fills it, if anything.
    pub fill: Option<Role>,
    /// Its edge, if any.
    pub edge: Option<Stroke>,
}

/// Which point of a text its position names; always on the baseline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// The left end.
    Start,
    /// The middle.
    Middle,
    /// The right end.
    End,
}

/// A line of text.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// Where the anchor lies, on the baseline.
    pub at: DVec2,
    /// Which point that is.
    pub anchor: Anchor,
    /// The words.
    pub text: String,
    /// What it stands for.
    pub role: Role,
    /// Height of the letters, picture units.
    pub size: f64,
    /// Heavy letters.
    pub bold: bool,
    /// Letters on the ground's colour, so that they are read on any other.
    pub halo: bool,
}

/// What a spot that can be taken hold of moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grip {
    /// The closest distance.
    Periapsis,
    /// The direction that the probe comes from.
    Approach,
}

/// A spot that can be taken hold of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Handle {
    /// Where it is.
    pub at: DVec2,
    /// What it moves.
    pub grip: Grip,
    /// Its radius as drawn; the spot that reacts is larger.
    pub radius: f64,
    /// What it is the end of.
    pub role: Role,
}

/// One mark of a picture.
#[derive(Clone, Debug, PartialEq)]
#[allow(
    missing_docs,
    reason = "each holds the type of its name, which is documented"
)]
pub enum Mark {
    Path(Path),
    Disc(Disc),
    Arrow(Arrow),
    Label(Label),
    Handle(Handle),
    Raster(Raster),
}

/// A picture: marks in painting order on a ground of a given size. What lies outside the size is not shown.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Picture {
    /// Width and height, picture units.
    pub size: DVec2,
    /// A name of a few words.
    pub title: String,
    /// The marks, the first one painted first.
    pub marks: Vec<Mark>,
}

impl Picture {
    /// An empty picture.
    pub fn new(size: DVec2, title: impl Into<String>) -> Self {
        Self {
            size,
            title: title.into(),
            marks: Vec::with_capacity(96),
        }
    }

    /// Adds a line through points, if there are at least two.
    pub fn path(&mut self, points: Vec<DVec2>, stroke: Stroke) {
        if points.len() > 1 {
            self.marks.push(Mark::Path(Path { points, stroke }));
        }
    }

    /// Adds a straight line.
    pub fn line(&mut self, from: DVec2, to: DVec2, stroke: Stroke) {
        self.path(vec![from, to], stroke);
    }

    /// Adds a circle.
    pub fn disc(&mut self, centre: DVec2, radius: f64, fill: Option<Role>, edge: Option<Stroke>) {
        self.marks.push(Mark::Disc(Disc {
            centre,
            radius,
            fill,
            edge,
        }));
    }

    /// Adds a filled circle.
    pub fn dot(&mut self, centre: DVec2, radius: f64, role: Role) {
        self.disc(centre, radius, Some(role), None);
    }

    /// Adds a circle with an edge, filled with the ground.
    pub fn hollow(&mut self, centre: DVec2, radius: f64, edge: Stroke) {
        self.disc(centre, radius, Some(Role::Ground), Some(edge));
    }

    /// Adds a circle with an edge and nothing inside.
    pub fn ring(&mut self, centre: DVec2, radius: f64, edge: Stroke) {
        self.disc(centre, radius, None, Some(edge));
    }

    /// The handle nearest to a place, if one is within `reach` picture units.
    pub fn handle_near(&self, place: DVec2, reach: f64) -> Option<Grip> {
        let handles = self.marks.iter().filter_map(|mark| {
            if let Mark::Handle(handle) = mark {
                Some((handle.at.distance(place), handle.grip))
            } else {
                None
            }
        });
        let nearest = handles.min_by(|a, b| a.0.total_cmp(&b.0));
        nearest
            .filter(|(distance, _)| *distance <= reach)
            .map(|(_, grip)| grip)
    }

    /// Every label, in painting order.
    pub fn labels(&self) -> impl Iterator<Item = &Label> {
        self.marks.iter().filter_map(|mark| {
            if let Mark::Label(label) = mark {
                Some(label)
            } else {
                None
            }
        })
    }
}
