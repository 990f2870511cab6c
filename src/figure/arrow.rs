//! Arrows: a velocity's direction and size. Head and shaft tell whose velocity it is without colour.

use glam::DVec2;

use super::picture::{Role, Stroke};

/// The head of an arrow; it tells the frame without colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Head {
    /// Filled triangle.
    Filled,
    /// Two open strokes.
    Open,
}

/// The shaft of an arrow.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shaft {
    /// One line.
    Single,
    /// Two parallel lines: the planet's velocity.
    Double,
}

/// An arrow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arrow {
    /// Where it starts.
    pub from: DVec2,
    /// Where its tip is.
    pub to: DVec2,
    /// Role, width and dash of its shaft.
    pub stroke: Stroke,
    /// Its head.
    pub head: Head,
    /// Its shaft.
    pub shaft: Shaft,
}

impl Arrow {
    /// The arrow of a velocity; its role decides on head and shaft.
    pub fn of(from: DVec2, to: DVec2, stroke: Stroke) -> Self {
        let head = match stroke.role {
            Role::RoundSun => Head::Open,
            _ => Head::Filled,
        };
        let shaft = match stroke.role {
            Role::PlanetMotion => Shaft::Double,
            _ => Shaft::Single,
        };
        Self {
            from,
            to,
            stroke,
            head,
            shaft,
        }
    }

    /// Length of the head along the arrow; short arrows get short heads.
    pub fn head_length(&self) -> f64 {
        (5.0 * self.stroke.width + 2.0).min(0.45 * self.from.distance(self.to))
    }

    /// The two back corners of the head; `None` for an arrow too short to have a direction.
    pub fn head_corners(&self) -> Option<[DVec2; 2]> {
        let along = (self.to - self.from).try_normalize()?;
        let length = self.head_length();
        let back = self.to - along * length;
        let across = along.perp() * (0.42 * length);
        Some([back + across, back - across])
    }

    /// The lines of the shaft: one, or two side by side.
    pub fn shaft_lines(&self) -> Vec<[DVec2; 2]> {
        let Some(along) = (self.to - self.from).try_normalize() else {
            return Vec::new();
        };
        // An open head's strokes meet at the tip; a filled head would hide the shaft's blunt end.
        let end = if self.head == Head::Open {
            self.to
        } else {
            self.to - along * (0.8 * self.head_length())
        };
        let apart = along.perp() * (1.1 * self.stroke.width);
        match self.shaft {
            Shaft::Single => vec![[self.from, end]],
            Shaft::Double => vec![
                [self.from + apart, end + apart],
                [self.from - apart, end - apart],
            ],
        }
    }
}
