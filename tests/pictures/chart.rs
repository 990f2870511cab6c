//! The chart of an outcome against a setting: its curve, its marks, and what it says where there is nothing to choose.

use fastrand::Rng;
use glam::{DVec2, DVec3, dvec2};
use two_frames::figure::{Dash, Disc, Picture, Role, outcome_chart};
use two_frames::physics::{Flyby, Measure};
use two_frames::report::MeasureWords;
use two_frames::scenario::{Field, PRESETS, Scenario};

use crate::common::{discs, paths, preset};
use crate::finite::check;
use crate::own::Own;
use crate::room::crowded;
use crate::scenarios::any;

const SETTINGS: [Field; 3] = [Field::Periapsis, Field::Approach, Field::VInfinity];

fn flyby(text: &str) -> Flyby {
    let scenario = Scenario::read_strictly(text).expect("a good text");
    Flyby::solve(&scenario.encounter().expect("a planet")).expect("a pass")
}

fn chart(text: &str, measure: Measure, against: Field) -> Picture {
    outcome_chart(&flyby(text), measure, against, dvec2(640.0, 400.0))
}

fn says(picture: &Picture, words: &str) -> bool {
    picture.labels().any(|label| label.text.contains(words))
}

/// The dot of the present pass, and the ring of the best one.
fn dot(picture: &Picture) -> Option<Disc> {
    let all = discs(picture);
    all.into_iter()
        .find(|disc| disc.fill == Some(Role::Ink))
        .copied()
}

fn ring(picture: &Picture) -> Option<Disc> {
    let all = discs(picture);
    all.into_iter().find(|disc| disc.fill.is_none()).copied()
}

#[test]
fn labels_stay_inside_and_off_each_other() {
    let mut faults = Vec::new();
    let sizes = [
        (320.0, 240.0),
        (380.0, 190.0),
        (560.0, 280.0),
        (640.0, 400.0),
        (1200.0, 700.0),
    ];
    for preset in PRESETS {
        let flyby = flyby(preset.text);
        for words in MeasureWords::ALL {
            for against in SETTINGS {
                for (width, height) in sizes {
                    let picture =
                        outcome_chart(&flyby, words.measure, against, dvec2(width, height));
                    let name = format!("{} {} {against:?} {width}", preset.id, words.key);
                    let found = crowded(&picture);
                    faults.extend(found.iter().map(|fault| format!("{name}: {fault}")));
                    assert!(
                        says(&picture, "now "),
                        "{name}: where it stands is not said"
                    );
                }
            }
        }
    }
    assert!(
        faults.is_empty(),
        "{} faults\n{}",
        faults.len(),
        faults.join("\n")
    );
}

#[test]
fn whatever_is_set_every_coordinate_is_finite_and_something_is_said() {
    let mut rng = Rng::with_seed(31);
    let mut drawn = 0;
    for _ in 0..1_500 {
        let scenario = any(&mut rng);
        let solved = scenario
            .encounter()
            .ok()
            .and_then(|encounter| Flyby::solve(&encounter).ok());
        let Some(flyby) = solved else { continue };
        let measure = MeasureWords::ALL[rng.usize(..7)].measure;
        let against = SETTINGS[rng.usize(..3)];
        let size = dvec2(240.0 + 1_500.0 * rng.f64(), 240.0 + 900.0 * rng.f64());
        let picture = outcome_chart(&flyby, measure, against, size);
        let name = format!("{scenario} {measure:?} {against:?}");
        check(&picture, &name);
        let curve = paths(&picture, Role::RoundSun, Dash::Solid).len()
            + paths(&picture, Role::Ink, Dash::Solid).len();
        assert!(curve > 0 || says(&picture, "every pass here"), "{name}");
        drawn += 1;
    }
    assert!(drawn > 1_000, "{drawn}");
}

/// The curve is read back through the axes' own numbers and compared with the pass solved at its setting.
///
/// Source: the closed forms written again in the tests (`own.rs`).
#[test]
fn the_curve_and_the_dot_are_the_outcome() {
    let picture = chart("", Measure::SpeedChange, Field::Periapsis);
    let axes = Axes::of(&picture);
    let curve = paths(&picture, Role::RoundSun, Dash::Solid);
    assert_eq!(curve.len(), 1);
    for point in &curve[0].points {
        let [x, y] = axes.read(*point);
        let own = speed_change(&format!("periapsis={x}"));
        assert!((y - own).abs() < 2e-3, "{x}: {y}, {own}");
    }
    let dot = dot(&picture).expect("the present pass");
    let [x, y] = axes.read(dot.centre);
    assert!((x / 8.0 - 1.0).abs() < 1e-3 && (y - speed_change("")).abs() < 2e-3);
}

/// The change of speed round the Sun, km/s.
fn speed_change(text: &str) -> f64 {
    let own = Own::of(&Scenario::read_strictly(text).expect("a good text"));
    let speed = |velocity: DVec3| (own.planet_velocity() + velocity).length();
    speed(own.outgoing()) - speed(own.incoming())
}

/// A logarithmic axis across and a linear one upwards, read off the labels of ticks and gridlines.
struct Axes {
    /// Place and logarithm of two ticks.
    across: [DVec2; 2],
    /// Place and number of two gridlines.
    up: [DVec2; 2],
}

