//! The answers to wishes: true, in words that say no more than is true, with every number marked.

use fastrand::Rng;
use two_frames::physics::units::KM_PER_AU;
use two_frames::physics::{Flyby, Free, Goal};
use two_frames::report::{AimSolution, Aiming, Piece, aim_sentences};
use two_frames::scenario::{Field, Scenario, Wish};

use super::scenarios::any;

const GOALS: [&str; 17] = [
    "aphelion=9.5",
    "aphelion=1.2",
    "perihelion=0.9",
    "perihelion=20",
    "leave=0",
    "leave=5",
    "turn=90",
    "turn=180",
    "turn=0.001",
    "change=0",
    "change=-3",
    "change=40",
    "reach=mars",
    "reach=neptune",
    "most=gain",
    "most=loss",
    "most=inclination",
];
const FREE: [Free; 3] = [Free::Periapsis, Free::AimPoint, Free::Approach];

fn aim(scenario: &Scenario, goal: &str, free: Free) -> Option<Aiming> {
    Aiming::new(scenario, Wish::read(goal).expect("a goal"), free, false).ok()
}

#[track_caller]
pub(crate) fn of(text: &str, goal: &str, free: Free) -> Aiming {
    let scenario = Scenario::read_strictly(text).expect("a good text");
    aim(&scenario, goal, free).expect("an answer")
}

pub(crate) fn words(aiming: &Aiming) -> Vec<String> {
    aim_sentences(aiming)
        .iter()
        .map(ToString::to_string)
        .collect()
}

/// What a goal is about, from the solved pass alone; infinite where the probe leaves and the goal is an aphelion.
fn outcome(flyby: &Flyby, goal: Goal) -> f64 {
    let orbit = &flyby.orbit_after;
    match goal {
        Goal::Aphelion(_) => orbit.aphelion_km.map_or(f64::INFINITY, |km| km / KM_PER_AU),
        Goal::Perihelion(_) => orbit.perihelion_km / KM_PER_AU,
        // A probe that stays has less than nothing to spare.
        Goal::Leave(_) => orbit.speed_at_infinity_km_s.unwrap_or(-1.0),
        Goal::Turn(_) => flyby.turn_rad.to_degrees(),
        Goal::SpeedChange(_) | Goal::MostGain | Goal::MostLoss => flyby.speed_change_km_s(),
        Goal::MostInclination => orbit.inclination_rad.unwrap_or(0.0).to_degrees(),
    }
}

/// The number wished for, in the goal's unit.
fn wanted(aiming: &Aiming) -> Option<f64> {
    match aiming.search.goal {
        Goal::Aphelion(km) | Goal::Perihelion(km) => Some(km / KM_PER_AU),
        Goal::Leave(km_s) | Goal::SpeedChange(km_s) => Some(km_s),
        Goal::Turn(rad) => Some(rad.to_degrees()),
        _ => None,
    }
}

/// The answer's pass with another periapsis, planet radii.
fn at(aiming: &Aiming, radii: f64) -> Flyby {
    let mut scenario = aiming.answer;
    scenario.set(Field::Periapsis, radii).expect("in the range");
    Flyby::solve(&scenario.encounter().expect("a planet")).expect("a pass")
}

/// Any pass that the search could have chosen.
fn any_pass(aiming: &Aiming, start: &Scenario, rng: &mut Rng) -> Flyby {
    let mut scenario = *start;
    let mut set = |field, value| scenario.set(field, value).expect("in the range");
    set(Field::Periapsis, 10_f64.powf(4.0 * rng.f64()));
    if aiming.search.free != Free::Periapsis {
        set(Field::Aim, 360.0 * rng.f64() - 180.0);
    }
    if aiming.search.free == Free::Approach {
        set(Field::Approach, 360.0 * rng.f64() - 180.0);
    }
    Flyby::solve(&scenario.encounter().expect("a planet")).expect("a pass")
}

/// Answers of every kind, with the scenario that each was searched from.
fn many(count: usize) -> Vec<(Scenario, Aiming)> {
    let mut rng = Rng::with_seed(71);
    let mut all = Vec::new();
    for i in 0..count {
        let mut scenario = any(&mut rng);
        if i % 2 == 0 {
            // At the speeds that missions have; the rest is anything.
            scenario
                .set(Field::VInfinity, 1.0 + 20.0 * rng.f64())
                .expect("in the range");
        }
        let (goal, free) = (GOALS[i % GOALS.len()], FREE[i / GOALS.len() % 3]);
        all.extend(aim(&scenario, goal, free).map(|aiming| (scenario, aiming)));
    }
    assert!(all.len() > count / 2, "only {} answers", all.len());
    all
}

#[test]
fn every_sentence_is_whole_and_every_number_marked() {
    for (start, aiming) in many(510) {
        let about = format!("{} from {start}", aiming.wish);
        let sentences = aim_sentences(&aiming);
        assert!(!sentences.is_empty(), "{about}");
        for sentence in sentences {
            let text = sentence.to_string();
            for bad in ["NaN", "inf ", "infin", "  ", "#", "@", " .", "()", "by ."] {
                assert!(!text.contains(bad), "{about}: {text}");
            }
            assert!(
                text.ends_with('.') && text.starts_with(char::is_uppercase),
                "{about}: {text}"
            );
            for piece in sentence.pieces() {
                match piece {
                    Piece::Words(words) => {
                        let allowed = words.replace("90°", "").replace("100 km", "");
                        assert!(
                            !allowed.contains(|c: char| c.is_ascii_digit()),
                            "{about}: {text}"
                        );
                    }
                    Piece::Number(number) => {
                        assert!(
                            number.path.contains('.') && !number.text.is_empty(),
                            "{about}: {text}"
                        );
                        assert!(number.value.is_some_and(f64::is_finite), "{about}: {text}");
                    }
                }
            }
        }
    }
}

