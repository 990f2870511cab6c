//! A page in a real browser, and the ways in which a test acts on it and reads it.

use std::collections::BTreeMap;
use std::fs;
use std::panic::{self, AssertUnwindSafe};
use std::path::Path;
use std::sync::{Mutex, OnceLock, PoisonError};
use std::thread;
use std::time::{Duration, Instant};

use serde_json::{Value, json};
use thirtyfour::prelude::*;
use two_frames::cli::{Project, Server};

use crate::driver::Chromedriver;

/// What a browser test returns.
pub(crate) type Outcome = WebDriverResult<()>;

/// How long a test waits for what the page should do by itself.
const PATIENCE: Duration = Duration::from_secs(10);

/// Finds elements in the document and in every open shadow root.
const DEEP: &str = "
    const deep = (selector, root = document) => [
        ...root.querySelectorAll(selector),
        ...[...root.querySelectorAll('*')].filter(e => e.shadowRoot).flatMap(e => deep(selector, e.shadowRoot)),
    ];
";

/// Runs `test` on our own page, opened with `fragment` (the text after `#`; empty for none). The core is brought up to
/// date first.
pub(crate) fn on_our_page(fragment: &str, test: impl AsyncFnOnce(&Page) -> Outcome) {
    on_page_of(&built().page(), fragment, test);
}

/// The project with its core brought up to date: once, however many tests ask for it at the same time.
pub(crate) fn built() -> Project {
    static BUILT: OnceLock<()> = OnceLock::new();
    let project = Project::here();
    BUILT.get_or_init(|| {
        project
            .build_core()
            .unwrap_or_else(|failure| panic!("{failure}"));
    });
    project
}

/// Runs `test` on the page in the folder `site`. A failing test leaves a screenshot in `.build/browser-failures`; what
/// the page wrote to the console as a warning or an error makes it fail too, unless the test took it with
/// [`Page::complaints`].
pub(crate) fn on_page_of(site: &Path, fragment: &str, test: impl AsyncFnOnce(&Page) -> Outcome) {
    // One browser at a time, however many tests run: two would slow each other down, and some tests measure time.
    static TURN: Mutex<()> = Mutex::new(());
    let _turn = TURN.lock().unwrap_or_else(PoisonError::into_inner);

    let server = Server::start(site, 0).expect("a free port and the site's folder");
    let chromedriver = Chromedriver::start();
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()
        .expect("a runtime");
    let page = runtime
        .block_on(Page::open(&chromedriver, server.address()))
        .expect("a browser opens");
    let whole_test = async {
        page.go_to(fragment).await?;
        test(&page).await?;
        page.complaints().await
    };
    let result = panic::catch_unwind(AssertUnwindSafe(|| runtime.block_on(whole_test)));
    if !matches!(result, Ok(Ok(_))) {
        runtime.block_on(page.keep_screenshot());
    }
    let closed = runtime.block_on(page.driver.quit());
    match result {
        Err(reason) => panic::resume_unwind(reason),
        Ok(result) => {
            let complaints = result.unwrap_or_else(|error| panic!("the browser refused: {error}"));
            assert!(
                complaints.is_empty(),
                "the page complained on the console: {complaints:#?}"
            );
        }
    }
    closed.expect("the browser closes");
}

/// One window of Chromium.
pub(crate) struct Page {
    driver: WebDriver,
    address: String,
}

impl Page {
    async fn open(chromedriver: &Chromedriver, address: String) -> WebDriverResult<Self> {
        Ok(Self {
            driver: chromedriver.open().await?,
            address,
        })
    }

    /// The driver itself, for what this type does not offer.
    pub(crate) fn driver(&self) -> &WebDriver {
        &self.driver
    }

    /// Loads the page anew, with `fragment` after the `#`.
    pub(crate) async fn go_to(&self, fragment: &str) -> Outcome {
        let hash = if fragment.is_empty() { "" } else { "#" };
        // A change of the fragment alone would not load anything.
        self.driver.goto("about:blank").await?;
        self.driver
            .goto(format!("{}{hash}{fragment}", self.address))
            .await
    }

    /// The value of a JavaScript expression; `deep(selector)` in it lists elements, shadow roots included.
    pub(crate) async fn value_of(&self, expression: &str) -> WebDriverResult<Value> {
        let script = format!("{DEEP} return ({expression});");
        Ok(self
            .driver
            .execute(script, Vec::new())
            .await?
            .json()
            .clone())
    }

