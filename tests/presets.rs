//! The ready-made passes: everything that they promise is true, found by solving them.

use std::collections::BTreeSet;

use two_frames::physics::{Body, Flyby, Planet, Side};
use two_frames::report::Solution;
use two_frames::sandbox::Sandbox;
use two_frames::scenario::{Field, PRESETS, Preset, Scenario};

fn preset(id: &str) -> &'static Preset {
    let found = PRESETS.iter().find(|preset| preset.id == id);
    found.unwrap_or_else(|| panic!("there is no ready-made pass {id}"))
}

fn solve(scenario: &Scenario) -> (Flyby, Solution) {
    let flyby = Flyby::solve(&scenario.encounter().expect("a planet")).expect("a pass");
    (flyby, Solution::new(scenario, &flyby))
}

fn solved(id: &str) -> (Flyby, Solution) {
    solve(&preset(id).scenario())
}

/// The same pass with one number changed.
fn with(id: &str, field: Field, value: f64) -> Flyby {
    let mut scenario = preset(id).scenario();
    scenario.set(field, value).expect("a value in the range");
    solve(&scenario).0
}

fn number(value: Option<f64>) -> f64 {
    value.expect("this pass has the number")
}

/// The angle between the outgoing v-infinity and the planet's motion, degrees.
fn direction_out(flyby: &Flyby) -> f64 {
    flyby.velocity_out.km_s.normalize().y.acos().to_degrees()
}

#[test]
fn there_are_enough_each_with_a_name_and_a_text_of_its_own() {
    assert!(PRESETS.len() >= 8);
    let parts = PRESETS
        .each_ref()
        .map(|preset| [preset.id, preset.title, preset.text, preset.look]);
    for i in 0..4 {
        let all: BTreeSet<_> = parts.iter().map(|parts| parts[i]).collect();
        assert_eq!(all.len(), PRESETS.len(), "{all:?}");
    }
    for preset in &PRESETS {
        let (id, scenario) = (preset.id, Scenario::read_strictly(preset.text));
        let scenario = scenario.expect("a ready-made pass has no fault");
        assert_eq!(preset.text, scenario.to_string(), "as it is printed");
        assert_eq!(Preset::of(&scenario), Some(preset));
        assert_eq!(preset.scenario(), scenario);
        let is_plain = |byte: u8| byte.is_ascii_lowercase() || byte == b'-';
        assert!(id.bytes().all(is_plain), "{id}");
        assert!(
            preset.probe.contains(", an invented "),
            "{}: {}",
            preset.id,
            preset.probe
        );
        assert!(Sandbox::open(preset.text).panel().is_ok(), "{}", preset.id);
    }
    assert_eq!(
        PRESETS[0].scenario(),
        Scenario::default(),
        "the page opens with the first"
    );
}

/// Each has two sentences: what to look at, and why it happens.
#[test]
fn each_has_one_sentence_to_look_and_one_of_reason() {
    for preset in &PRESETS {
        for text in [preset.look, preset.why] {
            let ends = text.match_indices(['.', '!', '?']).filter(|(at, _)| {
                let rest = &text[at + 1..];
                rest.is_empty() || rest.starts_with(' ')
            });
            assert_eq!(ends.count(), 1, "{}: one sentence: {text}", preset.id);
            assert!(
                text.ends_with('.') && text.len() > 40 && !text.contains("  "),
                "{}: {text}",
                preset.id
            );
            assert!(
                text.starts_with(|first: char| first.is_uppercase()),
                "{}: {text}",
                preset.id
            );
        }
    }
}

#[test]
fn gain_and_loss_are_one_approach_on_two_sides() {
    let ((gain, gained), (loss, lost)) = (solved("gain"), solved("loss"));
    assert_eq!((gain.side, loss.side), (Side::Behind, Side::Ahead));
    assert_eq!(gain.velocity_in, loss.velocity_in);
    assert_eq!(
        gain.turn_rad.to_bits(),
        loss.turn_rad.to_bits(),
        "the same hump"
    );
    assert_eq!(
        gain.periapsis_speed_km_s.to_bits(),
        loss.periapsis_speed_km_s.to_bits()
    );
    // "the blue ones are equally long, the green ones are not"
    let (planet, sun) = (&gained.planet_frame, &gained.sun_frame);
    let out = gain.velocity_out.speed();
    assert!((out / planet.v_infinity_km_s - 1.0).abs() < 1e-14);
    assert!(number(sun.speed_out_km_s) > 1.5 * sun.speed_in_km_s);
    // "turns its path towards Jupiter's own motion"
    assert!(direction_out(&gain) < 40.0);
    // "ends lower than it began", "only just ahead of it"
    assert!(number(lost.sun_frame.speed_change_km_s) < -1.0 && loss.velocity_change.y < 0.0);
}

