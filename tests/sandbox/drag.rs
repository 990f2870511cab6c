//! Taking hold of the picture: the same scenarios as by slider and number field.

use glam::DVec2;
use two_frames::figure::{Grip, Look, Mark, View};
use two_frames::sandbox::{Input, Sandbox};
use two_frames::scenario::{Field, PRESETS, Preset};

use super::{SIZES, apply, get, preset, state};

fn view(sandbox: &mut Sandbox) -> View {
    sandbox.views(&SIZES).expect("a pass").planet
}

/// Where a handle is in the planet frame's picture.
fn handle(sandbox: &mut Sandbox, grip: Grip) -> DVec2 {
    let picture = sandbox.pictures(&SIZES).expect("a pass").planet_frame;
    let mut handles = picture.marks.iter().filter_map(|mark| match mark {
        Mark::Handle(handle) if handle.grip == grip => Some(handle.at),
        _ => None,
    });
    handles.next().expect("both handles are drawn")
}

/// What can be taken hold of in the planet frame's picture.
fn handles(sandbox: &mut Sandbox) -> Vec<Grip> {
    let marks = sandbox.pictures(&SIZES).expect("a pass").planet_frame.marks;
    let grips = marks.iter().filter_map(|mark| match mark {
        Mark::Handle(handle) => Some(handle.grip),
        _ => None,
    });
    grips.collect()
}

/// Takes hold of a handle and moves it so that the planet's centre sees it at `turned` of its place.
fn drag(sandbox: &mut Sandbox, grip: Grip, turned: impl Fn(DVec2) -> DVec2) {
    let (view, from) = (view(sandbox), handle(sandbox, grip));
    let centre = view.place(DVec2::ZERO);
    apply(sandbox, Input::Grab(grip, from, SIZES));
    apply(sandbox, Input::Drag(centre + turned(from - centre)));
}

/// A ready-made pass seen from north, where both handles are.
fn from_north(preset: &Preset) -> Sandbox {
    let mut sandbox = Sandbox::open(preset.text);
    apply(&mut sandbox, Input::Look(Look::NORTH));
    sandbox
}

#[test]
fn a_handle_put_down_where_it_was_changes_nothing() {
    for preset in &PRESETS {
        for grip in [Grip::Periapsis, Grip::Approach] {
            let mut sandbox = from_north(preset);
            let expected = sandbox.scenario().to_string();
            drag(&mut sandbox, grip, |offset| offset);
            apply(&mut sandbox, Input::Release);
            assert_eq!(
                sandbox.scenario().to_string(),
                expected,
                "{} {grip:?}",
                preset.id
            );
        }
    }
}

/// The periapsis handle goes by its distance from the planet, also where it is seen from north at a slant.
#[test]
fn periapsis_follows_the_handle_s_distance() {
    for preset in &PRESETS {
        for factor in [0.5, 1.5, 2.0] {
            let mut sandbox = Sandbox::open(preset.text);
            let before = get(&sandbox, Field::Periapsis);
            let (low, high) = Field::Periapsis.spec().slider;
            drag(&mut sandbox, Grip::Periapsis, |offset| offset * factor);
            let (got, want) = (
                get(&sandbox, Field::Periapsis),
                (before * factor).max(low).min(high),
            );
            // Rounded to three digits: at most half a hundredth off.
            assert!(
                (got / want - 1.0).abs() < 5.1e-3,
                "{} x {factor}: {got}, {want}",
                preset.id
            );
        }
    }
}

#[test]
fn approach_follows_the_handle_round_the_planet() {
    for preset in &PRESETS {
        for degrees in [-140.0, -30.0, 1.0, 90.0, 179.0_f64] {
            let mut sandbox = from_north(preset);
            let before = get(&sandbox, Field::Approach);
            // Clockwise on the page, from forward (up) to outward (right), is positive.
            let (sin, cos) = degrees.to_radians().sin_cos();
            let turned = |offset: DVec2| {
                DVec2::new(
                    cos * offset.x - sin * offset.y,
                    sin * offset.x + cos * offset.y,
                )
            };
            drag(&mut sandbox, Grip::Approach, turned);
            let turns = (get(&sandbox, Field::Approach) - before - degrees) / 360.0;
            assert!(
                (turns - turns.round()).abs() < 1e-9,
                "{} by {degrees}: {}",
                preset.id,
                get(&sandbox, Field::Approach)
            );
            assert!(get(&sandbox, Field::Approach).abs() <= 180.0);
        }
    }
}

#[test]
fn drag_slider_number_field_and_link_reach_the_same_pass() {
    for position in [300.0, 500.0, 640.0, 777.0] {
        let mut slid = Sandbox::default();
        apply(&mut slid, Input::Slide(Field::Periapsis, position));
        let value = get(&slid, Field::Periapsis);
        let mut dragged = Sandbox::default();
        drag(&mut dragged, Grip::Periapsis, |offset| {
            offset * (value / 8.0)
        });
        apply(&mut dragged, Input::Release);
        let mut typed = Sandbox::default();
        apply(
            &mut typed,
            Input::Type(Field::Periapsis, format!("{value}")),
        );
        let opened = Sandbox::open(&slid.scenario().to_string());
        for other in [&dragged, &typed, &opened] {
            assert_eq!(
                other.scenario(),
                slid.scenario(),
                "position {position}, value {value}"
            );
        }
        let [a, b] =
            [&mut slid, &mut dragged].map(|sandbox| sandbox.pictures(&SIZES).expect("a pass"));
        assert!(a == b, "the same pictures, position {position}");
    }
    let (mut slid, mut dragged) = (Sandbox::default(), Sandbox::default());
    apply(&mut slid, Input::Slide(Field::Approach, -51.0));
    drag(&mut dragged, Grip::Approach, |offset| -offset);
    assert_eq!(slid.scenario(), dragged.scenario());
}

