//! Values, sentences and tables: each number shown is the number solved, and is rounded as it should be.

#[path = "../scenarios/mod.rs"]
mod scenarios;

mod aim_reasons;
mod aim_words;
mod aiming;
mod bend;
mod chart;
mod chart_words;
mod json;
mod sweeps;
mod tables;
mod words;

use fastrand::Rng;
use two_frames::physics::Flyby;
use two_frames::report::{Pass, Solution};
use two_frames::scenario::{PRESETS, Preset, Scenario};

/// A solved scenario.
struct Solved {
    scenario: Scenario,
    flyby: Flyby,
    solution: Solution,
}

impl Solved {
    /// `None` where the settings have no flyby together.
    fn new(scenario: &Scenario) -> Option<Self> {
        let flyby = Flyby::solve(&scenario.encounter().ok()?).ok()?;
        let solution = Solution::new(scenario, &flyby);
        Some(Self {
            scenario: *scenario,
            flyby,
            solution,
        })
    }

    #[track_caller]
    fn of(text: &str) -> Self {
        let scenario = Scenario::read_strictly(text).expect("a good text");
        Self::new(&scenario).expect("a pass")
    }

    fn pass(&self) -> Pass<'_> {
        Pass {
            flyby: &self.flyby,
            probe_mass_kg: self.scenario.probe_mass_kg(),
        }
    }
}

/// Scenarios of every kind: the ready-made ones and random ones that can be solved.
fn many() -> Vec<Solved> {
    let mut rng = Rng::with_seed(7);
    let random = (0..400).map(|_| scenarios::any(&mut rng));
    let all = PRESETS.iter().map(Preset::scenario).chain(random);
    all.filter_map(|scenario| Solved::new(&scenario)).collect()
}

fn bits(value: Option<f64>) -> Option<u64> {
    value.map(f64::to_bits)
}
