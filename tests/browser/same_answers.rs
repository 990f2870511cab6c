//! One answer everywhere: what the core in WebAssembly answers to a wish, and what its chart says, has the same bits as
//! natively.
//!
//! Source: the project's own promise of exact equality; the native library is the reference here, and its answers are held
//! to `solve`, to closed forms and to brute force in tests/physics and tests/report.

use serde::Deserialize;
use serde_json::json;
use thirtyfour::error::WebDriverResult;
use two_frames::report::{AimSolution, MeasureWords};
use two_frames::sandbox::{AimChange, Input, Sandbox};
use two_frames::scenario::{Field, Wish, WishKind, print_number};

use crate::native::{aim_solution, answer_numbers, chart_numbers};
use crate::page::{Page, on_our_page};
use crate::reading::{NUMBERS, Number};
use crate::same_bits::random_text;

/// How many random scenarios, each with a goal.
const COUNT: usize = 120;
/// How many are asked in one call of the browser.
const BATCH: usize = 20;

/// Settings of a question, by the values of the page's lists.
struct Question {
    text: String,
    /// The list's value, and what stands in the field.
    wish: (String, String),
    free: &'static str,
    measure: &'static str,
    against: Field,
}

/// What the page shows of it.
#[derive(Debug, Deserialize)]
struct Shown {
    answer: Vec<Number>,
    chart: Vec<Number>,
    /// B·T and B·R, before and after the answer is taken.
    aims: [[String; 2]; 2],
    taken: String,
}

const FREE: [(&str, two_frames::physics::Free); 3] = [
    ("periapsis", two_frames::physics::Free::Periapsis),
    ("aim-point", two_frames::physics::Free::AimPoint),
    ("approach", two_frames::physics::Free::Approach),
];

fn random_wish(random: &mut fastrand::Rng) -> (String, String) {
    let span = |low: f64, high: f64, part: f64| print_number(low + (high - low) * part);
    let part = random.f64();
    let number = |kind: WishKind| match kind {
        WishKind::Aphelion => span(1.0, 40.0, part),
        WishKind::Perihelion => span(0.05, 8.0, part),
        WishKind::Leave => span(0.0, 20.0, part),
        WishKind::Turn => span(0.5, 170.0, part),
        WishKind::Change => span(-10.0, 15.0, part),
    };
    match random.usize(..8) {
        i if i < WishKind::ALL.len() => {
            let kind = WishKind::ALL[i];
            (kind.spec().key.to_owned(), number(kind))
        }
        5 => ("most=gain".to_owned(), String::new()),
        6 => ("most=loss".to_owned(), String::new()),
        _ => ("most=inclination".to_owned(), String::new()),
    }
}

fn random_question(i: usize, random: &mut fastrand::Rng) -> Question {
    let mut text = random_text(random);
    if i.is_multiple_of(2) {
        // In the orbit plane, as most people stay.
        text = text
            .split('&')
            .filter(|part| !part.starts_with("aim=") && !part.starts_with("crank="))
            .collect::<Vec<_>>()
            .join("&");
    }
    let against = [Field::Periapsis, Field::Approach, Field::VInfinity];
    Question {
        text: Sandbox::open(&text).scenario().to_string(),
        wish: random_wish(random),
        free: FREE[i % 3].0,
        measure: MeasureWords::ALL[random.usize(..MeasureWords::ALL.len())].key,
        against: against[random.usize(..3)],
    }
}

impl Question {
    /// The library's own sandbox with the same settings.
    fn sandbox(&self) -> Sandbox {
        let mut sandbox = Sandbox::open(&self.text);
        let (key, value) = &self.wish;
        let text = if value.is_empty() {
            key.clone()
        } else {
            format!("{key}={value}")
        };
        let free = FREE.iter().find(|(known, _)| *known == self.free);
        for change in [
            AimChange::Wish(Wish::read(&text).expect("a wish")),
            AimChange::Free(free.expect("a known word").1),
            AimChange::Measure(MeasureWords::from_key(self.measure).expect("a known key")),
            AimChange::Against(self.against),
        ] {
            sandbox.apply(Input::Aim(change)).expect("not refused");
        }
        sandbox
    }

