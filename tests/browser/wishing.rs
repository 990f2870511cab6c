//! Aiming for an outcome: the answer is the library's, and taking it reaches the goal.

use two_frames::physics::Free;
use two_frames::sandbox::{AimChange, Input, Sandbox};
use two_frames::scenario::Wish;

use crate::native::{Native, aim_solution, answer_numbers};
use crate::page::{Outcome, Page, on_our_page};

pub(crate) const WISH: &str = "[data-action=wish]";
pub(crate) const VALUE: &str = "[data-part=wish]";
pub(crate) const FREE: &str = "[data-action=free]";
pub(crate) const TAKE: &str = "[data-action=take]";

/// Scenario, list's choice, value, what may change, where the page shows what is reached, and what stands there.
type Case = (
    &'static str,
    &'static str,
    &'static str,
    Free,
    &'static str,
    &'static str,
);

/// Source: each goal is its own check: the value that is typed is the value that the page has to show.
const REACHED: [Case; 9] = [
    (
        "",
        "aphelion",
        "9.5",
        Free::AimPoint,
        "orbit_after.aphelion_au",
        "9.50",
    ),
    (
        "",
        "aphelion",
        "30",
        Free::Periapsis,
        "orbit_after.aphelion_au",
        "30.00",
    ),
    (
        "",
        "perihelion",
        "1.25",
        Free::AimPoint,
        "orbit_after.perihelion_au",
        "1.25",
    ),
    (
        "",
        "leave",
        "7.5",
        Free::AimPoint,
        "orbit_after.speed_left_at_infinity_km_s",
        "7.50",
    ),
    (
        "",
        "change",
        "-2.5",
        Free::AimPoint,
        "sun_frame.speed_change_km_s",
        "−2.50",
    ),
    (
        "",
        "change",
        "0",
        Free::AimPoint,
        "sun_frame.speed_change_km_s",
        "0.00",
    ),
    (
        "",
        "turn",
        "100",
        Free::Periapsis,
        "planet_frame.turn_deg",
        "100.0",
    ),
    (
        "aim=70",
        "change",
        "3",
        Free::Periapsis,
        "sun_frame.speed_change_km_s",
        "+3.00",
    ),
    (
        "planet=saturn&v-infinity=8",
        "leave",
        "3",
        Free::Approach,
        "orbit_after.speed_left_at_infinity_km_s",
        "3.00",
    ),
];

fn free_key(free: Free) -> &'static str {
    match free {
        Free::Periapsis => "periapsis",
        Free::AimPoint => "aim-point",
        Free::Approach => "approach",
    }
}

/// The library's own sandbox with a wish.
pub(crate) fn wishing(text: &str, wish: &str, free: Free) -> Sandbox {
    let mut sandbox = Sandbox::open(text);
    let wish = Wish::read(wish).expect("a wish");
    for change in [AimChange::Free(free), AimChange::Wish(wish)] {
        sandbox.apply(Input::Aim(change)).expect("not refused");
    }
    sandbox
}

/// Holds the answer's sentences and numbers to the library's.
pub(crate) async fn expect_answer(page: &Page, sandbox: &mut Sandbox) -> Outcome {
    assert_eq!(page.numbers_in("answer").await?, answer_numbers(sandbox));
    let solution = aim_solution(sandbox);
    let shown = page.texts("[data-text=answer] li").await?;
    let plain = |text: &String| text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert_eq!(
        shown.iter().map(plain).collect::<Vec<_>>(),
        solution.sentences.iter().map(plain).collect::<Vec<_>>()
    );
    let words = if solution.met {
        "Use this aim"
    } else {
        "Use what comes nearest"
    };
    assert_eq!(page.text(TAKE).await?, words);
    assert_eq!(page.value_of(&disabled()).await?, false);
    Ok(())
}

pub(crate) fn disabled() -> String {
    format!("deep('{TAKE}')[0].disabled")
}

#[test]
fn taking_the_answer_reaches_the_goal() {
    on_our_page("", async |page| {
        for (text, kind, value, free, path, shown) in REACHED {
            page.reopen(text).await?;
            page.choose(WISH, kind).await?;
            page.choose(FREE, free_key(free)).await?;
            page.retype(VALUE, value).await?;
            let mut sandbox = wishing(text, &format!("{kind}={value}"), free);
            expect_answer(page, &mut sandbox).await?;
            // Asking changes nothing yet.
            page.expect(&Native::of(&Sandbox::open(text).scenario().to_string()))
                .await?;
            page.click(TAKE).await?;
            let answer = aim_solution(&mut sandbox).answer.scenario.to_string();
            page.expect(&Native::of(&answer)).await?;
            let numbers = page.numbers().await?;
            let found = numbers.iter().find(|number| number.path == path);
            let found = found.unwrap_or_else(|| panic!("the page does not show {path}"));
            let reached: f64 = found
                .value
                .as_ref()
                .expect("a value")
                .parse()
                .expect("a number");
            let goal: f64 = value.parse().expect("a number");
            let off = (reached - goal).abs() / goal.abs().max(1.0);
            assert!(off < 1e-9, "{kind}={value}: {reached}");
            assert!(found.text.contains(shown), "{kind}={value}: {}", found.text);
            // The answer to the same wish from there is where one is.
            let _ = sandbox.apply(Input::Aim(AimChange::Take));
            expect_answer(page, &mut sandbox).await?;
        }
        Ok(())
    });
}

#[test]
fn what_cannot_be_reached_is_said_with_the_best_there_is() {
    on_our_page("", async |page| {
        for (text, kind, value, words) in [
            // Source: sin(δ/2) = 1/(1 + R v∞²/GM): 146.0° for Jupiter at 9 km/s.
            (
                "",
                "turn",
                "170",
                [
                    "cannot turn the path by more than 146.0°",
                    "slower approach",
                ],
            ),
            (
                "",
                "aphelion",
                "3",
                ["5.20 AU from the Sun", "nearer to the Sun"],
            ),
            (
                "v-infinity=4",
                "leave",
                "5",
                ["faster than 17.06 km/s", "stays with the Sun"],
            ),
            (
                "planet=mars",
                "aphelion",
                "9.5",
                ["The most is", "approach angle free too"],
            ),
        ] {
            page.reopen(text).await?;
            page.choose(WISH, kind).await?;
            page.retype(VALUE, value).await?;
            let said = page.text("[data-text=answer]").await?;
            for words in words {
                assert!(said.contains(words), "{kind}={value}: {said}");
            }
            let mut sandbox = wishing(text, &format!("{kind}={value}"), Free::AimPoint);
            expect_answer(page, &mut sandbox).await?;
            page.click(TAKE).await?;
            let answer = aim_solution(&mut sandbox).answer.scenario.to_string();
            page.expect(&Native::of(&answer)).await?;
        }
        Ok(())
    });
}
