//! Scenarios for tests: any that a scenario text can hold.

use fastrand::Rng;
use two_frames::scenario::{CustomPlanet, Field, PlanetChoice, Scale, Scenario, Spec};

/// Any scenario: one of the eight planets or a custom one, and every number anywhere in its range, its ends and the
/// slider's rounded values included.
pub(crate) fn any(rng: &mut Rng) -> Scenario {
    let mut scenario = Scenario::default();
    let planets = PlanetChoice::KNOWN.len();
    match PlanetChoice::KNOWN.get(rng.usize(..planets + 4)) {
        Some((_, body)) => scenario.set_planet(PlanetChoice::Known(*body)),
        None => scenario.set_planet(any_custom(rng)),
    }
    for field in Field::ALL {
        if !field.is_of_custom_planet() {
            let value = any_value(rng, field.spec());
            scenario.set(field, value).expect("a value in its range");
        }
    }
    scenario
}

/// A custom planet: mostly one that can be computed with, sometimes any three numbers above 0.
fn any_custom(rng: &mut Rng) -> PlanetChoice {
    let wild = rng.u8(..4) == 0;
    let mut number = |field: Field| {
        let spec = field.spec();
        let (low, high) = if wild {
            (spec.min, spec.max)
        } else {
            spec.slider
        };
        between(rng, low, high, Scale::Logarithmic)
    };
    PlanetChoice::Custom(CustomPlanet {
        gm_km3_s2: number(Field::Gm),
        radius_km: number(Field::Radius),
        orbit_au: number(Field::Orbit),
    })
}

fn any_value(rng: &mut Rng, spec: &Spec) -> f64 {
    match rng.u8(..10) {
        0 => spec.min,
        1 => spec.max,
        2 => spec.default.unwrap_or(1.0),
        3 | 4 => spec.value_at(between(
            rng,
            spec.slider_range().0,
            spec.slider_range().1,
            Scale::Linear,
        )),
        _ => between(rng, spec.min, spec.max, spec.scale),
    }
}

/// A number from `low` to `high`: each equally likely, or on a logarithmic scale each power of ten.
fn between(rng: &mut Rng, low: f64, high: f64, scale: Scale) -> f64 {
    let part = rng.f64();
    let value = match scale {
        Scale::Linear => low + (high - low) * part,
        Scale::Logarithmic => 10_f64.powf(low.log10() + (high.log10() - low.log10()) * part),
    };
    value.max(low).min(high)
}
