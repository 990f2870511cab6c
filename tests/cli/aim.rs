//! `aim TEXT --for GOAL`: keys and their meanings, refusals, and answers that `solve` confirms.

use serde_json::Value;
use two_frames::sandbox::{AimChange, Input, Sandbox};
use two_frames::scenario::{BadWish, Most, Notice, PRESETS, Scenario, Wish, WishKind};

use crate::{errors, feed, printed, refusals, run, sentence};

/// Every key in its order. Source: DEVELOPERS.md, "What outsiders may rely on", written down by hand.
const KEYS: &str = "
    scenario goal free met
    answer scenario value change_per_100_km periapsis_km height_km approach_deg aim_deg b_t_km b_r_km
    aim_points_km
    circle centre_b_t_km centre_b_r_km radius_km
    free_more sentences";

fn aim(text: &str, goal: &str, free: &str) -> Value {
    let output = printed(run(&["aim", text, "--for", goal, "--free", free]));
    assert_eq!(output.lines().count(), 1);
    serde_json::from_str(&output).expect("JSON")
}

/// One answer a text.
fn answers(command: &[&str], texts: &[String]) -> Vec<Value> {
    let output = feed(command, texts.join("\n").as_bytes());
    let lines = String::from_utf8(output.stdout.clone()).expect("the output is UTF-8");
    let read = |line| serde_json::from_str(line).expect("each line is JSON");
    let answers: Vec<_> = lines.lines().map(read).collect();
    assert_eq!(answers.len(), texts.len(), "{}", errors(&output));
    answers
}

fn texts() -> Vec<String> {
    let mut rng = fastrand::Rng::with_seed(31);
    let presets = PRESETS.iter().map(|preset| preset.text.to_owned());
    let random = (0..60).map(|i| {
        let planet = ["venus", "earth", "mars", "jupiter", "saturn", "neptune"][i % 6];
        format!(
            "planet={planet}&v-infinity={}&approach={}&crank={}&aim={}",
            1.0 + 20.0 * rng.f64(),
            360.0 * rng.f64() - 180.0,
            if i % 2 == 0 { 0.0 } else { 90.0 * rng.f64() },
            45 * rng.i32(-4..=4)
        )
    });
    presets.chain(random).collect()
}

#[test]
fn the_keys_stand_in_the_order_that_is_promised() {
    let text = printed(run(&["aim", "", "--for", "leave=5"]));
    // A key is what stands in quotes before a colon; no value of an answer has a quote in it.
    let parts: Vec<_> = text.split('"').collect();
    let keys = parts.windows(2).filter(|pair| pair[1].starts_with(':'));
    let keys: Vec<_> = keys.map(|pair| pair[0]).collect();
    let promised: Vec<_> = KEYS.split_whitespace().collect();
    assert_eq!(keys, promised);
}

#[test]
fn the_papers_have_every_key_and_every_goal() {
    let guide = include_str!("../../DEVELOPERS.md");
    for key in KEYS.split_whitespace() {
        assert!(guide.contains(&format!("`{key}`")), "no {key}");
    }
    let goals = WishKind::ALL.map(|kind| format!("`{}=", kind.spec().key));
    let most = Most::ALL.map(|(word, _)| format!("`most={word}`"));
    for goal in goals.into_iter().chain(most).chain(["`reach=".into()]) {
        assert!(guide.contains(&goal), "no {goal}");
    }
}

#[test]
fn the_help_has_every_goal_with_its_range() {
    let help = printed(run(&["aim", "--help"]));
    for spec in WishKind::ALL.map(WishKind::spec) {
        let unit = spec.unit.replace('°', "degrees");
        let range = format!("{} to {} {unit}", spec.min, spec.max);
        let shown = |line: &str| line.contains(&format!("{}=", spec.key)) && line.contains(&range);
        assert!(help.lines().any(shown), "{} is not in: {help}", spec.key);
    }
    for (word, most) in Most::ALL {
        let shown =
            |line: &str| line.contains(&format!("most={word}")) && line.contains(most.label());
        assert!(help.lines().any(shown), "{word} is not in: {help}");
    }
    assert!(help.contains("reach=saturn"), "{help}");
}

/// The answer's numbers are those of the pass that `solve` finds for the answer's scenario.
#[test]
fn answers_reach_their_goals_in_solve() {
    let texts = texts();
    // What the goal is about, as a path of `solve`'s JSON. Source: the contract.
    let goals = [
        ("aphelion=9.5", "/orbit_after/aphelion_au", 9.5),
        ("perihelion=0.7", "/orbit_after/perihelion_au", 0.7),
        ("leave=5", "/orbit_after/speed_left_at_infinity_km_s", 5.0),
        ("turn=20", "/planet_frame/turn_deg", 20.0),
        ("change=-2", "/sun_frame/speed_change_km_s", -2.0),
        // Source: Standish's approximate elements, as in tests/physics/constants.rs.
        ("reach=earth", "", 1.000_002_61),
    ];
    for (goal, path, wanted) in goals {
        let found = answers(&["aim", "-", "--for", goal], &texts);
        let passes: Vec<_> = found
            .iter()
            .filter(|found| found["met"] == true)
            .map(|found| {
                found["answer"]["scenario"]
                    .as_str()
                    .expect("a text")
                    .to_owned()
            })
            .collect();
        assert!(passes.len() > 5, "{goal}: only {} reach it", passes.len());
        for (pass, solved) in passes.iter().zip(answers(&["solve", "-"], &passes)) {
            let number = |path| solved.pointer(path).and_then(Value::as_f64);
            let value = match path {
                "" => number("/orbit_after/aphelion_au")
                    .filter(|_| number("/planet/orbit_radius_km") < Some(149_597_870.7))
                    .or(number("/orbit_after/perihelion_au")),
                path => number(path),
            };
            let value = value.expect("it reaches the goal");
            assert!(
                (value / wanted - 1.0).abs() < 1e-9,
                "{goal}: {value} of {pass}"
            );
            assert_eq!(solved["outcome"], "passes", "{goal}: {pass}");
        }
    }
}

