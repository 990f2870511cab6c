//! The pass that does what is wished, as JSON: for one text, or for one a line.

use super::lines::answer;
use super::{AimArguments, Failure, Refusal, open};
use crate::physics::Free;
use crate::report::AimSolution;
use crate::sandbox::{AimChange, Input};
use crate::scenario::Wish;

/// Searches from one text, or from each line of standard input, and prints what it finds.
pub(crate) fn run(arguments: &AimArguments) -> Result<(), Failure> {
    let wish = Wish::read(&arguments.goal).map_err(Refusal::Goal)?;
    answer(&arguments.text, |text| {
        search(text, wish, arguments.free.into())
    })
}

/// The search is never kept to the orbit plane: whoever wants that asks the page.
fn search(text: &str, wish: Wish, free: Free) -> Result<AimSolution, Refusal> {
    let mut sandbox = open(text)?;
    for input in [
        Input::Aim(AimChange::InPlane(false)),
        Input::Aim(AimChange::Wish(wish)),
        Input::Aim(AimChange::Free(free)),
    ] {
        sandbox
            .apply(input)
            .map_err(|notice| Refusal::Scenario(vec![notice]))?;
    }
    Ok(sandbox.aim_solution()?)
}
