//! From where the stages are seen: set, turned, kept, and given up with another pass.

use glam::{DVec2, dvec2};
use two_frames::figure::{Grip, Look, Mark};
use two_frames::sandbox::{AimChange, Change, Input, Sandbox};
use two_frames::scenario::{Field, PRESETS};

use super::{SIZES, apply, get, preset, state};

/// How far round and how high the eye stands, degrees.
fn eye(look: Look) -> DVec2 {
    dvec2(look.around_deg(), look.height_deg())
}

/// A sandbox in which the probe may leave the orbit plane, and the stages may be turned.
fn free(text: &str) -> Sandbox {
    let mut sandbox = Sandbox::open(text);
    apply(&mut sandbox, Input::Aim(AimChange::InPlane(false)));
    sandbox
}

#[track_caller]
fn turned(start: Look, by: DVec2) -> DVec2 {
    let mut sandbox = free("");
    apply(&mut sandbox, Input::Look(start));
    apply(&mut sandbox, Input::Turn(by));
    eye(sandbox.look())
}

#[test]
fn it_opens_from_north_and_looks_from_where_it_is_told() {
    let mut sandbox = free("");
    assert_eq!(sandbox.look(), Look::NORTH);
    assert!(sandbox.may_turn());
    for look in [
        Look::BEHIND,
        Look::SIDE,
        Look::new(-33.5, 12.0),
        Look::NORTH,
    ] {
        apply(&mut sandbox, Input::Look(look));
        assert_eq!(sandbox.look(), look);
        assert_eq!(sandbox.views(&SIZES).expect("a pass").look, look);
    }
}

#[test]
fn in_the_plane_the_stages_are_seen_from_north() {
    let mut sandbox = free("");
    apply(&mut sandbox, Input::Look(Look::BEHIND));
    apply(&mut sandbox, Input::Aim(AimChange::InPlane(true)));
    assert_eq!((sandbox.look(), sandbox.may_turn()), (Look::NORTH, false));
    apply(&mut sandbox, Input::Look(Look::SIDE));
    apply(&mut sandbox, Input::Turn(DVec2::new(10.0, 10.0)));
    assert_eq!(sandbox.look(), Look::NORTH);
}

#[test]
fn a_look_is_brought_into_its_range() {
    for (given, kept) in [
        ([30.0, 100.0], [30.0, 90.0]),
        ([30.0, -1e9], [30.0, -90.0]),
        ([180.0, 0.0], [180.0, 0.0]),
        ([-180.0, 0.0], [-180.0, 0.0]),
        ([181.0, 5.0], [-179.0, 5.0]),
        ([-190.0, 5.0], [170.0, 5.0]),
        ([730.0, 5.0], [10.0, 5.0]),
        ([f64::NAN, 5.0], [0.0, 90.0]),
        ([3.0, f64::INFINITY], [0.0, 90.0]),
    ] {
        let look = Look::new(given[0], given[1]);
        assert_eq!(eye(look), DVec2::from(kept), "{given:?}");
    }
}

/// Half a degree for each unit; what is near the eye goes with the hand.
#[test]
fn a_drag_turns_by_half_a_degree_a_unit() {
    assert_eq!(turned(Look::BEHIND, dvec2(20.0, 0.0)), dvec2(-10.0, 0.0));
    assert_eq!(turned(Look::BEHIND, dvec2(0.0, 30.0)), dvec2(0.0, 15.0));
    assert_eq!(turned(Look::NORTH, dvec2(0.0, 300.0)), dvec2(0.0, 90.0));
    assert_eq!(turned(Look::NORTH, dvec2(-8.0, -90.0)), dvec2(4.0, 45.0));
    let over = turned(Look::new(-175.0, 0.0), dvec2(20.0, -400.0));
    assert_eq!(over, dvec2(175.0, -90.0), "round it goes on, up it stops");
}

/// Where the probe is from the planet's centre in the planet frame's picture, km to the right and down.
fn probe(sandbox: &mut Sandbox) -> DVec2 {
    let time = sandbox.time_s().expect("a pass");
    let place = sandbox
        .solved()
        .expect("a pass")
        .flyby
        .seen_from_planet(time);
    let view = sandbox.views(&SIZES).expect("a pass").planet;
    (view.place_in_space(place.0.km) - view.place(DVec2::ZERO)) * view.scale
}

#[test]
fn what_is_nearest_to_the_eye_follows_the_hand() {
    // The probe comes from behind the planet, towards an eye that stands there.
    let mut sandbox = free("approach=0&aim=90&periapsis=30");
    apply(&mut sandbox, Input::Clock(Change::Scrub(0.0)));
    apply(&mut sandbox, Input::Look(Look::BEHIND));
    let before = probe(&mut sandbox);
    apply(&mut sandbox, Input::Turn(DVec2::new(30.0, 0.0)));
    let right = probe(&mut sandbox);
    assert!(right.x > before.x + 1.0, "{before} {right}");
    apply(&mut sandbox, Input::Turn(DVec2::new(-30.0, 30.0)));
    let down = probe(&mut sandbox);
    assert!(down.y > before.y + 1.0, "{before} {down}");
}

