//! From where a stage is seen: the direction to the eye, which is so far away that equal lengths look equal.

use glam::{DVec2, DVec3};

use crate::decimal::within;
use crate::physics::sincos;
use crate::physics::units::DEGREES_PER_RADIAN;
use crate::report::fixed;

/// Where the eye stands, seen from the planet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    around_deg: f64,
    height_deg: f64,
}

impl Look {
    /// From north: forward is up, away from the Sun is right.
    pub const NORTH: Self = Self::at(0.0, 90.0);
    /// From behind the planet, along its motion: away from the Sun is right, north is up.
    pub const BEHIND: Self = Self::at(0.0, 0.0);
    /// From outside the planet's orbit, towards the Sun: forward is right, north is up.
    pub const SIDE: Self = Self::at(90.0, 0.0);

    const fn at(around_deg: f64, height_deg: f64) -> Self {
        Self {
            around_deg,
            height_deg,
        }
    }

    /// An eye that has gone round the planet's north by `around_deg`, from behind the planet towards its outer side, and
    /// stands `height_deg` north of the orbit plane (south when negative), degrees. The first is brought into −180 … 180
    /// by whole turns, the second is kept within −90 … 90. Numbers that are not finite give the look from north.
    pub fn new(around_deg: f64, height_deg: f64) -> Self {
        if !(around_deg.is_finite() && height_deg.is_finite()) {
            return Self::NORTH;
        }
        // Both ends stay as they are, so that a slider at one end does not jump to the other.
        let turns = if around_deg.abs() > 180.0 {
            (around_deg / 360.0).round()
        } else {
            0.0
        };
        Self::at(around_deg - 360.0 * turns, within(height_deg, -90.0, 90.0))
    }

    /// How far the eye has gone round from behind the planet towards its outer side, degrees, −180 … 180.
    pub fn around_deg(self) -> f64 {
        self.around_deg
    }

    /// How high the eye stands north of the orbit plane, degrees, −90 … 90.
    pub fn height_deg(self) -> f64 {
        self.height_deg
    }

    /// The look from an eye that has gone on by some degrees, round and up.
    #[must_use]
    pub fn moved(self, by_deg: DVec2) -> Self {
        Self::new(self.around_deg + by_deg.x, self.height_deg + by_deg.y)
    }

    /// From where it is seen, in a few words that cannot be taken for a frame of reference; none from north.
    pub fn words(self, planet: &str) -> String {
        match self {
            Self::NORTH => String::new(),
            Self::BEHIND => ["looking along ", planet, "'s motion"].concat(),
            Self::SIDE => "looking towards the Sun".into(),
            Self {
                around_deg,
                height_deg,
            } => {
                let side = if height_deg < 0.0 { "below" } else { "above" };
                let (around, height) = (fixed(around_deg, 0), fixed(height_deg.abs(), 0));
                [
                    "turned ",
                    &around,
                    "°, from ",
                    &height,
                    "° ",
                    side,
                    " the orbit plane",
                ]
                .concat()
            }
        }
    }

    /// The picture's axes in space.
    pub(super) fn axes(self) -> Axes {
        let (sin, cos) = of_degrees(self.around_deg);
        let (sin_height, cos_height) = of_degrees(self.height_deg);
        Axes {
            right: DVec3::new(cos, sin, 0.0),
            up: DVec3::new(-sin * sin_height, cos * sin_height, cos_height),
            toward: DVec3::new(sin * cos_height, -cos * cos_height, sin_height),
        }
    }
}

/// Sine and cosine of an angle in degrees; exact at multiples of 90°, so that what is level is drawn level.
fn of_degrees(degrees: f64) -> (f64, f64) {
    let quarters = (degrees / 90.0).round();
    let (sin, cos) = sincos((degrees - 90.0 * quarters) / DEGREES_PER_RADIAN);
    match quarters as i32 {
        0 => (sin, cos),
        1 => (cos, -sin),
        -1 => (-cos, sin),
        _ => (-sin, -cos),
    }
}

/// A picture's axes in space: unit vectors, each perpendicular to the others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axes {
    /// What runs right in the picture.
    pub right: DVec3,
    /// What runs up in the picture.
    pub up: DVec3,
    /// What points at the eye.
    pub toward: DVec3,
}

impl Axes {
    /// The two of three coordinates that are seen: how far right, and how far up.
    #[inline(never)] // Called from many places: a call is smaller than what it does.
    pub fn flat(&self, world: DVec3) -> DVec2 {
        DVec2::new(world.dot(self.right), world.dot(self.up))
    }
}
