//! What the picture tests share: the ready-made passes at moments and sizes, composed through the sandbox as the page
//! does it, and marks picked out by what they stand for.

use glam::{DVec2, dvec2};
use two_frames::figure::{Arrow, Dash, Disc, Label, Look, Mark, Path, Picture, Role};
use two_frames::sandbox::{AimChange, Change, Input, Sandbox, Sizes};
use two_frames::scenario::{PRESETS, Preset};

/// A moment of a pass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Moment {
    Start,
    Periapsis,
    Telling,
    End,
}

impl Moment {
    pub(crate) const ALL: [Self; 4] = [Self::Start, Self::Periapsis, Self::Telling, Self::End];

    fn change(self) -> Change {
        match self {
            Self::Start => Change::Scrub(0.0),
            Self::Periapsis => Change::Go(0.0),
            Self::Telling => Change::Telling,
            Self::End => Change::Scrub(1.0),
        }
    }
}

/// The pictures' names, as the command calls them.
pub(crate) const PARTS: [&str; 4] = ["planet-frame", "sun-frame", "diagram", "record"];

/// One of the four pictures, with its name and its description in words.
pub(crate) struct Part {
    pub(crate) name: &'static str,
    pub(crate) picture: Picture,
    pub(crate) description: String,
}

/// The ready-made pass with this id.
pub(crate) fn preset(id: &str) -> &'static Preset {
    let found = PRESETS.iter().find(|preset| preset.id == id);
    found.unwrap_or_else(|| panic!("there is no ready-made pass {id}"))
}

/// A sandbox that shows a scenario text at a moment.
pub(crate) fn sandbox(text: &str, moment: Moment) -> Sandbox {
    let mut sandbox = Sandbox::open(text);
    assert!(
        sandbox.notices().is_empty(),
        "{text}: {:?}",
        sandbox.notices()
    );
    // An example out of the plane would open from behind.
    for input in [Input::Clock(moment.change()), Input::Look(Look::NORTH)] {
        sandbox.apply(input).expect("every change is taken");
    }
    sandbox
}

/// A sandbox that shows a scenario text at a moment, seen from somewhere.
pub(crate) fn seen(text: &str, moment: Moment, look: Look) -> Sandbox {
    let mut sandbox = sandbox(text, moment);
    for input in [Input::Aim(AimChange::InPlane(false)), Input::Look(look)] {
        sandbox.apply(input).expect("every look is taken");
    }
    sandbox
}

/// The four pictures of a sandbox.
pub(crate) fn parts(sandbox: &mut Sandbox, sizes: &Sizes) -> [Part; 4] {
    let pictures = sandbox.pictures(sizes).expect("the pass can be solved");
    let descriptions = sandbox
        .panel()
        .expect("the pass can be solved")
        .descriptions;
    let [d1, d2, d3, d4] = descriptions;
    let part = |name, picture, description| Part {
        name,
        picture,
        description,
    };
    [
        part(PARTS[0], pictures.planet_frame, d1),
        part(PARTS[1], pictures.sun_frame, d2),
        part(PARTS[2], pictures.diagram, d3),
        part(PARTS[3], pictures.record, d4),
    ]
}

/// Stages and diagram of one size, the record of another.
pub(crate) fn sizes(stage: (f64, f64), record: (f64, f64)) -> Sizes {
    Sizes {
        stage: dvec2(stage.0, stage.1),
        diagram: dvec2(stage.0, stage.1),
        record: dvec2(record.0, record.1),
    }
}

/// The usual size.
pub(crate) fn usual() -> Sizes {
    sizes((640.0, 640.0), (720.0, 400.0))
}

/// Every path of a role and dash, in painting order.
pub(crate) fn paths(picture: &Picture, role: Role, dash: Dash) -> Vec<&Path> {
    let all = picture.marks.iter().filter_map(|mark| match mark {
        Mark::Path(path) => Some(path),
        _ => None,
    });
    all.filter(|path| path.stroke.role == role && path.stroke.dash == dash)
        .collect()
}

/// Every arrow of a role.
pub(crate) fn arrows(picture: &Picture, role: Role) -> Vec<&Arrow> {
    let all = picture.marks.iter().filter_map(|mark| match mark {
        Mark::Arrow(arrow) => Some(arrow),
        _ => None,
    });
    all.filter(|arrow| arrow.stroke.role == role).collect()
}

/// Every disc.
pub(crate) fn discs(picture: &Picture) -> Vec<&Disc> {
    let all = picture.marks.iter().filter_map(|mark| match mark {
        Mark::Disc(disc) => Some(disc),
        _ => None,
    });
    all.collect()
}

/// The planet's disc in a stage.
#[track_caller]
pub(crate) fn planet(picture: &Picture) -> Disc {
    let found: Vec<_> = discs(picture)
        .into_iter()
        .filter(|disc| disc.fill == Some(Role::Planet))
        .collect();
    assert_eq!(found.len(), 1, "one planet in {}", picture.title);
    *found[0]
}

/// Where a stage shows the probe.
#[track_caller]
pub(crate) fn probe(picture: &Picture) -> DVec2 {
    let found: Vec<_> = discs(picture)
        .into_iter()
        .filter(|disc| disc.fill == Some(Role::Ink))
        .collect();
    assert_eq!(found.len(), 1, "one probe in {}", picture.title);
    found[0].centre
}

/// The labels with this text.
pub(crate) fn labels<'a>(picture: &'a Picture, text: &str) -> Vec<&'a Label> {
    picture
        .labels()
        .filter(|label| label.text == text)
        .collect()
}

/// The only label with this text.
#[track_caller]
pub(crate) fn label<'a>(picture: &'a Picture, text: &str) -> &'a Label {
    let found = labels(picture, text);
    assert_eq!(found.len(), 1, "one label “{text}” in {}", picture.title);
    found[0]
}