#[test]
fn a_turn_that_means_nothing_changes_nothing() {
    let mut sandbox = free("");
    apply(&mut sandbox, Input::Look(Look::new(12.0, 34.0)));
    let before = state(&sandbox);
    for by in [
        DVec2::NAN,
        DVec2::new(f64::NAN, 1.0),
        DVec2::new(1.0, f64::INFINITY),
        DVec2::ZERO,
    ] {
        apply(&mut sandbox, Input::Turn(by));
        assert_eq!(state(&sandbox), before, "{by}");
    }
}

#[test]
fn a_look_survives_a_change_of_settings_and_not_another_pass() {
    let look = Look::new(-20.0, 40.0);
    let mut sandbox = free("");
    apply(&mut sandbox, Input::Look(look));
    for input in [
        Input::Set(Field::Periapsis, 4.0),
        Input::Planet("saturn".into()),
        Input::Clock(Change::Go(0.0)),
        Input::Zoom(2.0),
        Input::Fit,
    ] {
        apply(&mut sandbox, input);
        assert_eq!(sandbox.look(), look);
    }
    for input in [Input::Preset(3), Input::Open("aim=3".into()), Input::Reset] {
        let mut sandbox = sandbox.clone();
        apply(&mut sandbox, input);
        assert_eq!(sandbox.look(), Look::NORTH);
    }
}

#[test]
fn an_example_out_of_the_plane_is_seen_from_behind() {
    let mut sandbox = Sandbox::default();
    for (index, example) in PRESETS.iter().enumerate() {
        apply(&mut sandbox, Input::Preset(index));
        let out = example.id == "out-of-plane";
        let look = if out { Look::BEHIND } else { Look::NORTH };
        assert_eq!((sandbox.look(), sandbox.may_turn()), (look, out));
    }
}

#[test]
fn the_words_for_those_who_do_not_see_it_say_from_where() {
    let mut sandbox = free("");
    let from_north = sandbox.panel().expect("a pass").descriptions;
    apply(&mut sandbox, Input::Look(Look::SIDE));
    let [planet, sun, diagram, record] = sandbox.panel().expect("a pass").descriptions;
    assert!(planet.starts_with("Planet frame, looking towards the Sun: Jupiter stands still"));
    assert!(sun.starts_with("Sun frame, looking towards the Sun: Jupiter moves at 13.06 km/s;"));
    assert_eq!([diagram, record], from_north[2..]);
    apply(&mut sandbox, Input::Look(Look::NORTH));
    assert_eq!(sandbox.panel().expect("a pass").descriptions, from_north);
}

/// Where the periapsis handle is, if there is one.
fn periapsis_handle(sandbox: &mut Sandbox) -> Option<DVec2> {
    let marks = sandbox.pictures(&SIZES).expect("a pass").planet_frame.marks;
    marks.iter().find_map(|mark| match mark {
        Mark::Handle(handle) if handle.grip == Grip::Periapsis => Some(handle.at),
        _ => None,
    })
}

#[test]
fn periapsis_can_be_dragged_from_everywhere_that_shows_its_distance() {
    let mut dragged = 0;
    for around in (-180..180).step_by(30) {
        for height in (-90..=90).step_by(30) {
            let mut sandbox = free(preset("out-of-plane").text);
            let look = Look::new(f64::from(around), f64::from(height));
            apply(&mut sandbox, Input::Look(look));
            let Some(from) = periapsis_handle(&mut sandbox) else {
                continue;
            };
            let views = sandbox.views(&SIZES).expect("a pass");
            let centre = views.planet.place(DVec2::ZERO);
            apply(&mut sandbox, Input::Grab(Grip::Periapsis, from, SIZES));
            apply(&mut sandbox, Input::Drag(centre + 2.0 * (from - centre)));
            assert!(
                (get(&sandbox, Field::Periapsis) - 12.0).abs() < 1e-12,
                "{look:?}"
            );
            // Held, the views stay, whatever else is asked for.
            apply(&mut sandbox, Input::Turn(DVec2::new(9.0, 9.0)));
            assert_eq!(sandbox.views(&SIZES).expect("a pass"), views);
            apply(&mut sandbox, Input::Release);
            assert_eq!(sandbox.views(&SIZES).expect("a pass").look, sandbox.look());
            dragged += 1;
        }
    }
    assert!(dragged > 70, "{dragged}");
}

#[test]
fn the_approach_cannot_be_dragged_where_its_angle_is_not_in_the_picture() {
    let mut sandbox = free("");
    apply(&mut sandbox, Input::Look(Look::BEHIND));
    let before = sandbox.scenario().to_string();
    let place = DVec2::new(100.0, 300.0);
    apply(&mut sandbox, Input::Grab(Grip::Approach, place, SIZES));
    apply(&mut sandbox, Input::Drag(DVec2::new(400.0, 100.0)));
    assert_eq!(sandbox.scenario().to_string(), before);
}
