//! The machine round the page: its window, its screen, its processor, and what its owner prefers.

use std::collections::BTreeMap;

use serde_json::{Value, json};
use thirtyfour::error::WebDriverResult;

use crate::page::{Outcome, Page};

impl Page {
    /// Calls the browser's own protocol, as in `cdp("Page.reload", json!({}))`.
    pub(crate) async fn cdp(&self, method: &str, parameters: Value) -> WebDriverResult<Value> {
        self.driver().cdp().send_raw(method, parameters).await
    }

    /// Makes the page's own area `width` by `height` CSS pixels, with `scale` device pixels in each.
    pub(crate) async fn resize(&self, width: u32, height: u32, scale: f64) -> Outcome {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": scale, "mobile": false });
        self.cdp("Emulation.setDeviceMetricsOverride", size).await?;
        self.settle().await
    }

    /// Sets what a person prefers, as in `[("prefers-color-scheme", "dark")]`; what is not named goes back to normal.
    pub(crate) async fn prefer(&self, features: &[(&str, &str)]) -> Outcome {
        self.media("", features).await
    }

    /// Shows the page as it would be printed.
    pub(crate) async fn print_view(&self) -> Outcome {
        self.media("print", &[]).await
    }

    async fn media(&self, medium: &str, features: &[(&str, &str)]) -> Outcome {
        let features: Vec<_> = features
            .iter()
            .map(|(name, value)| json!({ "name": name, "value": value }))
            .collect();
        self.cdp(
            "Emulation.setEmulatedMedia",
            json!({ "media": medium, "features": features }),
        )
        .await?;
        self.settle().await
    }

    /// Makes the machine one with a touch screen, or not.
    pub(crate) async fn touch_screen(&self, present: bool) -> Outcome {
        let touch = json!({ "enabled": present, "maxTouchPoints": 5 });
        self.cdp("Emulation.setTouchEmulationEnabled", touch)
            .await
            .map(drop)
    }

    /// How many pixels of a rectangle of the screen (x, y, width and height in CSS pixels of the window) can be told apart
    /// from its first one.
    pub(crate) async fn marks_on_screen(
        &self,
        [x, y, width, height]: [f64; 4],
    ) -> WebDriverResult<u64> {
        let scrolled = self.value_of("[scrollX, scrollY]").await?;
        let [left, top]: [f64; 2] = serde_json::from_value(scrolled)?;
        let clip =
            json!({ "x": left + x, "y": top + y, "width": width, "height": height, "scale": 1 });
        let shot = self
            .cdp("Page.captureScreenshot", json!({ "clip": clip }))
            .await?;
        let count = "
            fetch(`data:image/png;base64,${arguments[0]}`).then(r => r.blob()).then(createImageBitmap).then(image => {
                const pen = new OffscreenCanvas(image.width, image.height).getContext('2d', { willReadFrequently: true });
                pen.drawImage(image, 0, 0);
                const { data } = pen.getImageData(0, 0, image.width, image.height);
                const differs = i => [0, 1, 2].some(c => Math.abs(data[i + c] - data[c]) > 8);
                let count = 0;
                for (let i = 0; i < data.length; i += 4) count += differs(i);
                done(count);
            });";
        let marks = self.run_async(count, vec![shot["data"].clone()]).await?;
        Ok(marks.as_u64().expect("a number"))
    }

    /// The browser's own measurements by name, such as `ScriptDuration` (s) and `JSHeapUsedSize` (bytes), after
    /// collecting garbage.
    pub(crate) async fn measurements(&self) -> WebDriverResult<BTreeMap<String, f64>> {
        self.cdp("HeapProfiler.collectGarbage", json!({})).await?;
        self.cdp("Performance.enable", json!({})).await?;
        let answer = self.cdp("Performance.getMetrics", json!({})).await?;
        let metrics = answer["metrics"].as_array().into_iter().flatten();
        Ok(metrics
            .filter_map(|m| Some((m["name"].as_str()?.to_owned(), m["value"].as_f64()?)))
            .collect())
    }
}
