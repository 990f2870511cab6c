//! One of the four pictures as an SVG file.

use glam::DVec2;

use super::output::deliver;
use super::{Eye, Failure, FigureArguments, Ground, Moment, Part, Refusal, open};
use crate::figure::{Look, Picture, Theme, svg};
use crate::sandbox::{AimChange, Change, Input, Sandbox, Sizes};

/// Draws the picture and writes it.
pub(crate) fn run(arguments: &FigureArguments) -> Result<(), Failure> {
    deliver(&draw(arguments)?, arguments.out.as_deref())
}

fn draw(arguments: &FigureArguments) -> Result<String, Refusal> {
    let mut sandbox = open(&arguments.text)?;
    if let Some(time) = arguments.time {
        go(&mut sandbox, time)?;
    }
    if let Some(eye) = arguments.look {
        look(&mut sandbox, eye, arguments.part)?;
    }
    let size = DVec2::new(
        f64::from(arguments.size.width),
        f64::from(arguments.size.height),
    );
    let (picture, description) = choose(arguments.part, &mut sandbox, size)?;
    let theme = match arguments.theme {
        Ground::Light => Theme::Light,
        Ground::Dark => Theme::Dark,
    };
    Ok(svg(&picture, &description, theme))
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

/// Sets from where the stages are seen. The other pictures show no space that could be seen from elsewhere.
fn look(sandbox: &mut Sandbox, eye: Eye, part: Part) -> Result<(), Refusal> {
    if matches!(part, Part::Diagram | Part::Record) {
        return Err(Refusal::NoLook);
    }
    let look = match eye {
        Eye::North => Look::NORTH,
        Eye::Behind => Look::BEHIND,
        Eye::Side => Look::SIDE,
    };
    for input in [Input::Aim(AimChange::InPlane(false)), Input::Look(look)] {
        let set = sandbox.apply(input);
        set.map_err(|notice| Refusal::Scenario(vec![notice]))?;
    }
    Ok(())
}

/// The picture and what it shows in words.
fn choose(part: Part, sandbox: &mut Sandbox, size: DVec2) -> Result<(Picture, String), Refusal> {
    let pictures = sandbox.pictures(&Sizes::all(size))?;
    let [planet_frame, sun_frame, diagram, record] = sandbox.panel()?.descriptions;
    Ok(match part {
        Part::PlanetFrame => (pictures.planet_frame, planet_frame),
        Part::SunFrame => (pictures.sun_frame, sun_frame),
        Part::Diagram => (pictures.diagram, diagram),
        Part::Record => (pictures.record, record),
    })
}
