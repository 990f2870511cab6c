//! The words of a chart, and the numbers in them.

use two_frames::physics::Measure;
use two_frames::report::{ChartReading, Pass, Piece, chart_sentence, describe_chart};
use two_frames::scenario::Field;

use super::Solved;
use super::chart::charts;

#[test]
fn sentences_are_as_promised() {
    let told = |text: &str, measure, against| {
        chart_sentence(&Solved::of(text).pass(), measure, against).to_string()
    };
    for (text, measure, against, words) in [
        (
            "",
            Measure::SpeedChange,
            Field::Periapsis,
            "The most gain of speed round the Sun is +11.88 km/s at 2.36 planet radii. Closer turns the path past the \
             motion of Jupiter and gives less.",
        ),
        (
            "",
            Measure::Turn,
            Field::Periapsis,
            "The largest turn is 146.0°, grazing the surface. Closer is better here.",
        ),
        (
            "planet=venus&v-infinity=6&approach=120&periapsis=1.1",
            Measure::VelocityChange,
            Field::VInfinity,
            // Source: √(324858.592 / 6656.98) = 6.986, worked by hand.
            "At this periapsis the largest change of velocity is 6.99 km/s, at v∞ = 6.99 km/s, the circular speed there, \
             where the path turns by 60°.",
        ),
        (
            "",
            Measure::SpeedChange,
            Field::Approach,
            "The most gain of speed round the Sun is +13.18 km/s at an approach angle of 165.1°.",
        ),
        (
            "",
            Measure::Turn,
            Field::Approach,
            "It is 94.1°, whatever the approach angle.",
        ),
        (
            "periapsis=0.6",
            Measure::SpeedChange,
            Field::Approach,
            "Every pass of this chart strikes Jupiter.",
        ),
    ] {
        assert_eq!(told(text, measure, against), words, "{text}");
    }
}

#[test]
fn numbers_of_the_chart_say_that_they_are_its_own() {
    for (solved, chart) in charts() {
        for piece in chart.sentence(&solved.pass()).pieces() {
            if let Piece::Number(value) = piece {
                assert!(value.path.starts_with("page.chart."), "{}", value.path);
                assert!(value.value.is_some_and(f64::is_finite));
            }
        }
    }
}

#[test]
fn the_description_names_what_where_and_the_best() {
    let solved = Solved::of("");
    let pass: Pass<'_> = solved.pass();
    let chart = ChartReading::of(&solved.flyby, Measure::SpeedChange, Field::Periapsis);
    let words = describe_chart(&pass, &chart);
    for part in [
        "Change of speed round the Sun",
        "8 planet radii: +10.90 km/s",
        "+11.88 km/s",
    ] {
        assert!(words.contains(part), "{words}");
    }
    let struck = Solved::of("periapsis=0.6");
    let chart = ChartReading::of(&struck.flyby, Measure::SpeedChange, Field::Periapsis);
    assert!(describe_chart(&struck.pass(), &chart).contains("0.6 planet radii: it strikes"));
}
