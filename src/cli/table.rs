//! One setting varied over a range, as CSV.

use super::output::deliver;
use super::{Failure, Refusal, TableArguments, open};
use crate::report::{Sweep, csv};

/// Computes the table and prints or writes it.
pub(crate) fn run(arguments: &TableArguments) -> Result<(), Failure> {
    deliver(&compute(arguments)?, arguments.out.as_deref())
}

fn compute(arguments: &TableArguments) -> Result<String, Refusal> {
    let sandbox = open(&arguments.text)?;
    let sweep = Sweep {
        field: arguments.vary.field,
        from: arguments.vary.from,
        to: arguments.vary.to,
        steps: arguments.steps,
    };
    Ok(csv(sandbox.scenario(), &sweep)?)
}
