//! One of the pictures as an SVG file.

use glam::DVec2;

use super::output::deliver;
use super::{Against, Failure, FigureArguments, Ground, Moment, Part, Refusal, open};
use crate::figure::{Picture, Theme, chart_picture, svg};
use crate::physics::Measure;
use crate::report::{ChartReading, describe_chart};
use crate::sandbox::{Change, Input, Sandbox, Sizes};
use crate::scenario::Field;

/// Draws the picture and writes it.
pub(crate) fn run(arguments: &FigureArguments) -> Result<(), Failure> {
    deliver(&draw(arguments)?, arguments.out.as_deref())
}

fn draw(arguments: &FigureArguments) -> Result<String, Refusal> {
    check_options(arguments)?;
    let mut sandbox = open(&arguments.text)?;
    if let Some(time) = arguments.time {
        go(&mut sandbox, time)?;
    }
    let size = DVec2::new(
        f64::from(arguments.size.width),
        f64::from(arguments.size.height),
    );
    let (picture, description) = choose(arguments, &mut sandbox, size)?;
    let theme = match arguments.theme {
        Ground::Light => Theme::Light,
        Ground::Dark => Theme::Dark,
    };
    Ok(svg(&picture, &description, theme))
}

/// Refuses options that the part has no use for.
fn check_options(arguments: &FigureArguments) -> Result<(), Refusal> {
    const OUTCOME: &str = "`--part outcome`";
    let is_chart = arguments.part == Part::Outcome;
    let cases = [
        (
            arguments.against.is_some() && !is_chart,
            "--against",
            OUTCOME,
        ),
        (arguments.show.is_some() && !is_chart, "--show", OUTCOME),
        (
            arguments.time.is_some() && is_chart,
            "--time",
            "the pictures of one moment",
        ),
    ];
    match cases.into_iter().find(|(wrong, ..)| *wrong) {
        Some((_, option, parts)) => Err(Refusal::NotOfPart { option, parts }),
        None => Ok(()),
    }
}

/// The chart of an outcome and what it shows in words.
fn chart(
    arguments: &FigureArguments,
    sandbox: &mut Sandbox,
    size: DVec2,
) -> Result<(Picture, String), Refusal> {
    let measure = arguments.show.unwrap_or(Measure::SpeedChange);
    let against = match arguments.against {
        Some(Against::Approach) => Field::Approach,
        Some(Against::VInfinity) => Field::VInfinity,
        Some(Against::Periapsis) | None => Field::Periapsis,
    };
    let solved = sandbox.solved()?;
    let reading = ChartReading::of(&solved.flyby, measure, against);
    let description = describe_chart(&solved.pass(), &reading);
    Ok((chart_picture(&reading, size), description))
}

/// Sets the clock. The sandbox would keep the time within what is drawn; here it would be a silent change of what was
/// asked for.
fn go(sandbox: &mut Sandbox, asked: Moment) -> Result<(), Refusal> {
    let track = &sandbox.solved()?.track;
    let (first, last) = (-track.half_s, track.end_s);
    if !(first..=last).contains(&asked.seconds()) {
        return Err(Refusal::NotDrawn {
            asked,
            from: asked.from(first),
            to: asked.up_to(last),
        });
    }
    let set = sandbox.apply(Input::Clock(Change::Go(asked.seconds())));
    set.map_err(|notice| Refusal::Scenario(vec![notice]))
}

/// The picture and what it shows in words.
fn choose(
    arguments: &FigureArguments,
    sandbox: &mut Sandbox,
    size: DVec2,
) -> Result<(Picture, String), Refusal> {
    let pictures = sandbox.pictures(&Sizes::all(size))?;
    let [planet_frame, sun_frame, diagram, record] = sandbox.panel()?.descriptions;
    Ok(match arguments.part {
        Part::PlanetFrame => (pictures.planet_frame, planet_frame),
        Part::SunFrame => (pictures.sun_frame, sun_frame),
        Part::Diagram => (pictures.diagram, diagram),
        Part::Record => (pictures.record, record),
        Part::Outcome => chart(arguments, sandbox, size)?,
    })
}
