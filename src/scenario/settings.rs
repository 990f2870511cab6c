//! The scenario itself: every setting in display units.

use serde::{Deserialize, Serialize};

use super::choice::{CustomPlanet, PlanetChoice};
use super::field::Field;
use super::notice::Notice;
use crate::decimal::round_significant;
use crate::physics::units::RADIANS_PER_DEGREE;
use crate::physics::{Body, Encounter, FlybyError, Planet};

/// Every setting of a pass, in the units that people type. Each number is inside its [`Field`]'s range.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(into = "String", try_from = "String")]
pub struct Scenario {
    planet: PlanetChoice,
    v_infinity_km_s: f64,
    approach_deg: f64,
    crank_deg: f64,
    periapsis_radii: f64,
    aim_deg: f64,
    probe_mass_kg: f64,
}

impl Default for Scenario {
    fn default() -> Self {
        let default = |field: Field| field.spec().default.unwrap_or(f64::NAN);
        Self {
            planet: PlanetChoice::Known(Body::Jupiter),
            v_infinity_km_s: default(Field::VInfinity),
            approach_deg: default(Field::Approach),
            crank_deg: default(Field::Crank),
            periapsis_radii: default(Field::Periapsis),
            aim_deg: default(Field::Aim),
            probe_mass_kg: default(Field::ProbeMass),
        }
    }
}

impl Scenario {
    /// The planet chosen.
    pub fn planet(&self) -> PlanetChoice {
        self.planet
    }

    /// Chooses a planet. The other settings stay.
    pub fn set_planet(&mut self, planet: PlanetChoice) {
        self.planet = planet;
    }

    /// The planet with this key: one of the eight, or a custom one that starts with the present planet's numbers.
    ///
    /// # Errors
    /// A [`Notice`] when there is no such planet.
    pub fn choose_planet(&mut self, key: &str) -> Result<(), Notice> {
        self.planet = match (key, self.planet) {
            (PlanetChoice::CUSTOM, PlanetChoice::Known(body)) => {
                PlanetChoice::Custom(Planet::of(body).into())
            }
            (PlanetChoice::CUSTOM, custom) => custom,
            (known, _) => PlanetChoice::known(known)?,
        };
        Ok(())
    }

    /// A field's value in its display unit; `None` for a custom planet's numbers when the planet is one of the eight.
    pub fn get(&self, field: Field) -> Option<f64> {
        let mut copy = *self;
        copy.slot(field).map(|slot| *slot)
    }

    /// Sets a field to a value in its display unit.
    ///
    /// # Errors
    /// A [`Notice`] when the value is outside the field's range or the field does not apply; nothing changes then.
    pub fn set(&mut self, field: Field, value: f64) -> Result<(), Notice> {
        let value = field.check(value)?;
        match self.slot(field) {
            Some(slot) => *slot = value,
            None => return Err(Notice::NotCustom(field, super::print_number(value))),
        }
        Ok(())
    }

    /// Sets a field to the number that a text stands for, in the field's display unit.
    ///
    /// # Errors
    /// As [`Self::set`], and when the text is not a number.
    pub fn set_text(&mut self, field: Field, text: &str) -> Result<(), Notice> {
        self.set(field, field.read(text)?)
    }

    /// The probe's mass, kg.
    pub fn probe_mass_kg(&self) -> f64 {
        self.probe_mass_kg
    }

    /// The scenario in core units, ready to solve.
    ///
    /// # Errors
    /// [`FlybyError`] when a custom planet's numbers leave the range of f64 in core units.
    pub fn encounter(&self) -> Result<Encounter, FlybyError> {
        let planet = self.planet.planet()?;
        Ok(Encounter {
            planet,
            v_infinity_km_s: self.v_infinity_km_s,
            approach_rad: self.approach_deg * RADIANS_PER_DEGREE,
            crank_rad: self.crank_deg * RADIANS_PER_DEGREE,
            periapsis_km: self.periapsis_radii * planet.radius_km,
            aim_rad: self.aim_deg * RADIANS_PER_DEGREE,
        })
    }

    /// The same scenario with the approach angle, periapsis and aim angle of an encounter, to 13 digits: enough to lose
    /// nothing that matters, few enough to drop the tails of a change of units.
    #[must_use]
    pub fn aimed(&self, encounter: &Encounter) -> Self {
        // What has not changed keeps all its digits.
        let unless_same = |old: f64, unit: f64, new: f64| {
            let is_same = (old * unit).to_bits() == new.to_bits();
            if is_same {
                old
            } else {
                round_significant(new / unit, 13)
            }
        };
        let radius = encounter.planet.radius_km;
        Self {
            approach_deg: unless_same(
                self.approach_deg,
                RADIANS_PER_DEGREE,
                encounter.approach_rad,
            ),
            periapsis_radii: unless_same(self.periapsis_radii, radius, encounter.periapsis_km),
            aim_deg: unless_same(self.aim_deg, RADIANS_PER_DEGREE, encounter.aim_rad),
            ..*self
        }
    }

    fn slot(&mut self, field: Field) -> Option<&mut f64> {
        match (field, &mut self.planet) {
            (Field::Gm, PlanetChoice::Custom(CustomPlanet { gm_km3_s2, .. })) => Some(gm_km3_s2),
            (Field::Radius, PlanetChoice::Custom(CustomPlanet { radius_km, .. })) => {
                Some(radius_km)
            }
            (Field::Orbit, PlanetChoice::Custom(CustomPlanet { orbit_au, .. })) => Some(orbit_au),
            (Field::Gm | Field::Radius | Field::Orbit, PlanetChoice::Known(_)) => None,
            (Field::VInfinity, _) => Some(&mut self.v_infinity_km_s),
            (Field::Approach, _) => Some(&mut self.approach_deg),
            (Field::Crank, _) => Some(&mut self.crank_deg),
            (Field::Periapsis, _) => Some(&mut self.periapsis_radii),
            (Field::Aim, _) => Some(&mut self.aim_deg),
            (Field::ProbeMass, _) => Some(&mut self.probe_mass_kg),
        }
    }
}