    /// Runs statements of JavaScript with `args` as their `arguments`; `return` gives a value back.
    pub(crate) async fn run(&self, statements: &str, args: Vec<Value>) -> WebDriverResult<Value> {
        Ok(self
            .driver
            .execute(format!("{DEEP} {statements}"), args)
            .await?
            .json()
            .clone())
    }

    /// Like [`Page::run`], for statements that give their value to `done` later.
    pub(crate) async fn run_async(
        &self,
        statements: &str,
        args: Vec<Value>,
    ) -> WebDriverResult<Value> {
        let script = format!("{DEEP} const done = arguments[arguments.length - 1]; {statements}");
        Ok(self
            .driver
            .execute_async(script, args)
            .await?
            .json()
            .clone())
    }

    /// Waits until a JavaScript expression is true, and fails the test if that takes too long.
    pub(crate) async fn wait_until(&self, expression: &str) -> Outcome {
        let end = Instant::now() + PATIENCE;
        while self.value_of(&format!("!!({expression})")).await? != json!(true) {
            assert!(
                Instant::now() < end,
                "waited {PATIENCE:?} in vain for: {expression}"
            );
            tokio::time::sleep(Duration::from_millis(20)).await;
        }
        Ok(())
    }

    /// Waits until the browser has painted twice, so that whatever an event set off is on the screen.
    pub(crate) async fn settle(&self) -> Outcome {
        self.run_async(
            "requestAnimationFrame(() => requestAnimationFrame(done));",
            Vec::new(),
        )
        .await
        .map(drop)
    }

    /// The first element that matches `selector`, shadow roots included.
    pub(crate) async fn element(&self, selector: &str) -> WebDriverResult<WebElement> {
        let script = format!("{DEEP} return deep(arguments[0])[0] ?? null;");
        let found = self.driver.execute(script, vec![json!(selector)]).await?;
        assert!(
            !found.json().is_null(),
            "the page has no element {selector}"
        );
        found.element()
    }

    /// The texts of all elements that match `selector`, as a person sees them.
    pub(crate) async fn texts(&self, selector: &str) -> WebDriverResult<Vec<String>> {
        let texts = self
            .run(
                "return deep(arguments[0]).map(e => e.innerText.trim());",
                vec![json!(selector)],
            )
            .await?;
        Ok(serde_json::from_value(texts)?)
    }

    /// Every number on the page, unrounded: `data-value` by `data-quantity`. A value that does not exist is absent.
    pub(crate) async fn quantities(&self) -> WebDriverResult<BTreeMap<String, f64>> {
        let pairs = "Object.fromEntries(deep('[data-quantity]').map(e => [e.dataset.quantity, e.dataset.value ?? '']))";
        let texts: BTreeMap<String, String> = serde_json::from_value(self.value_of(pairs).await?)?;
        Ok(texts
            .into_iter()
            .filter_map(|(name, text)| Some((name, text.parse().ok()?)))
            .collect())
    }

    /// One number on the page, unrounded, by its `data-quantity`.
    pub(crate) async fn quantity(&self, name: &str) -> WebDriverResult<f64> {
        let all = self.quantities().await?;
        Ok(*all.get(name).unwrap_or_else(|| {
            panic!("the page shows no number for {name}, only {:?}", all.keys())
        }))
    }

    /// Takes the warnings and errors that the page has written to the console since the last call.
    pub(crate) async fn complaints(&self) -> WebDriverResult<Vec<String>> {
        let entries = self.driver.browser_log().await?;
        let bad = entries
            .into_iter()
            .filter(|entry| matches!(entry.level.as_str(), "WARNING" | "SEVERE"));
        Ok(bad
            .map(|entry| format!("{}: {}", entry.level, entry.message))
            .collect())
    }

    async fn keep_screenshot(&self) {
        let folder = Project::here().root().join(".build/browser-failures");
        let test = thread::current()
            .name()
            .unwrap_or("test")
            .replace("::", "-");
        let path = folder.join(format!("{test}.png"));
        let kept =
            fs::create_dir_all(&folder).is_ok() && self.driver.screenshot(&path).await.is_ok();
        if kept {
            eprintln!("The page as it was then: {}", path.display());
        }
    }
}