#[test]
fn leaves_ends_the_orbit_round_the_sun() {
    let (flyby, solution) = solved("leaves");
    assert!(
        solution.orbit_before.aphelion_au.is_some() && solution.orbit_after.aphelion_au.is_none()
    );
    assert!(number(solution.orbit_after.speed_left_at_infinity_km_s) > 1.0);
    // "until it points along Saturn's own motion, where the two speeds simply add up"
    let sum = solution.planet.orbit_speed_km_s + solution.planet_frame.v_infinity_km_s;
    assert!((number(solution.sun_frame.speed_out_km_s) / sum - 1.0).abs() < 1e-4);
    assert!(direction_out(&flyby) < 2.0);
    // "more than the Sun can hold": the escape speed is √2 times the circular one.
    assert!(sum > std::f64::consts::SQRT_2 * solution.planet.orbit_speed_km_s);
}

#[test]
fn sunward_takes_nearly_all_speed_away() {
    let (flyby, solution) = solved("sunward");
    let out = number(solution.sun_frame.speed_out_km_s);
    // "it has almost vanished, and the nearest distance to the Sun with it"
    assert!(out < 0.15 * solution.sun_frame.speed_in_km_s, "{out} km/s");
    let perihelion = number(solution.orbit_after.perihelion_au);
    assert!(
        perihelion < 0.1 * number(solution.orbit_before.perihelion_au) && perihelion < 0.1,
        "{perihelion} AU"
    );
    // "nearly opposite to Jupiter's and nearly as large"
    assert!(direction_out(&flyby) > 170.0);
    assert!(
        (solution.planet_frame.v_infinity_km_s / solution.planet.orbit_speed_km_s - 1.0).abs()
            < 0.1
    );
}

#[test]
fn out_of_plane_tilts_the_orbit() {
    let (flyby, solution) = solved("out-of-plane");
    // "from 0° to 87°"
    assert!(number(solution.orbit_before.inclination_deg).abs() < 1e-9);
    assert!((number(solution.orbit_after.inclination_deg) - 87.0).abs() < 0.5);
    // "comes in level and leaves steeply"
    let (level, steep) = (flyby.velocity_in.km_s, flyby.velocity_out.km_s);
    assert!(level.z.abs() < 1e-9 && steep.z > 2.0 * steep.x.abs());
    // "passes ahead of Jupiter and under its south, so the pull ... lifts it northwards"
    assert!(flyby.periapsis_direction.z < -0.3 && flyby.velocity_change.z > 1.0);
    assert_eq!(solution.sun_frame.side, Some("ahead"));
    // "takes nearly all of its motion along with Jupiter"
    assert!(flyby.sun_velocity_out.km_s.y < 0.1 * flyby.sun_velocity_in.km_s.y);
    // "high over the Sun": an upright orbit that comes nearly as near as the Earth.
    assert!(number(solution.orbit_after.perihelion_au) < 1.5);
}

#[test]
fn not_the_closest_is_best_where_it_is() {
    let (flyby, solution) = solved("not-the-closest");
    let gain = number(solution.sun_frame.speed_change_km_s);
    let own = number(preset("not-the-closest").scenario().get(Field::Periapsis));
    let mut last = f64::NEG_INFINITY;
    let mut crossed = 0;
    for i in 0..=2_000 {
        let radii = 10_000_f64.powf(f64::from(i) / 2_000.0);
        let change = with("not-the-closest", Field::Periapsis, radii).speed_change_km_s();
        // The best place is flat: three digits of the periapsis leave a millionth of the gain.
        assert!(
            change <= gain * (1.0 + 1e-5),
            "{change} km/s at {radii} radii"
        );
        crossed += usize::from(last < 0.0 && change >= 0.0);
        assert!(
            radii > own || change > last,
            "closer is worse all the way down, at {radii} radii"
        );
        last = change;
    }
    // "the gain shrinks to nothing and turns into a loss of more than 3 km/s"
    assert_eq!(crossed, 1);
    let grazing = with("not-the-closest", Field::Periapsis, 1.0);
    assert!(
        !grazing.strikes()
            && grazing.speed_change_km_s() < -3.0
            && grazing.speed_change_km_s() > -4.0
    );
    // "just far enough to run along Jupiter's motion; a closer pass turns it too far"
    assert!(direction_out(&flyby) < 0.1);
    assert!(grazing.turn_rad > flyby.turn_rad);
}