#[test]
fn the_answer_s_numbers_are_those_of_its_pass() {
    for free in ["periapsis", "aim-point", "approach"] {
        let found = aim("approach=100", "most=inclination", free);
        assert_eq!(
            (&found["free"], &found["goal"]),
            (&free.into(), &"most=inclination".into())
        );
        let answer = &found["answer"];
        let text = answer["scenario"].as_str().expect("a text");
        let solved: Value = serde_json::from_str(&printed(run(&["solve", text]))).expect("JSON");
        assert_eq!(answer["value"], solved["orbit_after"]["inclination_deg"]);
        for key in ["b_t_km", "b_r_km", "periapsis_km"] {
            assert_eq!(answer[key], solved["planet_frame"][key], "{key}");
        }
        let number = |value: &Value| value.as_f64().expect("a number");
        let height = number(&answer["periapsis_km"]) - number(&solved["planet"]["radius_km"]);
        assert!((number(&answer["height_km"]) - height).abs() < 1e-6);
        if free != "approach" {
            assert_eq!(answer["approach_deg"], 100.0);
        }
        if free == "periapsis" {
            assert_eq!(answer["aim_deg"], 0.0);
        }
        assert_eq!(found["aim_points_km"], Value::Array(vec![]));
        assert!(found["circle"].is_null() && found["free_more"].is_null());
    }
}

#[test]
fn out_of_reach_is_an_answer_with_reasons() {
    let found = aim("planet=mars", "reach=saturn", "aim-point");
    assert_eq!(found["met"], false);
    assert_eq!(found["free_more"], "approach");
    assert!(
        found["sentences"]
            .as_array()
            .is_some_and(|all| all.len() == 3)
    );
    assert_eq!(aim("planet=mars", "reach=saturn", "approach")["met"], true);
    // Nothing leaves Jupiter's orbit inwards with an aphelion below it. Source: the pass happens on the orbit.
    let found = aim("", "aphelion=3", "approach");
    assert_eq!(
        (&found["met"], &found["free_more"]),
        (&false.into(), &Value::Null)
    );
}

#[test]
fn bad_goals_and_texts_are_refused_in_the_library_s_words() {
    for goal in [
        "aphelion=far",
        "turn=181",
        "leave=-1",
        "reach=pluto",
        "most=fun",
        "",
        "x=1",
    ] {
        let words = Wish::read(goal).expect_err("it is bad").to_string();
        for text in ["", "-"] {
            let said = refusals(&run(&["aim", text, "--for", goal]));
            assert_eq!(said, std::slice::from_ref(&words));
        }
    }
    let own = BadWish::OwnOrbit("Jupiter").to_string();
    assert_eq!(
        refusals(&run(&["aim", "", "--for", "reach=jupiter"])),
        [own]
    );
    let text = "planet=pluto&flavour=3";
    let notices = Scenario::read_strictly(text).expect_err("it is bad");
    let words: Vec<_> = notices.iter().map(Notice::to_string).collect();
    assert_eq!(refusals(&run(&["aim", text, "--for", "leave=1"])), words);
    let heavy = "planet=custom&gm=1e300&radius=1e200&orbit=1e200";
    let alone = refusals(&run(&["solve", heavy]));
    assert_eq!(refusals(&run(&["aim", heavy, "--for", "leave=1"])), alone);
    let output = run(&["aim", ""]);
    assert_eq!(output.status.code(), Some(2));
    assert!(errors(&output).contains("--for"), "{}", errors(&output));
}

#[test]
fn lines_are_answered_in_their_places() {
    let goal = ["--for", "reach=jupiter"];
    let alone = |text| printed(run(&["aim", text, goal[0], goal[1]]));
    let output = feed(
        &["aim", "-", goal[0], goal[1]],
        b"planet=saturn\r\n\nx=1\nplanet=mars",
    );
    assert_eq!(output.status.code(), Some(1));
    assert!(
        sentence(&output).contains("2 of 4 lines"),
        "{}",
        errors(&output)
    );
    let lines = String::from_utf8(output.stdout).expect("the output is UTF-8");
    let lines: Vec<_> = lines.split_inclusive('\n').collect();
    assert_eq!(
        [lines[0], lines[3]],
        [alone("planet=saturn"), alone("planet=mars")]
    );
    for (at, word) in [(1, "on the orbit of Jupiter"), (2, "no such key")] {
        let bad: Value = serde_json::from_str(lines[at]).expect("JSON");
        assert_eq!(bad["line"], at + 1);
        assert!(
            bad["error"]
                .as_str()
                .is_some_and(|error| error.contains(word)),
            "{bad}"
        );
    }
}

/// The page asks the same sandbox; only the command never stays in the plane.
#[test]
fn the_command_says_what_the_sandbox_says() {
    for (text, goal) in [
        ("", "aphelion=9.5"),
        ("crank=20", "change=0"),
        ("", "leave=30"),
    ] {
        let mut sandbox = Sandbox::open(text);
        let wish = Wish::read(goal).expect("a goal");
        for input in [
            Input::Aim(AimChange::InPlane(false)),
            Input::Aim(AimChange::Wish(wish)),
        ] {
            sandbox.apply(input).expect("it is taken");
        }
        let library = sandbox.aim_solution().expect("an answer");
        let library = serde_json::to_value(&library).expect("plain values");
        assert_eq!(aim(text, goal, "aim-point"), library, "{text} {goal}");
    }
}
