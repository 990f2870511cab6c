//! All numbers of a pass as JSON: one text, or one a line.

use super::lines::answer;
use super::{Failure, SolveArguments, open};

/// Prints the answer to one text, or to each line of standard input.
pub(crate) fn run(arguments: &SolveArguments) -> Result<(), Failure> {
    answer(&arguments.text, |text| Ok(open(text)?.solution()?))
}
