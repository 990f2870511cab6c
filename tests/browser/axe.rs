//! axe-core, which finds faults of accessibility that a program can find. tests/all fetches it and names its file in the
//! variable `AXE_CORE`.

use std::{env, fs};

use serde::Deserialize;
use serde_json::json;
use thirtyfour::error::WebDriverResult;

use crate::page::Page;

/// WCAG 2.2, levels A and AA, in axe-core's own words.
const TAGS: [&str; 5] = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/// One rule that the page breaks.
#[derive(Debug, Deserialize)]
#[expect(
    dead_code,
    reason = "read by a person, in the message of a failed test"
)]
pub(crate) struct Violation {
    /// axe-core's name of the rule.
    pub(crate) id: String,
    /// The rule in a sentence.
    help: String,
    /// The elements that break it, as selectors, and what to do.
    nodes: Vec<String>,
}

impl Page {
    /// The rules of WCAG 2.2 A and AA that the page breaks as it is now, as far as axe-core can tell.
    pub(crate) async fn violations(&self) -> WebDriverResult<Vec<Violation>> {
        let path = env::var("AXE_CORE")
            .expect("AXE_CORE names axe.min.js: run tests/all, which fetches it");
        let library = fs::read_to_string(&path)
            .unwrap_or_else(|error| panic!("AXE_CORE names {path}: {error}"));
        // In the page's global scope, without a script element, so that no content policy stands in the way.
        self.cdp("Runtime.evaluate", json!({ "expression": library }))
            .await?;
        let script = "
            axe.run(document, { runOnly: arguments[0], resultTypes: ['violations'] }).then(found => done(
                found.violations.map(({ id, help, nodes }) => ({
                    id, help, nodes: nodes.map(n => `${n.target.join(' ')}: ${n.failureSummary}`),
                }))));";
        Ok(serde_json::from_value(
            self.run_async(script, vec![json!(TAGS)]).await?,
        )?)
    }
}