#[test]
fn the_picture_holds_still_while_something_is_held() {
    let mut sandbox = Sandbox::default();
    let before = sandbox.views(&SIZES).expect("a pass");
    drag(&mut sandbox, Grip::Periapsis, |offset| offset * 3.0);
    assert!(sandbox.is_dragging());
    assert_eq!(sandbox.views(&SIZES).expect("a pass"), before);
    // The handle is under the finger that holds it.
    let centre = before.planet.place(DVec2::ZERO);
    let reach = handle(&mut sandbox, Grip::Periapsis).distance(centre) * before.planet.scale;
    assert!((reach / (24.0 * 71_492.0) - 1.0).abs() < 1e-9, "{reach} km");
    apply(&mut sandbox, Input::Release);
    assert!(!sandbox.is_dragging());
    let after = sandbox.views(&SIZES).expect("a pass");
    assert_ne!(after, before, "let go, the picture fits the pass again");
    apply(&mut sandbox, Input::Drag(DVec2::new(3.0, 3.0)));
    assert!(
        (get(&sandbox, Field::Periapsis) - 24.0).abs() < 1e-12,
        "nothing is held any more"
    );
}

#[test]
fn opening_another_pass_lets_go() {
    for input in [Input::Preset(1), Input::Open(String::new()), Input::Reset] {
        let mut sandbox = Sandbox::default();
        drag(&mut sandbox, Grip::Approach, |offset| offset);
        apply(&mut sandbox, input);
        assert!(!sandbox.is_dragging());
    }
}

#[test]
fn a_handle_dragged_into_the_planet_strikes_and_can_be_dragged_out() {
    let mut sandbox = Sandbox::default();
    drag(&mut sandbox, Grip::Periapsis, |offset| offset * 1e-6);
    let low = Field::Periapsis.spec().slider.0;
    assert_eq!(get(&sandbox, Field::Periapsis).to_bits(), low.to_bits());
    assert!(
        sandbox
            .solved()
            .expect("a strike is a result")
            .flyby
            .strikes()
    );
    let far = view(&mut sandbox).place(DVec2::new(0.0, -10.0 * 71_492.0));
    apply(&mut sandbox, Input::Drag(far));
    assert_eq!(
        get(&sandbox, Field::Periapsis).to_bits(),
        10.0_f64.to_bits()
    );
}

/// Over a pole the closest point lies under the planet's centre, seen from north: there its distance cannot be dragged,
/// and there is no handle that would promise it.
#[test]
fn a_periapsis_over_the_pole_stays() {
    let mut sandbox = Sandbox::open("planet=mars&v-infinity=40&approach=90&periapsis=1.1&aim=90");
    let before = sandbox.scenario().to_string();
    assert_eq!(handles(&mut sandbox), [Grip::Approach]);
    let from = view(&mut sandbox).place(DVec2::ZERO);
    apply(&mut sandbox, Input::Grab(Grip::Periapsis, from, SIZES));
    apply(&mut sandbox, Input::Drag(DVec2::new(600.0, 600.0)));
    assert_eq!(sandbox.scenario().to_string(), before);
    // The approach can be turned all the same.
    apply(&mut sandbox, Input::Release);
    drag(&mut sandbox, Grip::Approach, DVec2::perp);
    assert_ne!(sandbox.scenario().to_string(), before);
}

/// An out-of-plane pass: half as far on the page is half as far in space.
#[test]
fn a_slanted_periapsis_is_drawn_where_it_is_dragged() {
    let mut sandbox = Sandbox::open(preset("out-of-plane").text);
    let (centre, from) = (
        view(&mut sandbox).place(DVec2::ZERO),
        handle(&mut sandbox, Grip::Periapsis),
    );
    let flyby = sandbox.solved().expect("a pass").flyby;
    let seen = from.distance(centre) * view(&mut sandbox).scale;
    assert!(
        seen < 0.99 * flyby.encounter.periapsis_km,
        "it is seen at a slant"
    );
    drag(&mut sandbox, Grip::Periapsis, |offset| offset * 2.0);
    assert!((get(&sandbox, Field::Periapsis) - 12.0).abs() < 1e-12);
}

#[test]
fn a_place_that_means_nothing_changes_nothing() {
    for grip in [Grip::Periapsis, Grip::Approach] {
        let mut sandbox = Sandbox::default();
        let from = handle(&mut sandbox, grip);
        apply(&mut sandbox, Input::Grab(grip, from, SIZES));
        let before = state(&sandbox);
        for place in [DVec2::NAN, DVec2::new(f64::NAN, 3.0)] {
            let refused = sandbox.apply(Input::Drag(place));
            assert!(state(&sandbox) == before, "{grip:?} {place}: {refused:?}");
        }
    }
}