#[test]
fn no_change_turns_and_keeps_its_speed() {
    let (flyby, solution) = solved("no-change");
    let turn = number(solution.planet_frame.turn_deg);
    // "turns by 60°, from 30° on one side … to 30° on the other"
    assert!((turn - 60.0).abs() < 1e-9, "{turn}°");
    assert!((direction_out(&flyby) - 30.0).abs() < 1e-6);
    assert!(
        flyby.velocity_in.km_s.x > 0.0 && flyby.velocity_out.km_s.x < 0.0,
        "the other side"
    );
    // "equally long" and "in different directions"
    assert!(number(solution.sun_frame.speed_change_km_s).abs() < 1e-9);
    assert!(
        flyby
            .sun_velocity_in
            .km_s
            .angle_between(flyby.sun_velocity_out.km_s)
            .to_degrees()
            > 20.0
    );
    // "the pull does no work along it"
    assert_eq!(flyby.side, Side::Neither);
    assert!(flyby.velocity_change.y.abs() < 1e-9 * flyby.velocity_change.length());
}

#[test]
fn strikes_is_aimed_beside_the_planet_and_hits_it() {
    let (flyby, solution) = solved("strikes");
    assert!(flyby.strikes() && solution.outcome == "strikes");
    // "aimed well to the side of the planet"
    let planet = flyby.encounter.planet;
    assert!(flyby.impact_parameter_km > 2.0 * planet.radius_km);
    // "everything aimed inside the strike distance hits": that of a pass whose periapsis is the surface.
    let grazing = with("strikes", Field::Periapsis, 1.0);
    assert!(!grazing.strikes() && flyby.impact_parameter_km < grazing.impact_parameter_km);
}

#[test]
fn too_fast_is_hardly_turned() {
    let (flyby, solution) = solved("too-fast");
    // "less than one degree, although the probe nearly grazes the planet"
    assert!(number(solution.planet_frame.turn_deg) < 1.0);
    assert!(
        !flyby.strikes() && flyby.encounter.periapsis_km < 1.2 * flyby.encounter.planet.radius_km
    );
    // "spends only minutes near Mars": within three radii of its centre.
    let near = 2.0
        * flyby
            .time_at_distance(3.0 * flyby.encounter.planet.radius_km)
            .expect("farther than periapsis");
    assert!((120.0..1_800.0).contains(&near), "{near} s");
    assert!(
        (solution.planet_frame.v_infinity_km_s - 40.0).abs() < f64::EPSILON,
        "“at 40 km/s”"
    );
}

#[test]
fn inner_gains_much_from_a_small_planet() {
    let (_, solution) = solved("inner");
    // "nearly 7 km/s", "about a four-hundredth of Jupiter's mass", "turned by 70°"
    let change = number(solution.sun_frame.speed_change_km_s);
    assert!((6.5..7.0).contains(&change), "{change} km/s");
    let share = Planet::of(Body::Jupiter).gm / Planet::of(Body::Venus).gm;
    assert!((share / 400.0 - 1.0).abs() < 0.05, "1/{share}");
    let turn = number(solution.planet_frame.turn_deg);
    assert!((turn - 70.0).abs() < 0.5, "{turn}°");
    assert!(
        solution.planet.orbit_speed_km_s > 30.0,
        "“moves fast round the Sun”"
    );
}

#[test]
fn custom_shows_what_the_gain_depends_on() {
    let (flyby, solution) = solved("custom");
    assert!(number(solution.sun_frame.speed_change_km_s) > 1.0);
    // "The mass sets how far the path turns and the distance from the Sun sets how fast the planet moves"
    let heavier = with("custom", Field::Gm, 5e6);
    assert!(heavier.turn_rad > flyby.turn_rad && heavier.motion() == flyby.motion());
    let nearer = with("custom", Field::Orbit, 0.2);
    assert!(nearer.turn_rad.to_bits() == flyby.turn_rad.to_bits());
    assert!(nearer.motion().velocity().speed() > flyby.motion().velocity().speed());
    // Each of its three numbers changes the gain of energy by a good share …
    let larger = with("custom", Field::Radius, 20_000.0);
    for other in [heavier, nearer, larger] {
        let share = other.energy_change_km2_s2 / flyby.energy_change_km2_s2;
        assert!((share - 1.0).abs() > 0.15, "{share} of the gain");
    }
    // … but that of speed hardly depends on the orbit: the words have to say which gain they mean.
    assert!((nearer.speed_change_km_s() / flyby.speed_change_km_s() - 1.0).abs() < 0.01);
    let words = preset("custom");
    assert!(
        words.look.contains("energy") || words.why.contains("energy"),
        "{} {}",
        words.look,
        words.why
    );
}
