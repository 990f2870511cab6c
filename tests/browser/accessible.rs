//! What a program can find of WCAG 2.2 A and AA, in every state of the page, and what a screen reader is told.

use serde_json::json;

use crate::native::Native;
use crate::page::{Outcome, Page, on_our_page};
use two_frames::report::{describe_aim_plane, describe_chart};
use two_frames::scenario::Field;

/// Nothing that axe-core can find is wrong.
pub(crate) async fn sound(page: &Page, state: &str) -> Outcome {
    let found = page.violations().await?;
    assert!(found.is_empty(), "{state}: {found:#?}");
    Ok(())
}

/// Unfolds everything that is folded.
pub(crate) async fn unfold_all(page: &Page) -> Outcome {
    page.run(
        "deep('details').forEach(d => { d.open = true; });",
        Vec::new(),
    )
    .await?;
    page.settle().await
}

#[test]
fn every_look_is_sound() {
    on_our_page("", async |page| {
        page.resize(1280, 800, 1.0).await?;
        for look in [
            &[("prefers-color-scheme", "light")],
            &[("prefers-color-scheme", "dark")],
            &[("forced-colors", "active")],
            &[("prefers-contrast", "more")],
        ] {
            page.prefer(look).await?;
            page.reopen("").await?;
            sound(page, &format!("{look:?}")).await?;
            unfold_all(page).await?;
            sound(page, &format!("{look:?}, unfolded")).await?;
        }
        Ok(())
    });
}

#[test]
fn small_screens_are_sound() {
    on_our_page("", async |page| {
        for width in [320, 390, 768] {
            page.resize(width, 740, 1.0).await?;
            page.reopen("").await?;
            sound(page, &format!("{width} wide")).await?;
            unfold_all(page).await?;
            sound(page, &format!("{width} wide, unfolded")).await?;
        }
        Ok(())
    });
}

#[test]
fn every_state_is_sound() {
    on_our_page("periapsis=0.001&flavour=3", async |page| {
        page.resize(1280, 800, 1.0).await?;
        page.ready().await?;
        sound(page, "notices").await?;
        page.retype("#v-infinity-number", "1000").await?;
        sound(page, "a refused value").await?;
        page.click("[data-action=share]").await?;
        sound(page, "the link in sight").await?;
        page.reopen("periapsis=0.6").await?;
        sound(page, "a strike").await?;
        page.reopen("planet=custom&gm=1e5&radius=6e3&orbit=1&aim=90")
            .await?;
        sound(page, "a custom planet, unfolded").await?;
        page.go_to("planet=custom&gm=1e-300&radius=1e300&orbit=1e300")
            .await?;
        page.wait_until("deep('#app[data-state=refused]').length == 1")
            .await?;
        sound(page, "no flyby").await?;
        page.before_loading("delete window.WebAssembly;").await?;
        page.go_to("").await?;
        page.wait_until("document.querySelector('#still').checkVisibility()")
            .await?;
        sound(page, "the still figure").await
    });
}

/// Waits until the live region says what the library says.
async fn is_said(page: &Page, native: &mut Native) -> Outcome {
    let panel = native.sandbox.panel().expect("it is solved");
    let said = format!(
        "{} {} {}",
        panel.planet_sentence, panel.sun_sentence, panel.why
    );
    let equal = format!(
        "deep('[data-text=spoken]')[0].textContent === {}",
        json!(said)
    );
    page.wait_until(&equal).await
}

#[test]
fn results_are_said_once_a_change_has_settled() {
    on_our_page("", async |page| {
        page.ready().await?;
        is_said(page, &mut Native::at_first()).await?;
        let role = "deep('[data-text=spoken]')[0].getAttribute('role')";
        assert_eq!(page.value_of(role).await?, "status");
        page.retype("#periapsis-number", "3").await?;
        is_said(
            page,
            &mut Native::at_first().with_value(Field::Periapsis, 3.0),
        )
        .await?;
        page.retype("#periapsis-number", "0.5").await?;
        is_said(
            page,
            &mut Native::at_first().with_value(Field::Periapsis, 0.5),
        )
        .await
    });
}

#[test]
fn little_is_said_while_a_setting_moves_or_the_pass_is_played() {
    on_our_page("", async |page| {
        page.ready().await?;
        is_said(page, &mut Native::at_first()).await?;
        let watch = "window.said = []; new MutationObserver(() => said.push(deep('[data-text=spoken]')[0].textContent))
            .observe(deep('[data-text=spoken]')[0], { childList: true, characterData: true, subtree: true });";
        page.run(watch, Vec::new()).await?;
        let slider = "[data-field=v-infinity] [data-part=slider]";
        let places = [
            page.place_in(slider, 0.2, 0.5).await?,
            page.place_in(slider, 0.8, 0.5).await?,
        ];
        page.drag(&places).await?;
        page.wait_until("said.length > 0").await?;
        assert_eq!(
            page.value_of("said.length").await?,
            1,
            "once, after the drag"
        );
        page.click("[data-action=play]").await?;
        let start = page.value_of("performance.now()").await?;
        page.wait_until(&format!("performance.now() > {start} + 1200"))
            .await?;
        assert_eq!(
            page.value_of("said.length").await?,
            1,
            "playing says nothing"
        );
        page.click("[data-action=play]").await
    });
}

#[test]
fn pictures_have_names_with_their_numbers() {
    on_our_page("", async |page| {
        page.ready().await?;
        for radii in [8.0, 3.0] {
            page.retype("#periapsis-number", &radii.to_string()).await?;
            let mut native = Native::at_first().with_value(Field::Periapsis, radii);
            is_said(page, &mut native).await?;
            let panel = native.sandbox.panel().expect("it is solved");
            let names = "deep('canvas').map(c => c.role + ' ' + c.getAttribute('aria-label'))";
            let names: Vec<String> = serde_json::from_value(page.value_of(names).await?)?;
            let img = |text: &String| format!("img {text}");
            let [planet, sun, diagram, record] = &panel.descriptions;
            let chart = native.sandbox.chart().expect("it is solved");
            let pass = native.sandbox.solved().expect("it is solved").pass();
            let meant = [
                img(planet),
                img(sun),
                img(diagram),
                format!("application {}", describe_aim_plane(&pass)),
                img(&describe_chart(&pass, &chart)),
                img(record),
            ];
            assert_eq!(names, meant);
            let names: Vec<_> = [0, 1, 2, 5].map(|i| names[i].clone()).into();
            // The stages say how fast the probe is now, each in its own frame; the diagram and the record compare.
            for (name, now) in names.iter().zip(&panel.now[2..]) {
                assert!(
                    name.contains(&now.value.text),
                    "{} in {name}",
                    now.value.text
                );
            }
            for name in &names[2..] {
                assert!(name.contains(&panel.rows[2].cells[1].text), "{name}");
            }
        }
        Ok(())
    });
}

#[test]
fn sliders_say_their_value_with_its_unit() {
    on_our_page("", async |page| {
        page.ready().await?;
        let said =
            "deep('[data-field=periapsis] [data-part=slider]')[0].getAttribute('aria-valuetext')";
        assert_eq!(page.value_of(said).await?, "8 planet radii");
        page.click("[data-field=periapsis] [data-part=less]")
            .await?;
        let number = page.value_in("#periapsis-number").await?;
        assert_eq!(page.value_of(said).await?, format!("{number} planet radii"));
        Ok(())
    });
}
