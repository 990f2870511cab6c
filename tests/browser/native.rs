//! What the library itself says, run natively: what the page's numbers have to be.

use serde_json::Value;
use two_frames::report::{AimSolution, Piece, Quantity, Sentence, Solution, aim_sentences};
use two_frames::sandbox::{Input, Sandbox};
use two_frames::scenario::{Field, PRESETS, Scenario, print_number};

use crate::reading::Number;

/// A solved scenario as the JSON of `two-frames solve` and as the sandbox that the page runs too.
pub(crate) struct Native {
    json: Value,
    pub(crate) sandbox: Sandbox,
}

impl Native {
    /// Solves a scenario text that has nothing wrong with it.
    pub(crate) fn of(text: &str) -> Self {
        Scenario::read_strictly(text).unwrap_or_else(|notices| panic!("{text}: {notices:?}"));
        let mut sandbox = Sandbox::open(text);
        let scenario = *sandbox.scenario();
        let solved = sandbox
            .solved()
            .unwrap_or_else(|error| panic!("{text}: {error:?}"));
        let solution = Solution::new(&scenario, &solved.flyby);
        let json = serde_json::to_value(solution).expect("a solution is JSON");
        Self { json, sandbox }
    }

    /// The scenario that the page opens with.
    pub(crate) fn at_first() -> Self {
        Self::of(PRESETS[0].text)
    }

    /// The same scenario after an input.
    pub(crate) fn with(mut self, input: Input) -> Self {
        self.sandbox
            .apply(input)
            .unwrap_or_else(|notice| panic!("{notice}"));
        Self::of(&self.text())
    }

    /// The same scenario with another value of a field.
    pub(crate) fn with_value(self, field: Field, value: f64) -> Self {
        self.with(Input::Set(field, value))
    }

    /// The scenario text.
    pub(crate) fn text(&self) -> String {
        self.sandbox.scenario().to_string()
    }

    /// A field's value.
    pub(crate) fn get(&self, field: Field) -> f64 {
        let value = self.sandbox.scenario().get(field);
        value.expect("the scenario has this field")
    }

    /// The moment at which the page opens it, days after periapsis.
    pub(crate) fn telling_d(&mut self) -> f64 {
        self.sandbox.panel().expect("it is solved").time_d
    }

    /// The number at a path of the JSON, or the difference of two; `None` where it is null.
    pub(crate) fn value(&self, path: &str) -> Option<f64> {
        if let Some((after, before)) = path.split_once('-') {
            return Some(self.value(after)? - self.value(before)?);
        }
        let pointer = format!("/{}", path.replace('.', "/"));
        let value = self.json.pointer(&pointer);
        value
            .unwrap_or_else(|| panic!("the JSON has no {path}"))
            .as_f64()
    }

    /// Fails unless every number of the page that has a path in the JSON is there, with the same bits and the same text.
    pub(crate) fn expect_on_page(&self, shown: &[Number]) {
        let of_json: Vec<_> = shown
            .iter()
            .filter(|number| !number.path.starts_with("page."))
            .collect();
        for number in &of_json {
            self.expect_number(number);
        }
        for quantity in Quantity::ALL
            .iter()
            .filter(|quantity| !quantity.path.starts_with("page."))
        {
            let found = of_json.iter().any(|number| number.path == quantity.path);
            assert!(found, "the page does not show {}", quantity.path);
        }
    }

    fn expect_number(&self, number: &Number) {
        let expected = self.value(&number.path);
        let text = expected.map(print_number);
        let (path, scenario) = (&number.path, self.text());
        assert_eq!(number.value, text, "{path} of {scenario}, as text");
        let bits = |text: &String| text.parse().map(f64::to_bits).expect("a number");
        assert_eq!(
            number.value.as_ref().map(bits),
            expected.map(f64::to_bits),
            "{path} of {scenario}, bit for bit"
        );
    }
}

/// What the page shows of the answer to a wish: the numbers of its sentences, each as the page names it.
pub(crate) fn answer_numbers(sandbox: &mut Sandbox) -> Vec<Number> {
    let aiming = sandbox.aiming().expect("there is an answer");
    let own = |path: String| {
        let path = path.strip_prefix("page.aim.").unwrap_or(&path);
        ["page.aim.", path.strip_prefix("page.").unwrap_or(path)].concat()
    };
    let numbers = aim_sentences(aiming)
        .iter()
        .flat_map(numbers_of)
        .collect::<Vec<_>>();
    let named = |number: Number| Number {
        path: own(number.path),
        ..number
    };
    numbers.into_iter().map(named).collect()
}

/// What the page shows of the chart of the outcome: the numbers of its sentence.
pub(crate) fn chart_numbers(sandbox: &mut Sandbox) -> Vec<Number> {
    let chart = sandbox.chart().expect("it is solved");
    let solved = sandbox.solved().expect("it is solved");
    numbers_of(&chart.sentence(&solved.pass()))
}

fn numbers_of(sentence: &Sentence) -> Vec<Number> {
    let pieces = sentence.pieces().iter();
    let values = pieces.filter_map(|piece| match piece {
        Piece::Number(value) => Some(value),
        Piece::Words(_) => None,
    });
    let number = |value: &two_frames::report::Value| Number {
        path: value.path.clone(),
        value: value.value.map(print_number),
        text: value.text.clone(),
    };
    values.map(number).collect()
}

/// The answer to a wish as the JSON of `two-frames aim` has it.
pub(crate) fn aim_solution(sandbox: &mut Sandbox) -> AimSolution {
    sandbox.aim_solution().expect("there is an answer")
}
