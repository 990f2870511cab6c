//! A long way through anything that a person, or a broken mouse, can do.

use fastrand::Rng;
use glam::{DVec2, dvec2};
use two_frames::figure::{Grip, Mark, Picture};
use two_frames::report::{Fact, Piece, Row, Sentence, Value, refusal};
use two_frames::sandbox::{Change, Input, Pace, PaceLaw, Panel, Sandbox, Sizes};
use two_frames::scenario::{Field, PRESETS, PlanetChoice, Scenario};

use crate::scenarios::any;

/// Inputs on the way.
const INPUTS: usize = 20_000;

/// A number: mostly one that a control could send, sometimes one that none should.
fn number(rng: &mut Rng, low: f64, high: f64) -> f64 {
    const WILD: [f64; 8] = [
        0.0,
        -0.0,
        1e-300,
        -1e300,
        f64::MAX,
        f64::NAN,
        f64::INFINITY,
        f64::NEG_INFINITY,
    ];
    if rng.u8(..20) == 0 {
        WILD[rng.usize(..WILD.len())]
    } else {
        low + (high - low) * rng.f64()
    }
}

fn place(rng: &mut Rng) -> DVec2 {
    dvec2(number(rng, -50.0, 700.0), number(rng, -50.0, 700.0))
}

fn sizes(rng: &mut Rng) -> Sizes {
    Sizes::all(dvec2(220.0 + 900.0 * rng.f64(), 220.0 + 700.0 * rng.f64()))
}

fn change(rng: &mut Rng) -> Change {
    let laws = [PaceLaw::SlowerNear, PaceLaw::Even];
    match rng.u8(..10) {
        0 | 1 => Change::Play,
        2 => Change::Pause,
        3 => Change::Step(number(rng, -9.0, 9.0)),
        4 => Change::Scrub(number(rng, -0.2, 1.2)),
        5 => Change::Go(number(rng, -1e6, 1e6)),
        6 => Change::Telling,
        7 => Change::Pace(Pace {
            law: laws[rng.usize(..2)],
            whole_s: 1.0 + 60.0 * rng.f64(),
        }),
        _ => Change::Tick(number(rng, 0.0, 2.0)),
    }
}

fn input(rng: &mut Rng) -> Input {
    let field = Field::ALL[rng.usize(..Field::ALL.len())];
    let spec = field.spec();
    match rng.u8(..16) {
        0 => Input::Set(field, number(rng, spec.slider.0, spec.slider.1)),
        1 => Input::Set(field, [spec.min, spec.max][rng.usize(..2)]),
        2 => Input::Type(
            field,
            format!("{}", number(rng, spec.slider.0, spec.slider.1)),
        ),
        3 => Input::Type(
            field,
            ["", "-", "1e", "eight", "1e400"][rng.usize(..5)].into(),
        ),
        4 => Input::Slide(
            field,
            number(rng, spec.slider_range().0, spec.slider_range().1),
        ),
        5 => Input::Press(field, number(rng, -5.0, 5.0).round()),
        6 => Input::Planet(PlanetChoice::KNOWN[rng.usize(..8)].0.into()),
        7 => Input::Planet(["custom", "custom", "pluto", ""][rng.usize(..4)].into()),
        8 if rng.u8(..4) == 0 => Input::Preset(rng.usize(..PRESETS.len() + 2)),
        8 => Input::Open(any(rng).to_string()),
        9 if rng.u8(..4) == 0 => Input::Reset,
        9 => Input::Fit,
        10 => Input::Zoom(number(rng, 0.3, 3.0)),
        11 => Input::Grab(
            [Grip::Periapsis, Grip::Approach][rng.usize(..2)],
            place(rng),
            sizes(rng),
        ),
        12 | 13 => Input::Drag(place(rng)),
        14 if rng.bool() => Input::Release,
        _ => Input::Clock(change(rng)),
    }
}

/// Fails on words that only a number gone wrong brings into a text. No word that the pages use holds these letters.
#[track_caller]
fn is_sound(text: &str) {
    let wrong = text.contains("NaN")
        || text.contains("inf ")
        || text.ends_with("inf")
        || text.contains("inf°");
    assert!(!wrong && !text.is_empty(), "“{text}”");
}

