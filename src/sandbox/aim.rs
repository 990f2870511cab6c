//! What a person has set about aiming: the wish, what may change for it, and what the map and the chart show.

use glam::DVec2;

use crate::decimal::{round_significant, within};
use crate::figure::aim_point_at;
use crate::physics::{Approach, Encounter, Free, Measure};
use crate::report::{Aiming, NoAim};
use crate::scenario::{Field, Most, Notice, Preset, Scenario, Wish};

/// The settings of the aim plane, the wish and the chart. They belong to the page, not to the scenario.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AimSettings {
    /// What is wished, if anything.
    pub wish: Option<Wish>,
    /// What may change for it.
    pub free: Free,
    /// Whether the probe has to stay in the planet's orbit plane.
    pub in_plane: bool,
    /// The outcome that the map and the chart show.
    pub measure: Measure,
    /// What the chart varies.
    pub against: Field,
}

/// A change of what is aimed at, of what is wished, or of what the aim plane and the chart show.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AimChange {
    /// Aim at exactly a point (B·T, B·R), km.
    At([f64; 2]),
    /// Aim at a place of the aim plane's picture, composed for a size, and hold on to it: the piece of the plane shown
    /// stays as it is until it is released.
    Hold(DVec2, DVec2),
    /// Aim at another place of the same picture.
    Move(DVec2),
    /// Aim beside the present aim point, to the right (along T) and down (along R): so many hundredths of the way from
    /// the picture's middle to its edge.
    Nudge(DVec2),
    /// Stay in the planet's orbit plane, or leave it.
    InPlane(bool),
    /// Wish for something.
    Wish(Wish),
    /// Wish for nothing.
    NoWish,
    /// Say what may change for the wish.
    Free(Free),
    /// Take the answer to the wish.
    Take,
    /// Show another outcome on the map and in the chart.
    Measure(Measure),
    /// Draw the chart against another field.
    Against(Field),
}

/// What the aim plane's picture shows while its aim point is held: half a side, km, and the picture's size.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct AimView(Option<(f64, DVec2)>);

impl AimView {
    pub(super) fn hold(half_km: f64, size: DVec2) -> Self {
        Self(Some((half_km, size)))
    }

    pub(super) fn is_held(self) -> bool {
        self.0.is_some()
    }

    /// Half a side, km, while it is held.
    pub(super) fn half_km(self) -> Option<f64> {
        self.0.map(|(half_km, _)| half_km)
    }

    /// The aim point, km, at a place of the held picture.
    pub(super) fn point(self, place: DVec2) -> Option<[f64; 2]> {
        self.0
            .map(|(half_km, size)| aim_point_at(place, half_km, size))
    }
}

impl Default for AimSettings {
    fn default() -> Self {
        Self {
            wish: Some(Wish::Most(Most::Gain)),
            free: Free::AimPoint,
            in_plane: true,
            measure: Measure::SpeedChange,
            against: Field::Periapsis,
        }
    }
}

impl AimSettings {
    /// The same for another scenario: with what a ready-made pass aims for and shows, if it is one, and in the plane if it
    /// is.
    pub(super) fn of(self, scenario: &Scenario) -> Self {
        let aims = Preset::index_of(scenario).and_then(Preset::aims_at);
        let (wish, measure) = aims.unwrap_or((self.wish, self.measure));
        Self {
            wish,
            measure,
            in_plane: is_in_plane(scenario),
            ..self
        }
    }

    /// Searches for the wish from a scenario.
    pub(super) fn search(&self, scenario: &Scenario) -> Result<Aiming, NoAim> {
        let wish = self.wish.ok_or(NoAim::NoWish)?;
        Aiming::new(scenario, wish, self.free, self.in_plane)
    }
}

/// Whether a scenario's approach and aim lie in the planet's orbit plane.
pub(super) fn is_in_plane(scenario: &Scenario) -> bool {
    let is = |field, values: &[f64]| {
        values
            .iter()
            .any(|value| scenario.get(field) == Some(*value))
    };
    is(Field::Crank, &[0.0]) && is(Field::Aim, &[0.0, 180.0, -180.0])
}

/// The scenario brought into the orbit plane: on the side that it is nearer to.
pub(super) fn brought_into_plane(scenario: &Scenario) -> Scenario {
    let aim = scenario.get(Field::Aim).unwrap_or_default();
    let aim = if aim.abs() > 90.0 { 180.0 } else { 0.0 };
    let approach = scenario.get(Field::Approach).unwrap_or_default();
    let crank = scenario.get(Field::Crank).unwrap_or_default();
    // Cranked right round, the probe comes from the other side of the planet's motion.
    let approach = if crank.abs() > 90.0 {
        -approach
    } else {
        approach
    };
    with(
        scenario,
        &[
            (Field::Approach, approach),
            (Field::Crank, 0.0),
            (Field::Aim, aim),
        ],
    )
}

/// The scenario aimed at a point (B·T, B·R), km, as a person points at it: rounded to what can be told apart on a map, and
/// kept in the plane where it has to be.
pub(super) fn pointed_at(scenario: &Scenario, point_km: [f64; 2], in_plane: bool) -> Scenario {
    let Some(encounter) = encounter_at(scenario, point_km, in_plane) else {
        return *scenario;
    };
    let exact = scenario.aimed(&encounter);
    let periapsis = exact.get(Field::Periapsis).unwrap_or(1.0);
    let aim = exact.get(Field::Aim).unwrap_or_default();
    let periapsis = round_significant(periapsis, 4);
    with(
        scenario,
        &[
            (Field::Periapsis, kept(periapsis)),
            (Field::Aim, (10.0 * aim).round() / 10.0),
        ],
    )
}

/// The scenario aimed at exactly a point (B·T, B·R), km.
///
/// # Errors
/// A [`Notice`] when its closest distance is outside the periapsis' range.
pub(super) fn aimed_at(
    scenario: &Scenario,
    point_km: [f64; 2],
    in_plane: bool,
) -> Result<Scenario, Notice> {
    let Some(encounter) = encounter_at(scenario, point_km, in_plane) else {
        return Ok(*scenario);
    };
    let exact = scenario.aimed(&encounter);
    Field::Periapsis.check(exact.get(Field::Periapsis).unwrap_or(1.0))?;
    Ok(exact)
}

/// The encounter of an aim point; straight at the centre the aim angle stays as it was.
fn encounter_at(scenario: &Scenario, [t, r]: [f64; 2], in_plane: bool) -> Option<Encounter> {
    let encounter = scenario.encounter().ok()?;
    let approach = Approach::of(&encounter).ok()?;
    let r = if in_plane { 0.0 } else { r };
    if !(t.is_finite() && r.is_finite()) {
        return None;
    }
    let aimed = approach.encounter([t, r]);
    Some(if t == 0.0 && r == 0.0 {
        Encounter {
            aim_rad: encounter.aim_rad,
            ..aimed
        }
    } else {
        aimed
    })
}

/// A periapsis, planet radii, kept within its range.
fn kept(radii: f64) -> f64 {
    let spec = Field::Periapsis.spec();
    within(radii, spec.min, spec.max)
}

/// A scenario with some fields set to values that are in their ranges.
fn with(scenario: &Scenario, values: &[(Field, f64)]) -> Scenario {
    let mut changed = *scenario;
    for (field, value) in values {
        if changed.set(*field, *value).is_err() {
            return *scenario;
        }
    }
    changed
}
