//! What a person may aim for, in the units that people type: `aphelion=9.5`, `reach=saturn`, `most=gain`.

use std::fmt;

use super::choice::PlanetChoice;
use super::notice::{clip, from_to};
use super::text::print_number;
use crate::decimal::parse;
use crate::physics::units::{KM_PER_AU, RADIANS_PER_DEGREE};
use crate::physics::{Body, Goal, Planet};

/// A wish for a pass. Distances in AU, speeds in km/s, angles in degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Wish {
    /// A value of something.
    Value(WishKind, f64),
    /// Just reach a planet's orbit: from within with the farthest distance from the Sun, from without with the nearest.
    Reach(Body),
    /// The most of something.
    Most(Most),
}

/// What may be wished to have a value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WishKind {
    /// Farthest distance from the Sun afterwards, AU.
    Aphelion,
    /// Nearest distance to the Sun afterwards, AU.
    Perihelion,
    /// Speed left far from the Sun, km/s.
    Leave,
    /// Turn of the path round the planet, degrees.
    Turn,
    /// Change of the speed round the Sun, km/s.
    Change,
}

/// What may be wished for as much as there is of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Most {
    /// Gain of speed round the Sun.
    Gain,
    /// Loss of speed round the Sun.
    Loss,
    /// Tilt of the orbit afterwards.
    Inclination,
}

/// All that is known of a wish with a value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WishSpec {
    /// Key in the text form.
    pub key: &'static str,
    /// Unit after the number.
    pub unit: &'static str,
    /// Smallest value allowed.
    pub min: f64,
    /// Largest value allowed.
    pub max: f64,
    /// A value to start from.
    pub usual: f64,
}

/// Why a wish cannot be searched for.
#[derive(Clone, Debug, PartialEq)]
pub enum BadWish {
    /// Not a wish at all; the text as it was given.
    Unknown(String),
    /// Not a number, or one outside the range; the text as it was given.
    Value(WishKind, String),
    /// No such planet.
    Planet(String),
    /// To reach the orbit of the planet that is passed.
    OwnOrbit(&'static str),
}

impl WishKind {
    /// Every kind, in the order of the page's list.
    pub const ALL: [Self; 5] = [
        Self::Aphelion,
        Self::Perihelion,
        Self::Leave,
        Self::Change,
        Self::Turn,
    ];

    /// The kind's description.
    pub fn spec(self) -> &'static WishSpec {
        match self {
            Self::Aphelion => &APHELION,
            Self::Perihelion => &PERIHELION,
            Self::Leave => &LEAVE,
            Self::Turn => &TURN,
            Self::Change => &CHANGE,
        }
    }

    /// The wish for a value that is given as text.
    ///
    /// # Errors
    /// When it is not a number in the kind's range.
    pub fn read(self, text: &str) -> Result<Wish, BadWish> {
        let spec = self.spec();
        let value: Option<f64> = parse(text);
        value
            .filter(|value| *value >= spec.min && *value <= spec.max)
            .map(|value| Wish::Value(self, value + 0.0))
            .ok_or_else(|| BadWish::Value(self, text.into()))
    }
}

impl Most {
    /// Each with its word in the text form.
    pub const ALL: [(&'static str, Self); 3] = [
        ("gain", Self::Gain),
        ("loss", Self::Loss),
        ("inclination", Self::Inclination),
    ];
}

impl Wish {
    /// Reads the text form.
    ///
    /// # Errors
    /// A [`BadWish`], in words by its `Display`.
    pub fn read(text: &str) -> Result<Self, BadWish> {
        let (key, value) = text.split_once('=').unwrap_or((text, ""));
        let unknown = || BadWish::Unknown(text.into());
        match key {
            "reach" => PlanetChoice::KNOWN
                .iter()
                .find(|(known, _)| *known == value)
                .map(|(_, body)| Self::Reach(*body))
                .ok_or_else(|| BadWish::Planet(value.into())),
            "most" => Most::ALL
                .iter()
                .find(|(word, _)| *word == value)
                .map(|(_, most)| Self::Most(*most))
                .ok_or_else(unknown),
            _ => WishKind::ALL
                .iter()
                .find(|kind| kind.spec().key == key)
                .ok_or_else(unknown)?
                .read(value),
        }
    }

