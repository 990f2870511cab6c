//! One number everywhere: the core compiled to WebAssembly gives the same bits as the native one, and prints and reads
//! them the same way.
//!
//! Source: the project's own promise of exact equality asks for exact equality; the native library is the reference here, and it is held to
//! published numbers and to an integrator in tests/physics.

use serde_json::json;
use two_frames::scenario::{Field, PRESETS, PlanetChoice, Scale, Scenario};

use crate::native::Native;
use crate::page::{Page, on_our_page};
use crate::reading::{NUMBERS, Number};

/// How many random scenarios.
const COUNT: usize = 300;
/// How many are opened in one call of the browser.
const BATCH: usize = 50;

/// A value anywhere in a field's range, spread as its slider spreads it.
fn anywhere(field: Field, random: &mut fastrand::Rng) -> f64 {
    let spec = field.spec();
    let (low, high) = match spec.default {
        Some(_) => (spec.min, spec.max),
        // A custom planet's numbers may be anything above 0; sizes far from a planet's are left to the fields' own tests.
        None => spec.slider,
    };
    let part = random.f64();
    match spec.scale {
        Scale::Linear => low + (high - low) * part,
        Scale::Logarithmic => low * (high / low).powf(part),
    }
}

/// A random scenario: any planet or a custom one, every field anywhere in its range.
pub(crate) fn random_text(random: &mut fastrand::Rng) -> String {
    let mut scenario = Scenario::default();
    let keys: Vec<_> = PlanetChoice::KNOWN.iter().map(|(key, _)| *key).collect();
    let key = keys.get(random.usize(..=keys.len())).copied();
    scenario
        .choose_planet(key.unwrap_or(PlanetChoice::CUSTOM))
        .expect("a known key");
    for field in Field::ALL {
        if scenario.get(field).is_some() {
            let value = anywhere(field, random).clamp(field.spec().min, field.spec().max);
            scenario.set(field, value).expect("within the range");
        }
    }
    scenario.to_string()
}

/// Opens each text through the address and takes down what the page then shows: the fields' texts and the numbers.
async fn open_all(
    page: &Page,
    texts: &[String],
) -> thirtyfour::error::WebDriverResult<Vec<(Vec<String>, Vec<Number>)>> {
    let script = format!(
        "
        const frame = () => new Promise(requestAnimationFrame);
        const open = async text => {{
            const heard = new Promise(resolve => addEventListener('hashchange', resolve, {{ once: true }}));
            location.hash = text;
            await heard;
            // Two frames to be shown; four, because the browser allows 200 changes of the address in 10 s.
            for (let i = 0; i < 4; i++) await frame();
            return [deep('[data-part=number]').map(e => e.value), {NUMBERS}];
        }};
        (async () => {{
            const seen = [];
            for (const text of arguments[0]) seen.push(await open(text));
            return seen;
        }})().then(done);"
    );
    let seen = page.run_async(&script, vec![json!(texts)]).await?;
    Ok(serde_json::from_value(seen)?)
}

#[test]
fn three_hundred_scenarios_and_the_ready_made_passes_have_the_same_bits() {
    let mut random = fastrand::Rng::with_seed(20_261_125);
    let mut texts: Vec<String> = (0..COUNT).map(|_| random_text(&mut random)).collect();
    // The last one first: the page opens with the first, and opening that again would change nothing.
    texts.extend(PRESETS.iter().rev().map(|preset| preset.text.to_owned()));
    let (mut numbers, mut strikes) = (0, 0);
    on_our_page("", async |page| {
        page.ready().await?;
        for batch in texts.chunks(BATCH) {
            for (text, (fields, shown)) in batch.iter().zip(open_all(page, batch).await?) {
                let native = Native::of(text);
                native.expect_on_page(&shown);
                expect_fields(&native, &fields);
                numbers += shown.len();
                strikes += usize::from(native.value("sun_frame.speed_out_km_s").is_none());
            }
        }
        Ok(())
    });
    println!(
        "{numbers} numbers in {} scenarios, {strikes} of them strikes",
        texts.len()
    );
    assert!(
        strikes > 10 && strikes < texts.len() / 2,
        "a grid that tries both outcomes"
    );
}

/// Each field shows its value in the library's own digits: the page has read and printed it without loss.
fn expect_fields(native: &Native, fields: &[String]) {
    let values = native.text();
    let shown: Vec<_> = Field::ALL.iter().zip(in_field_order(fields)).collect();
    for (field, text) in shown {
        if let Some(value) = native.sandbox.scenario().get(*field) {
            let meant = two_frames::scenario::print_number(value);
            assert_eq!(*text, meant, "{} of {values}", field.spec().key);
        }
    }
}

/// The page's order is custom planet, first fields, those out of the plane, folded ones; the library's is that of the scenario text.
fn in_field_order(fields: &[String]) -> [&String; 9] {
    let [
        gm,
        radius,
        orbit,
        v_infinity,
        approach,
        periapsis,
        crank,
        aim,
        mass,
    ] = fields
    else {
        panic!("nine fields, not {fields:?}")
    };
    [
        gm, radius, orbit, v_infinity, approach, crank, periapsis, aim, mass,
    ]
}
