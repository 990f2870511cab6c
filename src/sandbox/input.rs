//! What a person can do.

use glam::DVec2;

use super::aim::AimChange;
use super::clock::Change;
use super::panel::Sizes;
use crate::figure::{Grip, Look};
use crate::scenario::Field;

/// One thing that a person does, whatever they do it with.
#[derive(Clone, Debug, PartialEq)]
pub enum Input {
    /// Give a field a value in its unit.
    Set(Field, f64),
    /// Type a value into a field.
    Type(Field, String),
    /// Move a field's slider to a position of its range.
    Slide(Field, f64),
    /// Press a field's + button so many times (− when negative).
    Press(Field, f64),
    /// Choose a planet by its key.
    Planet(String),
    /// Open a ready-made pass by its place in the list.
    Preset(usize),
    /// Open a scenario text.
    Open(String),
    /// Go back to the scenario that the page opens with; the pace stays.
    Reset,
    /// Come closer (factor above 1) or step back.
    Zoom(f64),
    /// Show the whole pass again.
    Fit,
    /// Look at both stages from there.
    Look(Look),
    /// Turn both stages by a drag of so many picture units to the right and down: what is nearest to the eye follows.
    Turn(DVec2),
    /// Take hold of a handle in the planet frame's picture, at a place in it.
    Grab(Grip, DVec2, Sizes),
    /// Move what is held to a place in the picture.
    Drag(DVec2),
    /// Let go.
    Release,
    /// Do something about aiming.
    Aim(AimChange),
    /// Do something with the clock.
    Clock(Change),
}

impl Input {
    /// The field that it gives a value to.
    pub fn field(&self) -> Option<Field> {
        match self {
            Self::Set(field, _)
            | Self::Type(field, _)
            | Self::Slide(field, _)
            | Self::Press(field, _) => Some(*field),
            Self::Aim(AimChange::At(_)) => Some(Field::Periapsis),
            _ => None,
        }
    }
}