    /// The text form.
    pub fn text(self) -> String {
        let (key, value) = match self {
            Self::Value(kind, value) => (kind.spec().key, print_number(value)),
            Self::Reach(body) => ("reach", PlanetChoice::Known(body).key().into()),
            Self::Most(most) => {
                let found = Most::ALL.iter().find(|(_, known)| *known == most);
                ("most", found.map_or("", |(word, _)| word).into())
            }
        };
        [key, "=", &value].concat()
    }

    /// The goal in core units, for a pass of a planet.
    ///
    /// # Errors
    /// [`BadWish::OwnOrbit`].
    pub fn goal(self, passed: &Planet) -> Result<Goal, BadWish> {
        Ok(match self {
            Self::Value(WishKind::Aphelion, au) => Goal::Aphelion(au * KM_PER_AU),
            Self::Value(WishKind::Perihelion, au) => Goal::Perihelion(au * KM_PER_AU),
            Self::Value(WishKind::Leave, km_s) => Goal::Leave(km_s.max(JUST_LEFT_KM_S)),
            Self::Value(WishKind::Turn, deg) => Goal::Turn(deg * RADIANS_PER_DEGREE),
            Self::Value(WishKind::Change, km_s) => Goal::SpeedChange(km_s),
            Self::Most(Most::Gain) => Goal::MostGain,
            Self::Most(Most::Loss) => Goal::MostLoss,
            Self::Most(Most::Inclination) => Goal::MostInclination,
            Self::Reach(body) => {
                let wanted = Planet::of(body);
                match wanted.orbit_km / passed.orbit_km {
                    part if (part - 1.0).abs() < 1e-9 => {
                        return Err(BadWish::OwnOrbit(wanted.name));
                    }
                    part if part > 1.0 => Goal::Aphelion(wanted.orbit_km),
                    _ => Goal::Perihelion(wanted.orbit_km),
                }
            }
        })
    }
}

/// Speed to spare, km/s, of a probe that is wished to leave with none: a parabola to the last bit is as likely to stay.
const JUST_LEFT_KM_S: f64 = 1e-4;

impl fmt::Display for Wish {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text())
    }
}

impl fmt::Display for BadWish {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text())
    }
}

impl BadWish {
    /// What is wrong, in words, and what to try.
    pub fn text(&self) -> String {
        match self {
            Self::Unknown(text) => [
                "“",
                &clip(text),
                "”: there is no such goal; try aphelion=9.5, perihelion=1, leave=5, turn=90, change=0, reach=saturn, \
                 most=gain, most=loss or most=inclination.",
            ]
            .concat(),
            Self::Planet(text) => [
                "reach=",
                &clip(text),
                ": the value has to be a planet from mercury to neptune; try saturn.",
            ]
            .concat(),
            Self::OwnOrbit(name) => [
                "The pass happens on the orbit of ",
                name,
                ", so every path reaches that: choose another planet's orbit.",
            ]
            .concat(),
            Self::Value(kind, text) => {
                let spec = kind.spec();
                [
                    spec.key,
                    "=",
                    &clip(text),
                    ": the value has to be a number ",
                    &from_to(spec.min, spec.max, spec.unit),
                    "; try ",
                    &print_number(spec.usual),
                    ".",
                ]
                .concat()
            }
        }
    }
}

const APHELION: WishSpec = WishSpec {
    key: "aphelion",
    unit: "AU",
    min: 1e-3,
    max: 1e5,
    usual: 9.5,
};
const PERIHELION: WishSpec = WishSpec {
    key: "perihelion",
    unit: "AU",
    min: 1e-4,
    max: 1e5,
    usual: 1.0,
};
const LEAVE: WishSpec = WishSpec {
    key: "leave",
    unit: "km/s",
    min: 0.0,
    max: 1000.0,
    usual: 5.0,
};
const TURN: WishSpec = WishSpec {
    key: "turn",
    unit: "°",
    min: 1e-3,
    max: 180.0,
    usual: 90.0,
};
const CHANGE: WishSpec = WishSpec {
    key: "change",
    unit: "km/s",
    min: -1000.0,
    max: 1000.0,
    usual: 0.0,
};