#[track_caller]
fn check_value(value: &Value) {
    is_sound(&value.text);
    assert!(value.value.is_none_or(f64::is_finite), "{value:?}");
    assert!(!value.path.is_empty(), "{value:?}");
}

#[track_caller]
fn check_sentence(sentence: &Sentence) {
    is_sound(&sentence.to_string());
    for piece in sentence.pieces() {
        if let Piece::Number(value) = piece {
            check_value(value);
        }
    }
}

fn check_panel(panel: &Panel) {
    for sentence in [
        &panel.planet_sentence,
        &panel.sun_sentence,
        &panel.motion_note,
        &panel.why,
    ] {
        check_sentence(sentence);
    }
    panel.cautions.iter().for_each(check_sentence);
    panel
        .rows
        .iter()
        .flat_map(|Row { cells }| cells)
        .for_each(check_value);
    panel
        .facts
        .iter()
        .chain(&panel.now)
        .for_each(|Fact { value }| check_value(value));
    panel.descriptions.iter().for_each(|words| is_sound(words));
    for words in [
        &panel.moment,
        &panel.rate,
        &panel.sides[0].label,
        &panel.sides[1].label,
    ] {
        is_sound(words);
    }
    assert!(panel.time_d.is_finite() && (0.0..=1.0).contains(&panel.position));
}

fn check_picture(picture: &Picture) {
    picture.labels().for_each(|label| is_sound(&label.text));
    for mark in &picture.marks {
        let finite = match mark {
            Mark::Path(path) => path.points.iter().all(|point| point.is_finite()),
            Mark::Disc(disc) => disc.centre.is_finite() && disc.radius.is_finite(),
            Mark::Arrow(arrow) => arrow.from.is_finite() && arrow.to.is_finite(),
            Mark::Label(label) => label.at.is_finite(),
            Mark::Handle(handle) => handle.at.is_finite(),
            Mark::Raster(raster) => raster.at.is_finite() && raster.size.is_finite(),
        };
        assert!(finite, "{mark:?}");
    }
}

fn check(sandbox: &mut Sandbox, with_pictures: bool, sizes: &Sizes) -> bool {
    match (
        sandbox.panel(),
        with_pictures.then(|| sandbox.pictures(sizes)),
    ) {
        (Ok(panel), None) => check_panel(&panel),
        (Ok(panel), Some(Ok(pictures))) => {
            check_panel(&panel);
            for picture in [
                &pictures.planet_frame,
                &pictures.sun_frame,
                &pictures.diagram,
                &pictures.record,
            ] {
                check_picture(picture);
            }
        }
        (Err(error), None) => is_sound(&refusal(&error)),
        (Err(error), Some(Err(other))) => {
            assert_eq!(error, other);
            is_sound(&refusal(&error));
        }
        (panel, pictures) => panic!(
            "panel {:?}, pictures {:?}",
            panel.is_ok(),
            pictures.map(|drawn| drawn.is_ok())
        ),
    }
    sandbox.panel().is_ok()
}

#[test]
fn no_way_through_the_inputs_shows_anything_but_numbers() {
    let mut rng = Rng::with_seed(6);
    let mut sandbox = Sandbox::default();
    let (mut solved, mut refused) = (0, 0);
    for i in 0..INPUTS {
        let input = input(&mut rng);
        let before = *sandbox.scenario();
        let words = format!("{input:?}");
        if let Err(notice) = sandbox.apply(input) {
            assert_eq!(*sandbox.scenario(), before, "{words}");
            // A notice repeats the value as it was given, and that may be no number.
            assert!(notice.to_string().contains("try "), "{notice}");
            refused += 1;
        }
        let text = sandbox.scenario().to_string();
        assert_eq!(
            Scenario::read_strictly(&text).as_ref(),
            Ok(sandbox.scenario()),
            "{words} left {text}"
        );
        solved += usize::from(check(&mut sandbox, i % 10 == 0, &sizes(&mut rng)));
        // A custom planet beyond computing with would end the journey's interest.
        if sandbox.panel().is_err() && rng.u8(..3) == 0 {
            sandbox = Sandbox::open(PRESETS[rng.usize(..PRESETS.len())].text);
        }
    }
    println!("{solved} of {INPUTS} solved, {refused} inputs refused");
    assert!(solved > INPUTS * 9 / 10 && refused > INPUTS / 50);
}
