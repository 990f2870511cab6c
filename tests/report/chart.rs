//! The chart of an outcome: the best value against a brute-force search, and each sentence against the numbers.

use fastrand::Rng;
use two_frames::physics::{Encounter, Flyby, Measure};
use two_frames::report::{ChartReading, MeasureWords, Place, Shape};
use two_frames::scenario::Field;

use super::{Solved, many};

const SETTINGS: [Field; 3] = [Field::Periapsis, Field::Approach, Field::VInfinity];

/// Points of the brute-force search.
const TRIES: u32 = 3_000;

/// The outcome of the pass with one setting changed, display units, by solving it whole; `None` where it strikes.
fn outcome(flyby: &Flyby, measure: Measure, against: Field, x: f64) -> Option<f64> {
    let mut encounter = flyby.encounter;
    match against {
        Field::Approach => encounter.approach_rad = x.to_radians(),
        Field::VInfinity => encounter.v_infinity_km_s = x,
        _ => encounter.periapsis_km = x * encounter.planet.radius_km,
    }
    let Encounter {
        periapsis_km,
        planet,
        ..
    } = encounter;
    if periapsis_km < planet.radius_km * (1.0 - 1e-9) {
        return None;
    }
    let pass = Flyby::solve(&encounter).expect("a pass");
    let orbit = &pass.orbit_after;
    let au = 149_597_870.7;
    let speed = |v: glam::DVec3| v.length();
    Some(match measure {
        Measure::SpeedChange => {
            speed(pass.sun_velocity_out.km_s) - speed(pass.sun_velocity_in.km_s)
        }
        Measure::EnergyChange => orbit.energy_km2_s2 - pass.orbit_before.energy_km2_s2,
        Measure::VelocityChange => speed(pass.velocity_out.km_s - pass.velocity_in.km_s),
        Measure::Aphelion => orbit.aphelion_km.map_or(f64::INFINITY, |km| km / au),
        Measure::Perihelion => orbit.perihelion_km / au,
        Measure::Inclination => orbit.inclination_rad.unwrap_or(0.0).to_degrees(),
        Measure::Turn => pass.turn_rad.to_degrees(),
    })
}

/// Every value of the setting that the brute-force search tries, with the outcome there.
fn tried(flyby: &Flyby, chart: &ChartReading) -> Vec<(f64, f64)> {
    let (measure, against) = (chart.course.measure, chart.course.against);
    let (low, high) = (chart.course.range.low, chart.course.range.high);
    let at = |i: u32| {
        let part = f64::from(i) / f64::from(TRIES);
        if against == Field::Approach {
            low + (high - low) * part
        } else {
            low * (high / low).powf(part)
        }
    };
    (0..=TRIES)
        .map(at)
        .filter_map(|x| Some((x, outcome(flyby, measure, against, x)?)))
        .collect()
}

/// Charts of every outcome and setting, of passes with sizes as real planets have them.
pub(crate) fn charts() -> Vec<(Solved, ChartReading)> {
    let mut rng = Rng::with_seed(41);
    let usual = |solved: &Solved| {
        let planet = solved.flyby.encounter.planet;
        (1e2..1e10).contains(&planet.gm)
            && (1e2..1e6).contains(&planet.radius_km)
            && (1e6..1e11).contains(&planet.orbit_km)
    };
    let mut charts = Vec::new();
    for solved in many().into_iter().filter(usual) {
        let measure = MeasureWords::ALL[rng.usize(..7)].measure;
        let against = SETTINGS[rng.usize(..3)];
        let chart = ChartReading::of(&solved.flyby, measure, against);
        charts.push((solved, chart));
    }
    assert!(charts.len() > 250, "{}", charts.len());
    charts
}

fn is_least(chart: &ChartReading) -> bool {
    chart.best.is_some_and(|best| best.is_loss) || chart.course.measure == Measure::Perihelion
}

#[test]
fn the_best_is_the_best_of_a_brute_force_search() {
    let mut found = 0;
    for (solved, chart) in charts() {
        let Some(best) = chart.best else { continue };
        let name = format!(
            "{} {:?} {:?} {best:?}",
            solved.scenario, chart.course.measure, chart.course.against
        );
        let (measure, against) = (chart.course.measure, chart.course.against);
        let there = outcome(&solved.flyby, measure, against, best.x).expect("it passes");
        let size = best.value.abs().max(1e-3);
        assert!(
            (there - best.value).abs() < 1e-7 * size.max(1.0),
            "{name}: {there}"
        );
        let sign = if is_least(&chart) { -1.0 } else { 1.0 };
        for (x, value) in tried(&solved.flyby, &chart) {
            // Rounding of the brute-force side's differences; the label shows far fewer digits.
            assert!(
                sign * (value - best.value) <= 1e-6 * size.max(1.0),
                "{name}: {value} at {x}"
            );
        }
        found += 1;
    }
    assert!(found > 150, "{found}");
}