#[test]
fn answers_do_what_is_wished_and_misses_are_no_pass_s_fault() {
    let mut rng = Rng::with_seed(72);
    let mut seen = [0; 2];
    for (start, aiming) in many(510) {
        let about = format!("{} from {start}: {}", aiming.wish, aiming.answer);
        let found = outcome(&aiming.flyby, aiming.search.goal);
        let Some(wanted) = wanted(&aiming) else {
            continue;
        };
        seen[usize::from(aiming.met)] += 1;
        if aiming.met {
            // Outcomes near infinity, and of planets that move at any speed, lose digits: relative to their scale.
            let speed =
                aiming.flyby.sun_velocity_out.speed() + aiming.search.encounter.v_infinity_km_s;
            let scale = wanted.abs().max(if wanted.abs() < 50.0 {
                speed.min(1e4)
            } else {
                0.0
            });
            assert!((found - wanted).abs() < 1e-6 * scale, "{about}: {found}");
            continue;
        }
        let above = found > wanted;
        for _ in 0..150 {
            let other = outcome(&any_pass(&aiming, &start, &mut rng), aiming.search.goal);
            let room = 1e-6 * found.abs().clamp(1e-3, 1e9);
            let nearest = if above {
                other >= found - room
            } else {
                other <= found + room
            };
            assert!(nearest, "{about}: {found}, but another pass has {other}");
        }
        if let Some(more) = aiming.more {
            let again = aim(&start, &aiming.wish.to_string(), more).expect("an answer");
            assert!(again.met, "{about}: freeing {more:?} does not help");
        }
    }
    assert!(seen.iter().all(|count| *count > 60), "{seen:?}");
}

/// "Closer … gives less", "a real pass … gets less", "the most": no other pass is better.
#[test]
fn the_most_is_the_most() {
    let mut rng = Rng::with_seed(73);
    let mut seen = [0; 2];
    for (start, aiming) in many(1020)
        .into_iter()
        .filter(|(_, aiming)| aiming.search.goal.is_most())
    {
        let about = format!("{} from {start}: {}", aiming.wish, aiming.answer);
        let sign = if aiming.search.goal == Goal::MostLoss {
            -1.0
        } else {
            1.0
        };
        let value = |flyby: &Flyby| sign * outcome(flyby, aiming.search.goal);
        let best = value(&aiming.flyby);
        let room = 1e-6 * best.abs().max(1e-3);
        for _ in 0..150 {
            let other = value(&any_pass(&aiming, &start, &mut rng));
            assert!(
                other <= best + room,
                "{about}: {best}, but another pass has {other}"
            );
        }
        let said = words(&aiming).join(" ");
        let own = aiming.flyby.encounter.periapsis_km / aiming.flyby.encounter.planet.radius_km;
        if said.contains("closer turns the path too far") {
            seen[0] += 1;
            for part in 0..20 {
                let radii = own.powf(f64::from(part) / 20.0);
                let closer = value(&at(&aiming, radii));
                assert!(
                    closer < best + 1e-12 * best.abs(),
                    "{about}: {closer} at {radii} radii"
                );
            }
            assert!(at(&aiming, own.sqrt()).turn_rad > aiming.flyby.turn_rad);
        }
        if said.contains("and gets less") {
            seen[1] += 1;
            assert!(
                value(&at(&aiming, 2.0)) < best,
                "{about}: farther out is no less"
            );
        }
    }
    assert!(seen.iter().all(|count| *count > 10), "{seen:?}");
}

/// The aim points reach the goal, and lie on the circle where there is one.
#[test]
fn points_reach_the_goal_and_lie_on_their_circle() {
    let (mut points, mut on_circle) = (0, 0);
    for (start, aiming) in many(255) {
        let solution = AimSolution::new(&start, &aiming);
        let Some(wanted) = wanted(&aiming) else {
            assert!(solution.aim_points_km.is_empty() && solution.circle.is_none());
            continue;
        };
        let wild = aiming.search.encounter.planet.name.contains("custom");
        for point in solution.aim_points_km.iter().filter(|_| !wild) {
            let flyby = Flyby::solve(&aiming.approach().encounter(*point)).expect("a pass");
            assert!(flyby.encounter.periapsis_km > (1.0 - 1e-9) * flyby.encounter.planet.radius_km);
            let found = outcome(&flyby, aiming.search.goal);
            let scale = wanted.abs().max(10.0);
            // A kilometre per second at infinity is the root of an energy: half the digits near none.
            let room = if matches!(aiming.search.goal, Goal::Leave(_)) {
                1e-4
            } else {
                1e-8
            };
            assert!(
                (found - wanted).abs() < room * scale,
                "{} from {start}: {found} at {point:?}",
                aiming.wish
            );
            points += 1;
            if let Some(circle) = &solution.circle {
                let [t, r] = [
                    point[0] - circle.centre_b_t_km,
                    point[1] - circle.centre_b_r_km,
                ];
                let off = t.hypot(r) / circle.radius_km - 1.0;
                assert!(
                    off.abs() < 1e-6,
                    "{} from {start}: {off} off the circle",
                    aiming.wish
                );
                on_circle += 1;
            }
        }
    }
    assert!(
        points > 1_000 && on_circle > 200,
        "{points} points, {on_circle} on circles"
    );
}
