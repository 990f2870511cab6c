//! Whatever is set, every coordinate of every picture is a finite number.

use fastrand::Rng;
use glam::{DVec2, dvec2};
use two_frames::figure::{Look, Mark, Picture, Theme, svg};
use two_frames::sandbox::{Change, Input, Sandbox, Sizes};

use crate::geometry::Box2;
use crate::scenarios::any;

/// Scenarios tried.
const SCENARIOS: usize = 2_000;

fn places(mark: &Mark) -> Vec<DVec2> {
    match mark {
        Mark::Path(path) => [&path.points[..], &[dvec2(path.stroke.width, 0.0)]].concat(),
        Mark::Disc(disc) => vec![
            disc.centre,
            dvec2(disc.radius, disc.edge.map_or(0.0, |edge| edge.width)),
        ],
        Mark::Arrow(arrow) => vec![arrow.from, arrow.to, dvec2(arrow.stroke.width, 0.0)],
        Mark::Label(label) => vec![label.at, dvec2(label.size, 0.0)],
        Mark::Handle(handle) => vec![handle.at, dvec2(handle.radius, 0.0)],
        Mark::Raster(raster) => vec![raster.at, raster.size],
    }
}

/// Words that only a number gone wrong brings into a text.
const WRONG: [&str; 4] = ["NaN", "nan", "inf", "∞ km"];

pub(crate) fn check(picture: &Picture, what: &str) {
    for mark in &picture.marks {
        assert!(
            places(mark).iter().all(|place| place.is_finite()),
            "{what}: {mark:?}"
        );
    }
    for label in picture.labels() {
        assert!(
            !WRONG.iter().any(|wrong| label.text.contains(wrong)),
            "{what}: “{}”",
            label.text
        );
        assert!(
            Box2::new(label.bounds()).is_in(picture.size),
            "{what}: “{}”",
            label.text
        );
    }
}

#[test]
fn random_scenarios_at_random_moments_and_sizes() {
    let mut rng = Rng::with_seed(2);
    let (mut drawn, mut refused) = (0, 0);
    for _ in 0..SCENARIOS {
        let text = any(&mut rng).to_string();
        let mut sandbox = Sandbox::open(&text);
        let scrub = [0.0, 0.5, 1.0, rng.f64()][rng.usize(..4)];
        sandbox
            .apply(Input::Clock(Change::Scrub(scrub)))
            .expect("the clock takes every position");
        sandbox
            .apply(Input::Zoom(64.0_f64.powf(rng.f64() * 2.0 - 1.0)))
            .expect("every zoom");
        // One in four from north; the others from anywhere, often exactly along an axis.
        let eye = 360.0 * dvec2(rng.f64(), rng.f64()) - 180.0;
        let look = [
            Look::NORTH,
            Look::new(eye.x, eye.y),
            Look::new((eye.x / 90.0).round() * 90.0, (eye.y / 90.0).round() * 90.0),
            Look::new(eye.x, 0.0),
        ][rng.usize(..4)];
        sandbox
            .apply(Input::Look(look))
            .expect("every look is taken");
        let text = format!("{text} {look:?}");
        let size = dvec2(200.0 + 1_800.0 * rng.f64(), 200.0 + 1_200.0 * rng.f64());
        let Ok(pictures) = sandbox.pictures(&Sizes::all(size)) else {
            refused += 1;
            continue;
        };
        drawn += 1;
        for picture in [
            &pictures.planet_frame,
            &pictures.sun_frame,
            &pictures.diagram,
            &pictures.record,
        ] {
            check(picture, &text);
        }
        let panel = sandbox.panel().expect("what can be drawn can be told");
        for words in &panel.descriptions {
            assert!(
                !WRONG.iter().any(|wrong| words.contains(wrong)),
                "{text}: {words}"
            );
        }
        if drawn % 20 == 0 {
            let markup = svg(&pictures.sun_frame, "", Theme::Light);
            assert!(!markup.contains("NaN") && !markup.contains("inf"), "{text}");
            roxmltree::Document::parse(&markup).expect("well-formed XML");
        }
    }
    println!("{drawn} drawn, {refused} refused");
    // Only a custom planet can be beyond computing with; it must not be all that is tried.
    assert!(
        drawn > SCENARIOS * 8 / 10 && refused > 0,
        "{drawn} drawn, {refused} refused"
    );
}
