//! One of the pictures as an SVG file.

use glam::DVec2;

use super::output::deliver;
use super::{Against, Eye, Failure, FigureArguments, Ground, Moment, Part, Refusal, open};
use crate::figure::{Look, Picture, Theme, chart_picture, svg};
use crate::report::{describe_aim_plane, describe_chart};
use crate::sandbox::{AimChange, Change, Input, Sandbox, Sizes};
use crate::scenario::{Field, Wish};

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
    set(&mut sandbox, arguments)?;
    let size = DVec2::new(
        f64::from(arguments.size.width),
        f64::from(arguments.size.height),
    );
    let (picture, description) = match arguments.part {
        Part::Outcome => chart(&mut sandbox, size)?,
        Part::AimPlane => aim_plane(&mut sandbox, size)?,
        part => choose(part, &mut sandbox, size)?,
    };
    let theme = match arguments.theme {
        Ground::Light => Theme::Light,
        Ground::Dark => Theme::Dark,
    };
    Ok(svg(&picture, &description, theme))
}

/// Refuses options that the part has no use for.
fn check_options(arguments: &FigureArguments) -> Result<(), Refusal> {
    let part = arguments.part;
    let is_stage = matches!(part, Part::PlanetFrame | Part::SunFrame);
    let is_plane = part == Part::AimPlane;
    let shows_outcome = is_plane || part == Part::Outcome;
    let cases = [
        (
            arguments.against.is_some() && part != Part::Outcome,
            "--against",
            "`--part outcome`",
        ),
        (
            arguments.show.is_some() && !shows_outcome,
            "--show",
            "`--part aim-plane` and `--part outcome`",
        ),
        (
            arguments.goal.is_some() && !is_plane,
            "--for",
            "`--part aim-plane`",
        ),
        (
            arguments.look.is_some() && !is_stage,
            "--look",
            "`--part planet-frame` and `--part sun-frame`",
        ),
        (
            arguments.time.is_some() && shows_outcome,
            "--time",
            "the pictures of one moment",
        ),
    ];
    match cases.into_iter().find(|(wrong, ..)| *wrong) {
        Some((_, option, parts)) => Err(Refusal::NotOfPart { option, parts }),
        None => Ok(()),
    }
}

/// Sets what the options say beside the scenario and the time.
fn set(sandbox: &mut Sandbox, arguments: &FigureArguments) -> Result<(), Refusal> {
    let look = match arguments.look {
        Some(Eye::North) | None => Look::NORTH,
        Some(Eye::Behind) => Look::BEHIND,
        Some(Eye::Side) => Look::SIDE,
    };
    let against = arguments.against.map(|against| match against {
        Against::Periapsis => Field::Periapsis,
        Against::Approach => Field::Approach,
        Against::VInfinity => Field::VInfinity,
    });
    let goal = match &arguments.goal {
        Some(text) => AimChange::Wish(Wish::read(text).map_err(Refusal::Goal)?),
        None => AimChange::NoWish,
    };
    // A person at the command line need not be kept from leaving the plane.
    let inputs = [
        Some(Input::Aim(AimChange::InPlane(false))),
        Some(Input::Look(look)),
        arguments.show.map(AimChange::Measure).map(Input::Aim),
        Some(Input::Aim(goal)),
        against.map(AimChange::Against).map(Input::Aim),
    ];
    for input in inputs.into_iter().flatten() {
        let done = sandbox.apply(input);
        done.map_err(|notice| Refusal::Scenario(vec![notice]))?;
    }
    Ok(())
}

/// The chart of an outcome and what it shows in words.
fn chart(sandbox: &mut Sandbox, size: DVec2) -> Result<(Picture, String), Refusal> {
    let reading = sandbox.chart()?;
    let description = describe_chart(&sandbox.solved()?.pass(), &reading);
    Ok((chart_picture(&reading, size), description))
}

/// Cells to a side of the aim plane's map: finer than the eye tells apart once they are blended.
const COLUMNS: usize = 128;

/// The aim plane and what it shows in words.
fn aim_plane(sandbox: &mut Sandbox, size: DVec2) -> Result<(Picture, String), Refusal> {
    // A wish that makes no sense here is refused, not left out.
    if sandbox.aim_settings().wish.is_some() {
        sandbox.aiming()?;
    }
    let picture = sandbox.aim_picture(size, COLUMNS)?;
    let description = describe_aim_plane(&sandbox.solved()?.pass());
    Ok((picture, description))
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

/// One of the four pictures of the moment and what it shows in words.
fn choose(part: Part, sandbox: &mut Sandbox, size: DVec2) -> Result<(Picture, String), Refusal> {
    let pictures = sandbox.pictures(&Sizes::all(size))?;
    let [planet_frame, sun_frame, diagram, record] = sandbox.panel()?.descriptions;
    Ok(match part {
        Part::PlanetFrame => (pictures.planet_frame, planet_frame),
        Part::SunFrame => (pictures.sun_frame, sun_frame),
        Part::Diagram => (pictures.diagram, diagram),
        _ => (pictures.record, record),
    })
}
