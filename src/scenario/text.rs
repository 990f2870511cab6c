//! The scenario text: `v=1&planet=jupiter&v-infinity=9&approach=129&periapsis=8&aim=0`.

use std::fmt;

use crate::decimal::shortest;

use super::choice::{CustomPlanet, PlanetChoice};
use super::field::Field;
use super::notice::Notice;
use super::settings::Scenario;

/// The version of the text that this program writes and reads.
const VERSION: &str = "1";

/// A text read leniently: a usable scenario, and what could not be used.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// The scenario, with the default of each field that could not be used.
    pub scenario: Scenario,
    /// What could not be used, in the order of the text.
    pub notices: Vec<Notice>,
}

impl Scenario {
    /// Reads a text, taking the default wherever the text cannot be used. Never fails: see [`Reading::notices`].
    ///
    /// A whole address of the page will do: its text is what stands after the last `#`.
    pub fn read(text: &str) -> Reading {
        let mut text = text;
        while let Some((_, after)) = text.split_once('#') {
            text = after;
        }
        let mut reader = Reader::default();
        let pieces = || text.split('&').filter(|piece| !piece.is_empty());
        // A custom planet's numbers may stand before the word that asks for one.
        if pieces().find(|piece| piece.starts_with(PLANET)) == Some(CUSTOM) {
            reader.scenario.set_planet(PlanetChoice::Custom(UNKNOWN));
        }
        for piece in pieces() {
            if let Err(notice) = reader.take(piece) {
                reader.notices.push(notice);
            }
        }
        reader.finish()
    }

    /// The text form. A crank angle and a probe mass are left out at their defaults; the rest always stands.
    pub fn text(&self) -> String {
        let mut text = ["v=", VERSION, "&planet=", self.planet().key()].concat();
        for &field in &Field::ALL {
            let spec = field.spec();
            let optional = matches!(field, Field::Crank | Field::ProbeMass);
            match self.get(field) {
                Some(value) if !(optional && Some(value) == spec.default) => {
                    text += &["&", spec.key, "=", &print_number(value)].concat();
                }
                _ => {}
            }
        }
        text
    }

    /// Reads a text and refuses it when any part cannot be used.
    ///
    /// # Errors
    /// Every [`Notice`], in the order of the text.
    pub fn read_strictly(text: &str) -> Result<Self, Vec<Notice>> {
        let Reading { scenario, notices } = Self::read(text);
        if notices.is_empty() {
            Ok(scenario)
        } else {
            Err(notices)
        }
    }
}

/// How the piece that names the planet starts, and the one that asks for a planet of one's own.
const PLANET: &str = "planet=";
const CUSTOM: &str = "planet=custom";

/// A custom planet whose numbers have not been read.
const UNKNOWN: CustomPlanet = CustomPlanet {
    gm_km3_s2: f64::NAN,
    radius_km: f64::NAN,
    orbit_au: f64::NAN,
};

/// The text so far.
#[derive(Default)]
struct Reader<'a> {
    scenario: Scenario,
    seen: Vec<&'a str>,
    notices: Vec<Notice>,
}

impl<'a> Reader<'a> {
    fn take(&mut self, piece: &'a str) -> Result<(), Notice> {
        let (key, value) = piece
            .split_once('=')
            .ok_or_else(|| Notice::NotAPair(piece.into()))?;
        if self.seen.contains(&key) {
            return Err(Notice::Twice(key.into(), value.into()));
        }
        let field = Field::from_key(key);
        if field.is_some() || matches!(key, "v" | "planet") {
            self.seen.push(key);
        }
        match (key, field) {
            ("v", _) if value == VERSION => Ok(()),
            ("v", _) => Err(Notice::UnknownVersion(value.into())),
            ("planet", _) => self.take_planet(value),
            (_, Some(field)) => self.scenario.set_text(field, value),
            _ => Err(Notice::UnknownKey(key.into())),
        }
    }

    fn take_planet(&mut self, value: &str) -> Result<(), Notice> {
        if value != PlanetChoice::CUSTOM {
            self.scenario.set_planet(PlanetChoice::known(value)?);
        }
        Ok(())
    }

    /// A custom planet needs all three numbers: without them the default planet stands in.
    fn finish(mut self) -> Reading {
        let given = self.scenario;
        for &field in &Field::ALL {
            if given.get(field).is_some_and(f64::is_nan) {
                self.scenario.set_planet(Scenario::default().planet());
                // A number that is there but could not be used has its own notice already.
                if !self.seen.contains(&field.spec().key) {
                    self.notices.push(Notice::Missing(field));
                }
            }
        }
        Reading {
            scenario: self.scenario,
            notices: self.notices,
        }
    }
}

impl fmt::Display for Scenario {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text())
    }
}

impl From<Scenario> for String {
    fn from(scenario: Scenario) -> Self {
        scenario.text()
    }
}

impl TryFrom<String> for Scenario {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        Self::read_strictly(&text).map_err(|notices| {
            notices
                .iter()
                .map(Notice::to_string)
                .collect::<Vec<_>>()
                .join(" ")
        })
    }
}

/// A number as text that reads back to the same bits.
pub fn print_number(value: f64) -> String {
    shortest(value)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_default_prints_as_the_contract_shows_it() {
        let text = Scenario::default().to_string();
        assert_eq!(
            text,
            "v=1&planet=jupiter&v-infinity=9&approach=129&periapsis=8&aim=0"
        );
        assert_eq!(Scenario::read_strictly(&text), Ok(Scenario::default()));
        assert_eq!(Scenario::read_strictly(""), Ok(Scenario::default()));
    }

    #[test]
    fn a_bad_value_leaves_the_default_and_says_why() {
        let reading = Scenario::read("planet=jupiter&periapsis=0.001&v-infinity=fast&flavour=3");
        assert_eq!(reading.scenario, Scenario::default());
        let words: Vec<_> = reading.notices.iter().map(Notice::to_string).collect();
        assert_eq!(
            words[0],
            "periapsis=0.001: the value has to be from 0.01 to 10000 planet radii; try 8."
        );
        assert_eq!(
            words[1],
            "v-infinity=fast: the value has to be a number; try 9."
        );
        assert!(words[2].starts_with("flavour: there is no such key"));
    }

    #[test]
    fn a_custom_planet_needs_its_three_numbers() {
        let whole = "v=1&planet=custom&gm=5e5&radius=7000&orbit=0.5&v-infinity=9&approach=129&periapsis=8&aim=0";
        let scenario = Scenario::read_strictly(whole).expect("all three are there");
        assert_eq!(scenario.get(Field::Gm), Some(5e5));
        let reading = Scenario::read("planet=custom&gm=5e5&radius=-1");
        assert_eq!(reading.scenario.planet(), Scenario::default().planet());
        assert_eq!(reading.notices.len(), 2);
        assert!(matches!(
            Scenario::read("gm=5").notices[..],
            [Notice::NotCustom(Field::Gm, _)]
        ));
    }

    #[test]
    fn not_a_number_is_not_a_number() {
        for bad in ["NaN", "inf", "-inf", "1e999", "", "1,5", "0x10"] {
            let reading = Scenario::read(&format!("periapsis={bad}"));
            assert_eq!(
                (reading.scenario, reading.notices.len()),
                (Scenario::default(), 1),
                "{bad}"
            );
        }
    }
}