#[test]
fn what_has_no_best_has_a_reason() {
    let mut seen = [0; 4];
    for (solved, chart) in charts() {
        if chart.best.is_some() {
            continue;
        }
        let name = format!(
            "{} {:?} {:?}",
            solved.scenario, chart.course.measure, chart.course.against
        );
        let tried = tried(&solved.flyby, &chart);
        match chart.shape {
            Shape::Strikes => {
                assert!(tried.is_empty(), "{name}");
                seen[0] += 1;
            }
            Shape::Leaves => {
                assert!(tried.iter().all(|(_, value)| value.is_infinite()), "{name}");
                seen[1] += 1;
            }
            Shape::Flat { middle, within } => {
                let off = tried.iter().map(|(_, value)| (value - middle).abs());
                assert!(
                    off.fold(0.0, f64::max) <= 1.1 * within + 1e-6 * middle.abs().max(1.0),
                    "{name}"
                );
                seen[2] += 1;
            }
            Shape::Curve => {
                let flipped = tried.iter().any(|(_, value)| *value > 180.0 - 1e-6);
                let left = tried.iter().any(|(_, value)| value.is_infinite());
                assert!(flipped || left, "{name}");
                seen[3] += 1;
            }
        }
    }
    assert!(seen.iter().all(|count| *count > 0), "{seen:?}");
}

/// Source of the optimum: |Δv| = 2 v∞/(1 + r v∞²/μ) is largest at v∞ = √(μ/r), by differentiation; it is then v∞.
#[test]
fn the_best_v_infinity_is_the_circular_speed() {
    let mut found = 0;
    for solved in many() {
        let chart = ChartReading::of(&solved.flyby, Measure::VelocityChange, Field::VInfinity);
        let encounter = solved.flyby.encounter;
        let circular = (encounter.planet.gm / encounter.periapsis_km).sqrt();
        let Some(best) = chart.best.filter(|best| best.place == Place::Inside) else {
            continue;
        };
        assert!(
            (best.value / circular - 1.0).abs() < 1e-12,
            "{}",
            solved.scenario
        );
        assert!(
            (best.x / circular - 1.0).abs() < 1e-6,
            "{}",
            solved.scenario
        );
        let best_pass = Flyby::solve(&Encounter {
            v_infinity_km_s: circular,
            ..encounter
        })
        .expect("a pass");
        assert!((best_pass.turn_rad.to_degrees() - 60.0).abs() < 1e-9);
        found += 1;
    }
    assert!(found > 100, "{found}");
}

/// Each claim of a sentence, held to the brute-force search.
#[test]
fn every_claim_is_true() {
    let mut seen = [0; 5];
    for (solved, chart) in charts() {
        let sentence = chart.sentence(&solved.pass()).to_string();
        let name = format!(
            "{} {:?} {:?}: {sentence}",
            solved.scenario, chart.course.measure, chart.course.against
        );
        let tried = tried(&solved.flyby, &chart);
        let sign = if is_least(&chart) { -1.0 } else { 1.0 };
        let slack = |value: f64| 1e-6 * value.abs().max(1.0);
        if sentence.contains("Closer is better") {
            let pairs = tried.windows(2);
            for pair in pairs {
                assert!(
                    sign * (pair[0].1 - pair[1].1) >= -slack(pair[0].1),
                    "{name}"
                );
            }
            seen[0] += 1;
        }
        if let Some(best) = chart.best.filter(|_| sentence.contains("Closer turns")) {
            let mut closer = tried.iter().filter(|(x, _)| *x < best.x);
            assert!(
                closer.all(|(_, value)| sign * (best.value - value) >= -slack(*value)),
                "{name}"
            );
            let (x, turn) = (best.x, Measure::Turn);
            let [near, far] =
                [x * 0.9, x].map(|x| outcome(&solved.flyby, turn, Field::Periapsis, x.max(1.0)));
            assert!(near >= far, "{name}");
            seen[1] += 1;
        }
        if sentence.contains("past the motion of") {
            let best = chart.best.expect("a best pass");
            // At the best point the path leaves along the planet's motion.
            let radius = solved.flyby.encounter.planet.radius_km;
            let encounter = Encounter {
                periapsis_km: best.x * radius,
                ..solved.flyby.encounter
            };
            let pass = Flyby::solve(&encounter).expect("a pass");
            let out = pass.velocity_out.km_s;
            assert!(out.y / out.length() > 1.0 - 1e-6, "{name}: {out}");
            seen[2] += 1;
        }
        if sentence.contains("both worse") {
            let best = chart.best.expect("a best speed");
            for beside in [best.x / 1.05, best.x * 1.05] {
                let value = chart.course.value(beside);
                assert!(sign * (best.value - value) > -1e-9, "{name}");
            }
            seen[3] += 1;
        }
        if let Some(rest) = sentence.strip_prefix("It leaves the Sun from ") {
            assert!(rest.ends_with('.'));
            let [[from, to]] = chart.leaves[..] else {
                panic!("{name}")
            };
            let [from, to] = [from, to].map(|part| chart.course.range.at(part));
            for (x, value) in &tried {
                let near = (x - from).abs().min((x - to).abs()) < 1e-6 * x.abs().max(1.0);
                assert!(
                    near || value.is_infinite() == (*x > from && *x < to),
                    "{name}: {value} at {x}"
                );
            }
            seen[4] += 1;
        }
        assert!(
            sentence.ends_with('.') && !sentence.contains("NaN") && !sentence.contains("inf"),
            "{name}"
        );
    }
    assert!(seen.iter().all(|count| *count > 0), "{seen:?}");
}