    fn expect(&self, shown: &Shown) {
        let mut sandbox = self.sandbox();
        let what = format!("{} {:?} {}", self.text, self.wish, self.free);
        assert_eq!(shown.answer, answer_numbers(&mut sandbox), "{what}");
        let chart = format!("{what} {} against {:?}", self.measure, self.against);
        assert_eq!(shown.chart, chart_numbers(&mut sandbox), "{chart}");
        let solution = aim_solution(&mut sandbox);
        expect_json(&solution, &shown.answer, &what);
        let before = sandbox.solved().expect("solved").flyby.aim_point_km;
        let answer = [solution.answer.b_t_km, solution.answer.b_r_km];
        let aims = [before, answer].map(|aim| aim.map(print_number));
        assert_eq!(shown.aims, aims, "{what}");
        assert_eq!(shown.taken, solution.answer.scenario.to_string(), "{what}");
    }
}

/// The numbers that the JSON of `two-frames aim` has too are those.
fn expect_json(solution: &AimSolution, shown: &[Number], what: &str) {
    let answer = &solution.answer;
    for (path, value) in [
        ("page.aim.value", answer.value),
        ("page.aim.change_per_100_km", answer.change_per_100_km),
        ("page.aim.height_km", Some(answer.height_km)),
    ] {
        for number in shown.iter().filter(|number| number.path == path) {
            assert_eq!(number.value, value.map(print_number), "{path} of {what}");
        }
    }
}

/// Asks each question on the page as a person does, takes the answer, and writes down what the page then shows.
async fn ask_all(page: &Page, questions: &[Question]) -> WebDriverResult<Vec<Shown>> {
    let within = |name: &str| {
        let place = format!("deep('[data-text={name}] [data-quantity]')");
        NUMBERS.replacen("deep('[data-quantity]')", &place, 1)
    };
    let (answer, chart) = (within("answer"), within("outcome"));
    let script = format!(
        "
        const frame = () => new Promise(requestAnimationFrame);
        const frames = async () => {{ for (let i = 0; i < 4; i++) await frame(); }};
        const set = (selector, value, kind) => {{
            const e = deep(selector)[0];
            e.value = value;
            e.dispatchEvent(new Event(kind, {{ bubbles: true }}));
        }};
        const aim = () => ['t', 'r'].map(axis => deep(`[data-aim=${{axis}}]`)[0].dataset.value);
        const ask = async ([text, wish, value, free, measure, against]) => {{
            const heard = new Promise(resolve => addEventListener('hashchange', resolve, {{ once: true }}));
            location.hash = text;
            await heard;
            set('[data-action=wish]', wish, 'change');
            if (value) set('[data-part=wish]', value, 'input');
            set('[data-action=free]', free, 'change');
            set('[data-action=measure]', measure, 'change');
            set('[data-action=against]', against, 'change');
            await frames();
            const seen = {{ answer: {answer}, chart: {chart}, aims: [aim()] }};
            deep('[data-action=take]')[0].click();
            await frames();
            seen.aims.push(aim());
            await new Promise(resolve => setTimeout(resolve, 350));
            seen.taken = location.hash.slice(1);
            return seen;
        }};
        (async () => {{
            const seen = [];
            for (const question of arguments[0]) seen.push(await ask(question));
            return seen;
        }})().then(done);"
    );
    let asked: Vec<_> = questions
        .iter()
        .map(|q| {
            json!([
                q.text,
                q.wish.0,
                q.wish.1,
                q.free,
                q.measure,
                q.against.spec().key
            ])
        })
        .collect();
    let seen = page.run_async(&script, vec![json!(asked)]).await?;
    Ok(serde_json::from_value(seen)?)
}

#[test]
fn answers_and_charts_have_the_same_bits() {
    let mut random = fastrand::Rng::with_seed(20_261_203);
    let questions: Vec<_> = (0..COUNT)
        .map(|i| random_question(i, &mut random))
        .collect();
    let (mut numbers, mut met) = (0, 0);
    on_our_page("", async |page| {
        page.ready().await?;
        let limit = std::time::Duration::from_secs(90);
        page.driver().set_script_timeout(limit).await?;
        for batch in questions.chunks(BATCH) {
            for (question, shown) in batch.iter().zip(ask_all(page, batch).await?) {
                question.expect(&shown);
                numbers += shown.answer.len() + shown.chart.len() + 4;
                met += usize::from(aim_solution(&mut question.sandbox()).met);
            }
        }
        Ok(())
    });
    println!("{numbers} numbers of {COUNT} answers and charts, {met} of them met");
    assert!(met > COUNT / 4 && met < COUNT, "goals in and out of reach");
}
