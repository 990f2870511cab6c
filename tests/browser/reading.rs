//! Reading our page: is it there, which numbers does it show, what do its pictures look like.

use serde::Deserialize;
use serde_json::json;
use thirtyfour::error::WebDriverResult;

use crate::native::Native;
use crate::page::{Outcome, Page};

/// A number of the page.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub(crate) struct Number {
    /// Its `data-quantity`.
    pub(crate) path: String,
    /// Its `data-value`, if it has one.
    pub(crate) value: Option<String>,
    /// What a person sees.
    pub(crate) text: String,
}

/// JavaScript: every number of the page.
pub(crate) const NUMBERS: &str = "deep('[data-quantity]').map(e => \
    ({ path: e.dataset.quantity, value: e.dataset.value ?? null, text: e.textContent.trim() }))";

/// How a picture looks: a short sum of its pixels, and how many colours it has.
#[derive(Clone, Debug, PartialEq, Deserialize)]
pub(crate) struct Look {
    pub(crate) sum: u32,
    pub(crate) colours: usize,
}

impl Page {
    /// Waits until a pass is shown.
    pub(crate) async fn ready(&self) -> Outcome {
        self.wait_until("deep('#app[data-state=shown]').length == 1")
            .await?;
        self.settle().await
    }

    /// Loads the page anew with a fragment, and waits until a pass is shown.
    pub(crate) async fn reopen(&self, fragment: &str) -> Outcome {
        self.go_to(fragment).await?;
        self.ready().await
    }

    /// Every number of the page.
    pub(crate) async fn numbers(&self) -> WebDriverResult<Vec<Number>> {
        Ok(serde_json::from_value(self.value_of(NUMBERS).await?)?)
    }

    /// Every number in the place that carries `data-text="name"`.
    pub(crate) async fn numbers_in(&self, name: &str) -> WebDriverResult<Vec<Number>> {
        let place = format!("deep('[data-text={name}] [data-quantity]')");
        let numbers = NUMBERS.replacen("deep('[data-quantity]')", &place, 1);
        Ok(serde_json::from_value(self.value_of(&numbers).await?)?)
    }

    /// Chooses from a list as a person does: the list says that it has changed.
    pub(crate) async fn choose(&self, selector: &str, value: &str) -> Outcome {
        self.run(
            "const list = deep(arguments[0])[0];
             list.value = arguments[1];
             list.dispatchEvent(new Event('change', { bubbles: true }));",
            vec![json!(selector), json!(value)],
        )
        .await?;
        assert_eq!(
            self.value_in(selector).await?,
            value,
            "{selector} has no {value}"
        );
        self.settle().await
    }

    /// How the four pictures look: planet frame, Sun frame, diagram, record.
    pub(crate) async fn looks(&self) -> WebDriverResult<[Look; 4]> {
        self.looks_of(["planet", "sun", "diagram", "record"]).await
    }

    /// How the map and the chart look: aim plane, outcome.
    pub(crate) async fn aim_looks(&self) -> WebDriverResult<[Look; 2]> {
        self.looks_of(["aim", "outcome"]).await
    }

    async fn looks_of<const N: usize>(&self, names: [&str; N]) -> WebDriverResult<[Look; N]> {
        // Read from a copy: reading the page's own canvases often would slow them down.
        let script = "
            return arguments[0].map(name => {
                const canvas = deep(`[data-picture=${name}] canvas`)[0];
                const copy = new OffscreenCanvas(canvas.width, canvas.height);
                const pen = copy.getContext('2d', { willReadFrequently: true });
                pen.drawImage(canvas, 0, 0);
                const pixels = new Uint32Array(pen.getImageData(0, 0, copy.width, copy.height).data.buffer);
                let sum = 0;
                for (const pixel of pixels) sum = (Math.imul(sum, 31) + pixel) >>> 0;
                return { sum, colours: new Set(pixels).size };
            });";
        let looks = self.run(script, vec![json!(names.as_slice())]).await?;
        let looks: Vec<Look> = serde_json::from_value(looks)?;
        Ok(looks.try_into().expect("a look for each name"))
    }

    /// Waits until the address carries the scenario text of `native`, then holds every number of the page to it.
    pub(crate) async fn expect(&self, native: &Native) -> Outcome {
        self.expect_address(&native.text()).await?;
        native.expect_on_page(&self.numbers().await?);
        Ok(())
    }

    /// Waits until the address has this text after the `#`.
    pub(crate) async fn expect_address(&self, text: &str) -> Outcome {
        let wanted = json!(format!("#{text}"));
        self.wait_until(&format!("location.hash === {wanted}"))
            .await
    }

    /// The value of an `input` or `select`.
    pub(crate) async fn value_in(&self, selector: &str) -> WebDriverResult<String> {
        let value = self
            .run("return deep(arguments[0])[0].value;", vec![json!(selector)])
            .await?;
        Ok(serde_json::from_value(value)?)
    }

    /// The moment shown, days after periapsis.
    pub(crate) async fn time_d(&self) -> WebDriverResult<f64> {
        self.quantity("page.now.time_d").await
    }

    /// The visible text of the first element that matches.
    pub(crate) async fn text(&self, selector: &str) -> WebDriverResult<String> {
        let texts = self.texts(selector).await?;
        Ok(texts
            .into_iter()
            .next()
            .unwrap_or_else(|| panic!("the page has no element {selector}")))
    }

    /// Runs JavaScript in every page that is loaded from now on, before its own scripts.
    pub(crate) async fn before_loading(&self, source: &str) -> Outcome {
        let method = "Page.addScriptToEvaluateOnNewDocument";
        self.cdp(method, json!({ "source": source }))
            .await
            .map(drop)
    }
}