impl Axes {
    fn of(picture: &Picture) -> Self {
        let number = |text: &str| text.replace('−', "-").parse::<f64>().ok();
        let middle = |label: &two_frames::figure::Label| {
            let [low, high] = label.bounds();
            0.5 * (low + high)
        };
        let found: Vec<_> = picture
            .labels()
            .filter_map(|label| number(&label.text).map(|number| (middle(label), number)))
            .collect();
        let bottom = found
            .iter()
            .fold(0.0_f64, |low, (place, _)| low.max(place.y));
        let (below, beside): (Vec<_>, Vec<_>) = found
            .into_iter()
            .partition(|(place, _)| place.y > bottom - 1.0);
        let ends = |axis: Vec<DVec2>| [axis[1], axis[axis.len() - 2]];
        Self {
            across: ends(below.iter().map(|(at, x)| dvec2(at.x, x.ln())).collect()),
            up: ends(beside.iter().map(|(at, y)| dvec2(at.y, *y)).collect()),
        }
    }

    fn read(&self, place: DVec2) -> [f64; 2] {
        let along = |[a, b]: [DVec2; 2], at: f64| a.y + (b.y - a.y) * (at - a.x) / (b.x - a.x);
        [along(self.across, place.x).exp(), along(self.up, place.y)]
    }
}

#[test]
fn the_ring_is_the_top_of_the_curve() {
    for text in ["", preset("not-the-closest").text, preset("inner").text] {
        for against in SETTINGS {
            let picture = chart(text, Measure::SpeedChange, against);
            let best = ring(&picture).expect("a best pass").centre;
            let curve = paths(&picture, Role::RoundSun, Dash::Solid);
            let top = curve
                .iter()
                .flat_map(|path| &path.points)
                .min_by(|a, b| a.y.total_cmp(&b.y));
            let top = top.expect("points");
            // The points stand a few units apart: the ring is between them and not below them.
            assert!(
                best.y <= top.y + 1e-9 && top.y - best.y < 0.5,
                "{text} {against:?}"
            );
            assert!((best.x - top.x).abs() < 4.0, "{text} {against:?}");
        }
    }
}

#[test]
fn closer_is_best_for_turning_and_is_called_so() {
    for measure in [Measure::Turn, Measure::VelocityChange] {
        let picture = chart("", measure, Field::Periapsis);
        assert!(says(&picture, "closest: "), "{measure:?}");
        let (ring, dot) = (
            ring(&picture).expect("a ring"),
            dot(&picture).expect("a dot"),
        );
        assert!(ring.centre.x < dot.centre.x && ring.centre.y < dot.centre.y);
    }
}

/// Source: |Δv| = 2 v∞/e with e = 1 + r v∞²/μ has its maximum at v∞ = √(μ/r), where e = 2 and the turn is 60°.
#[test]
fn the_closed_form_stands_at_the_top_of_the_curve() {
    for preset in PRESETS {
        let picture = chart(preset.text, Measure::VelocityChange, Field::VInfinity);
        if says(&picture, "every pass here strikes") || says(&picture, "hardly changes") {
            continue;
        }
        assert!(says(&picture, "v∞ = √(μ/r): turn 60°"), "{}", preset.id);
        let marks = paths(&picture, Role::Quiet, Dash::Dashed);
        let mark = marks[0].points[0].x;
        let curve = &paths(&picture, Role::Ink, Dash::Solid)[0].points;
        let top = curve
            .iter()
            .min_by(|a, b| a.y.total_cmp(&b.y))
            .expect("points");
        assert!(
            (mark - top.x).abs() < 4.0,
            "{}: {mark}, {}",
            preset.id,
            top.x
        );
    }
}

#[test]
fn where_there_is_nothing_to_choose_it_says_so() {
    for (text, measure, against, words) in [
        (
            "periapsis=0.6",
            Measure::SpeedChange,
            Field::Approach,
            "every pass here strikes",
        ),
        (
            "periapsis=0.6",
            Measure::SpeedChange,
            Field::Periapsis,
            "now strikes",
        ),
        (
            "",
            Measure::Turn,
            Field::Approach,
            "the same everywhere: 94.1°",
        ),
        (
            "",
            Measure::Inclination,
            Field::Periapsis,
            "the same everywhere: 0.0°",
        ),
        (
            "planet=custom&gm=1&radius=1000&orbit=1",
            Measure::SpeedChange,
            Field::Approach,
            "hardly changes: within ",
        ),
        ("", Measure::Aphelion, Field::Periapsis, "now leaves"),
        (
            "aim=180&v-infinity=40&approach=0",
            Measure::Aphelion,
            Field::Periapsis,
            "every pass here leaves the Sun",
        ),
    ] {
        let picture = chart(text, measure, against);
        assert!(says(&picture, words), "{text}: {words}");
    }
}

#[test]
fn the_strike_region_is_hatched_and_has_no_curve() {
    let picture = chart("", Measure::SpeedChange, Field::Periapsis);
    assert!(says(&picture, "strikes"));
    let edge = paths(&picture, Role::Quiet, Dash::Dashed)[0].points[0].x;
    let hatch = paths(&picture, Role::Faint, Dash::Solid);
    let slanted = hatch
        .iter()
        .filter(|line| (line.points[0].y - line.points[1].y).abs() > 1.0);
    let slanted: Vec<_> = slanted.collect();
    assert!(slanted.len() > 5);
    for line in slanted {
        assert!(line.points.iter().all(|point| point.x <= edge + 1e-9));
    }
    let curve = paths(&picture, Role::RoundSun, Dash::Solid);
    assert!(curve[0].points.iter().all(|point| point.x >= edge - 1e-9));
}

#[test]
fn any_other_setting_counts_as_the_periapsis() {
    for other in [Field::Gm, Field::Aim, Field::Crank, Field::ProbeMass] {
        let periapsis = chart("", Measure::Turn, Field::Periapsis);
        assert_eq!(chart("", Measure::Turn, other), periapsis);
    }
}
