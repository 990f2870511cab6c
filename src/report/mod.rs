//! A flyby in words and numbers for people: units, rounding and sentences happen here and nowhere else.

mod csv;
mod describe;
mod number;
mod quantity;
mod readout;
mod refusal;
mod sentence;
mod solution;
mod story;
mod value;

pub use csv::{Sweep, SweepError, csv};
pub use describe::{describe_diagram, describe_record, describe_stage};
pub use number::{MINUS, degrees, fixed, moment, short, short_span, significant, span};
pub use quantity::{Instant, Pass, Quantity};
pub use readout::{Fact, Row, facts, now, readouts};
pub use refusal::refusal;
pub use sentence::{Piece, Sentence};
pub use solution::{OrbitPart, PlanetFramePart, PlanetPart, Solution, SunFramePart};
pub use story::{cautions, motion_note, planet_sentence, sun_sentence, why_sentence};
pub use value::{Style, Value};
