//! The scenario text: what is printed reads back bit for bit, what was ever written is read for ever, and what cannot be
//! used is named in words and breaks nothing.

#[path = "../scenarios/mod.rs"]
mod scenarios;

mod garbage;
mod kept;
mod notices;
mod printing;
mod wishes;

use two_frames::scenario::{Field, Notice, Scenario};

/// Every number of a scenario, as bits; `None` where the planet is not a custom one.
fn bits(scenario: &Scenario) -> Vec<Option<u64>> {
    Field::ALL
        .map(|field| scenario.get(field).map(f64::to_bits))
        .to_vec()
}

fn words(notices: &[Notice]) -> Vec<String> {
    notices.iter().map(Notice::to_string).collect()
}

/// The notices of a text, in words; the page's reading and the command's have to agree on them.
fn complaints(text: &str) -> (Scenario, Vec<String>) {
    let reading = Scenario::read(text);
    match Scenario::read_strictly(text) {
        Ok(scenario) => {
            assert!(
                reading.notices.is_empty(),
                "{text}: strictly accepted with {:?}",
                words(&reading.notices)
            );
            assert_eq!(bits(&scenario), bits(&reading.scenario), "{text}");
        }
        Err(refused) => {
            assert!(!refused.is_empty(), "{text}: refused without a word");
            assert_eq!(words(&refused), words(&reading.notices), "{text}");
        }
    }
    (reading.scenario, words(&reading.notices))
}
