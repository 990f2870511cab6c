//! A person's hand on the page: mouse, finger, keys. The browser takes these for the real thing.

use serde_json::{Value, json};
use thirtyfour::action_chain::ActionChain;
use thirtyfour::prelude::*;

use crate::page::{Outcome, Page};

/// A place on the page: x to the right and y down from the window's upper left corner, in CSS pixels.
pub(crate) type Place = (f64, f64);

/// How many moves a drag is made of.
const STEPS: u32 = 12;

impl Page {
    /// The middle of an element, scrolled into view.
    pub(crate) async fn middle_of(&self, selector: &str) -> WebDriverResult<Place> {
        self.place_in(selector, 0.5, 0.5).await
    }

    /// A place in an element, from (0, 0) at its upper left to (1, 1) at its lower right corner, scrolled into view.
    pub(crate) async fn place_in(
        &self,
        selector: &str,
        across: f64,
        down: f64,
    ) -> WebDriverResult<Place> {
        // A person waits until the page has come to rest: it may still be gliding to where an earlier step led.
        let script = "
            const [selector, across, down] = arguments;
            const place = (...last) => {
                const e = deep(selector)[0];
                if (!e) return done(null);
                e.scrollIntoView({ block: 'center', behavior: 'instant' });
                const r = e.getBoundingClientRect();
                if (r.x === last[0] && r.y === last[1])
                    return done([r.x + r.width * across, r.y + r.height * down]);
                requestAnimationFrame(() => requestAnimationFrame(() => place(r.x, r.y)));
            };
            place();";
        let place = self
            .run_async(script, vec![json!(selector), json!(across), json!(down)])
            .await?;
        assert!(!place.is_null(), "the page has no element {selector}");
        Ok(serde_json::from_value(place)?)
    }

    /// Clicks an element with the mouse.
    pub(crate) async fn click(&self, selector: &str) -> Outcome {
        let place = self.middle_of(selector).await?;
        self.drag(&[place, place]).await
    }

    /// Drags with the left mouse button along the given places.
    pub(crate) async fn drag(&self, places: &[Place]) -> Outcome {
        let (first, last) = ends(places);
        self.press_mouse(first).await?;
        for place in between(places) {
            self.move_mouse(place).await?;
        }
        self.release_mouse(last).await?;
        self.settle().await
    }

    /// Presses the left mouse button at a place and keeps it down.
    pub(crate) async fn press_mouse(&self, place: Place) -> Outcome {
        self.mouse("mouseMoved", place, 0).await?;
        self.mouse("mousePressed", place, 1).await
    }

    /// Moves the mouse with the left button down.
    pub(crate) async fn move_mouse(&self, place: Place) -> Outcome {
        self.mouse("mouseMoved", place, 1).await
    }

    /// Lets the left mouse button go.
    pub(crate) async fn release_mouse(&self, place: Place) -> Outcome {
        self.mouse("mouseReleased", place, 0).await
    }

    async fn mouse(&self, what: &str, (x, y): Place, buttons: u32) -> Outcome {
        let button = if what == "mouseMoved" && buttons == 0 {
            "none"
        } else {
            "left"
        };
        let event = json!({ "type": what, "x": x, "y": y, "button": button, "buttons": buttons, "clickCount": 1 });
        self.cdp("Input.dispatchMouseEvent", event).await.map(drop)
    }

    /// Turns the mouse wheel at a place by `down` CSS pixels.
    pub(crate) async fn wheel(&self, (x, y): Place, down: f64) -> Outcome {
        let event = json!({ "type": "mouseWheel", "x": x, "y": y, "deltaX": 0, "deltaY": down });
        self.cdp("Input.dispatchMouseEvent", event).await?;
        self.settle().await
    }

    /// Taps an element with a finger; see [`Page::touch_screen`].
    pub(crate) async fn tap(&self, selector: &str) -> Outcome {
        let place = self.middle_of(selector).await?;
        self.touch("touchStart", &[place]).await?;
        self.touch("touchEnd", &[]).await?;
        self.settle().await
    }

    /// Drags a finger along the given places.
    pub(crate) async fn swipe(&self, places: &[Place]) -> Outcome {
        self.touch("touchStart", &[ends(places).0]).await?;
        for place in between(places) {
            self.touch("touchMove", &[place]).await?;
        }
        self.touch("touchEnd", &[]).await?;
        self.settle().await
    }

    async fn touch(&self, what: &str, fingers: &[Place]) -> Outcome {
        let fingers: Vec<Value> = fingers
            .iter()
            .map(|(x, y)| json!({ "x": x, "y": y }))
            .collect();
        self.cdp(
            "Input.dispatchTouchEvent",
            json!({ "type": what, "touchPoints": fingers }),
        )
        .await
        .map(drop)
    }

    /// Types into an element, after giving it the focus; `Key::Right` and the like are keys too.
    pub(crate) async fn type_into(&self, selector: &str, keys: impl Into<TypingData>) -> Outcome {
        self.element(selector).await?.send_keys(keys).await?;
        self.settle().await
    }

    /// Types into a field in place of all that is in it, digit by digit.
    pub(crate) async fn retype(&self, selector: &str, text: &str) -> Outcome {
        self.empty(selector).await?;
        self.type_into(selector, text).await
    }

    /// Puts a text into a field at once, as pasting does, in place of all that is in it.
    pub(crate) async fn paste_over(&self, selector: &str, text: &str) -> Outcome {
        self.empty(selector).await?;
        self.cdp("Input.insertText", json!({ "text": text }))
            .await?;
        self.settle().await
    }

    async fn empty(&self, selector: &str) -> Outcome {
        self.click(selector).await?;
        self.press(&[char::from(Key::Control), 'a']).await?;
        self.press(&[Key::Delete]).await
    }

    /// Presses keys together wherever the focus is, as in `[Key::Shift, Key::Tab]`, and lets them go.
    pub(crate) async fn press<K: Into<char> + Clone>(&self, keys: &[K]) -> Outcome {
        let down = |chain: ActionChain, key: &K| chain.key_down(key.clone());
        let up = |chain: ActionChain, key: &K| chain.key_up(key.clone());
        let chain = keys.iter().fold(self.driver().action_chain(), down);
        keys.iter().rev().fold(chain, up).perform().await?;
        self.settle().await
    }

    /// What has the focus, as the tag and id of the innermost element, like `input#periapsis`.
    pub(crate) async fn focus(&self) -> WebDriverResult<String> {
        let script = "
            let e = document.activeElement;
            while (e?.shadowRoot?.activeElement) e = e.shadowRoot.activeElement;
            return e ? e.localName + (e.id ? '#' + e.id : '') : '';";
        Ok(serde_json::from_value(self.run(script, Vec::new()).await?)?)
    }
}

fn ends(places: &[Place]) -> (Place, Place) {
    match places {
        [first, .., last] => (*first, *last),
        _ => panic!("a drag needs at least two places, got {places:?}"),
    }
}

/// Places along the way, evenly spaced on each stretch, without the very first.
fn between(places: &[Place]) -> Vec<Place> {
    let along = |(a, b): (Place, Place), step: u32| {
        let share = f64::from(step) / f64::from(STEPS);
        (a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share)
    };
    let stretches = places
        .windows(2)
        .map(|pair| (pair[0], pair[1]))
        .filter(|(a, b)| a != b);
    stretches
        .flat_map(|pair| (1..=STEPS).map(move |step| along(pair, step)))
        .collect()
}
