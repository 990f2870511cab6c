//! Words for fields and wishes that the pictures do not need: the command's help has them, and the page has them in its
//! `index.html`, so that they are no part of the core's download.

use super::field::Field;
use super::wish::{Most, WishKind};

impl Field {
    /// One line: what it means.
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Gm => "How strongly the planet pulls: its mass times Newton's constant.",
            Self::Radius => "Distance from the planet's centre to its surface.",
            Self::Orbit => "From the Sun; it sets how fast the planet moves. The Earth's is 1 AU.",
            Self::VInfinity => {
                "v-infinity: how fast the probe comes in from far away, seen from the planet."
            }
            Self::Approach => {
                "0° catches the planet up from behind, 180° meets it head-on; + heads outward, − heads sunward."
            }
            Self::Crank => {
                "Tilts the approach out of the orbit plane, round the planet's direction of motion."
            }
            Self::Periapsis => {
                "Closest distance from the planet's centre. Under 1 the probe strikes the planet."
            }
            Self::Aim => {
                "Where it passes: 0° and 180° in the orbit plane, −90° over north, 90° over south."
            }
            Self::ProbeMass => {
                "Changes nothing for the probe, only how little the planet slows down or speeds up."
            }
        }
    }
}

impl WishKind {
    /// The kind's name.
    pub fn label(self) -> &'static str {
        match self {
            Self::Aphelion => "Farthest from the Sun afterwards",
            Self::Perihelion => "Nearest to the Sun afterwards",
            Self::Leave => "Leave the Sun, with speed to spare",
            Self::Turn => "Turn of the path round the planet",
            Self::Change => "Change of speed round the Sun, 0 for none",
        }
    }
}

impl Most {
    /// What there is to be the most of.
    pub fn label(self) -> &'static str {
        match self {
            Self::Gain => "Most gain of speed",
            Self::Loss => "Most loss of speed",
            Self::Inclination => "Most tilt of the orbit",
        }
    }
}
