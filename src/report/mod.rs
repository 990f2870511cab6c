//! A flyby in words and numbers for people: units, rounding and sentences happen here and nowhere else.

mod aim_failing;
mod aim_solution;
mod aim_words;
mod aiming;
mod chart_reading;
mod chart_words;
mod course;
mod csv;
mod describe;
mod measure_words;
mod number;
mod quantity;
mod readout;
mod readout_words;
mod refusal;
mod sentence;
mod solution;
mod spread;
mod story;
mod value;

pub use aim_solution::{AimSolution, AnswerPart, CirclePart};
pub use aim_words::aim_sentences;
pub use aiming::{Aiming, NoAim};
pub use chart_reading::{Best, ChartReading, Place, Shape};
pub use chart_words::chart_sentence;
pub use course::Course;
pub use csv::{Sweep, SweepError, csv};
pub use describe::{
    describe_aim_plane, describe_chart, describe_diagram, describe_record, describe_stage,
};
pub use measure_words::MeasureWords;
pub use number::{MINUS, degrees, fixed, moment, short, short_span, significant, span};
pub use quantity::{Instant, Pass, Quantity};
pub use readout::{Fact, Row, facts, now, readouts};
pub use readout_words::{FACT_WORDS, LineWords, NOW_WORDS, ROW_WORDS};
pub use refusal::refusal;
pub use sentence::{Piece, Sentence};
pub use solution::{OrbitPart, PlanetFramePart, PlanetPart, Solution, SunFramePart};
pub use spread::Spread;
pub use story::{cautions, motion_note, planet_sentence, sun_sentence, why_sentence};
pub use value::{Style, Value};
