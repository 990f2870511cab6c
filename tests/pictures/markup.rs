//! The SVG text is a well-formed document that says what it shows and does nothing.

use std::collections::BTreeSet;

use glam::dvec2;
use roxmltree::{Document, Node};
use two_frames::figure::{Anchor, Label, Mark, Picture, Role, Theme, color, css_name, svg};
use two_frames::scenario::PRESETS;

use crate::common::{Moment, parts, sandbox, sizes, usual};

const SVG: &str = "http://www.w3.org/2000/svg";

/// All elements with this name.
fn elements<'a>(document: &'a Document<'_>, name: &str) -> Vec<Node<'a, 'a>> {
    document
        .descendants()
        .filter(|node| node.has_tag_name((SVG, name)))
        .collect()
}

fn all(theme: Theme) -> Vec<(String, String)> {
    let presets = PRESETS.iter().flat_map(|preset| {
        parts(&mut sandbox(preset.text, Moment::Telling), &usual()).map(|part| {
            (
                part.description.clone(),
                svg(&part.picture, &part.description, theme),
            )
        })
    });
    presets.collect()
}

#[test]
fn every_picture_is_well_formed_and_says_what_it_is() {
    for (description, text) in all(Theme::Light) {
        let document = Document::parse(&text).expect("well-formed XML");
        let root = document.root_element();
        assert!(root.has_tag_name((SVG, "svg")));
        assert_eq!(root.attribute("role"), Some("img"));
        let (width, height) = (root.attribute("width"), root.attribute("height"));
        let size = format!(
            "0 0 {} {}",
            width.expect("a width"),
            height.expect("a height")
        );
        assert_eq!(root.attribute("viewBox"), Some(&*size));
        // Title and description come first, where screen readers look for them.
        // Source: SVG 2, 5.8 "The 'title' and 'desc' elements" (M).
        let mut children = root.children().filter(Node::is_element);
        let (title, desc) = (
            children.next().expect("a title"),
            children.next().expect("a description"),
        );
        assert!(
            title.has_tag_name((SVG, "title")) && title.text().is_some_and(|text| text.len() > 9)
        );
        assert!(desc.has_tag_name((SVG, "desc")));
        assert_eq!(desc.text(), Some(&*description));
    }
}

#[test]
fn a_picture_runs_nothing_and_fetches_nothing() {
    let allowed: BTreeSet<_> = [
        "svg", "title", "desc", "style", "rect", "path", "circle", "text", "image",
    ]
    .into();
    for (_, text) in all(Theme::Light) {
        let document = Document::parse(&text).expect("well-formed XML");
        for node in document.descendants().filter(Node::is_element) {
            assert!(
                allowed.contains(node.tag_name().name()),
                "{:?}",
                node.tag_name()
            );
            for attribute in node.attributes() {
                let (name, value) = (attribute.name(), attribute.value());
                let own = value.starts_with("data:image/png;base64,");
                assert!(
                    !name.starts_with("on") && (name != "href" || own),
                    "{name}={value}"
                );
            }
        }
        let style = elements(&document, "style")[0].text().expect("a style");
        assert!(
            !style.contains("url(") && !style.contains("@import"),
            "{style}"
        );
    }
}

#[test]
fn every_class_has_its_rule_and_its_colour() {
    for theme in [Theme::Light, Theme::Dark] {
        let (_, text) = all(theme).swap_remove(0);
        let document = Document::parse(&text).expect("well-formed XML");
        let style = elements(&document, "style")[0]
            .text()
            .expect("a style")
            .to_owned();
        for class in document
            .descendants()
            .filter(|node| !node.has_tag_name("svg"))
            .filter_map(|node| node.attribute("class"))
            .flat_map(str::split_whitespace)
        {
            assert!(
                style.contains(&format!(".{class}{{")),
                "no rule for {class}"
            );
        }
        for role in Role::ALL {
            let (name, plain) = (css_name(role), color(theme, role));
            assert!(
                style.contains(&format!("fill:{plain};fill:var({name},{plain})")),
                "{name}"
            );
            assert!(
                style.contains(&format!("stroke:{plain};stroke:var({name},{plain})")),
                "{name}"
            );
        }
    }
}

#[test]
fn words_with_marks_of_the_markup_survive() {
    let words = "a < b & \"c\" > 'd'";
    let mut picture = Picture::new(dvec2(10.0, 10.0), words);
    picture.marks.push(Mark::Label(Label {
        at: dvec2(1.0, 1.0),
        anchor: Anchor::End,
        text: words.into(),
        role: Role::Ink,
        size: 3.0,
        bold: true,
        halo: false,
    }));
    let text = svg(&picture, words, Theme::Light);
    let document = Document::parse(&text).expect("well-formed XML");
    for name in ["title", "desc", "text"] {
        assert_eq!(elements(&document, name)[0].text(), Some(words), "{name}");
    }
    assert_eq!(
        elements(&document, "text")[0].attribute("text-anchor"),
        Some("end")
    );
}

#[test]
fn the_document_has_every_mark_of_the_picture() {
    for part in parts(&mut sandbox(PRESETS[0].text, Moment::Telling), &usual()) {
        let text = svg(&part.picture, "", Theme::Light);
        let document = Document::parse(&text).expect("well-formed XML");
        let drawn: Vec<_> = elements(&document, "text")
            .iter()
            .filter_map(Node::text)
            .collect();
        let marked: Vec<_> = part.picture.labels().map(|label| &*label.text).collect();
        assert_eq!(drawn, marked, "{}", part.name);
        let (mut paths, mut circles, mut images) = (0, 0, 0);
        for mark in &part.picture.marks {
            match mark {
                Mark::Path(_) => paths += 1,
                Mark::Arrow(arrow) => paths += arrow.shaft_lines().len() + 1,
                Mark::Disc(disc) => {
                    circles += usize::from(disc.fill.is_some()) + usize::from(disc.edge.is_some());
                }
                Mark::Handle(_) => circles += 2,
                Mark::Raster(_) => images += 1,
                Mark::Label(_) => {}
            }
        }
        assert_eq!(elements(&document, "path").len(), paths, "{}", part.name);
        assert_eq!(elements(&document, "image").len(), images, "{}", part.name);
        assert_eq!(
            elements(&document, "circle").len(),
            circles,
            "{}",
            part.name
        );
    }
}

/// What looks dashed in the data is dashed in the text, and what looks solid is not.
#[test]
fn dashes_reach_the_text() {
    for part in parts(&mut sandbox(PRESETS[0].text, Moment::Telling), &usual()) {
        let text = svg(&part.picture, "", Theme::Light);
        let document = Document::parse(&text).expect("well-formed XML");
        let dashed = document
            .descendants()
            .filter(|node| node.attribute("stroke-dasharray").is_some())
            .count();
        let expected: usize = part.picture.marks.iter().map(broken_lines).sum();
        assert_eq!(dashed, expected, "{}", part.name);
        assert!(expected > 0, "{}", part.name);
    }
}

fn broken_lines(mark: &Mark) -> usize {
    use two_frames::figure::Dash::Solid;
    match mark {
        Mark::Path(path) => usize::from(path.stroke.dash != Solid),
        Mark::Arrow(arrow) if arrow.stroke.dash != Solid => arrow.shaft_lines().len(),
        Mark::Disc(disc) => usize::from(disc.edge.is_some_and(|edge| edge.dash != Solid)),
        _ => 0,
    }
}

#[test]
fn the_same_pass_gives_the_same_text() {
    for preset in &PRESETS {
        let text = || {
            let parts = parts(
                &mut sandbox(preset.text, Moment::Telling),
                &sizes((390.0, 390.0), (380.0, 190.0)),
            );
            parts.map(|part| svg(&part.picture, &part.description, Theme::Light))
        };
        assert_eq!(text(), text(), "{}", preset.id);
    }
}

#[test]
fn labels_stand_in_the_text_as_in_the_data() {
    for part in parts(&mut sandbox(PRESETS[0].text, Moment::Telling), &usual()) {
        let text = svg(&part.picture, "", Theme::Light);
        let document = Document::parse(&text).expect("well-formed XML");
        for (node, label) in elements(&document, "text")
            .iter()
            .zip(part.picture.labels())
        {
            let number = |name| -> f64 {
                let value = node.attribute(name).expect("it is given");
                value.parse().expect("a number")
            };
            let anchor = match label.anchor {
                Anchor::Start => "start",
                Anchor::Middle => "middle",
                Anchor::End => "end",
            };
            let words = &label.text;
            assert_eq!(node.attribute("text-anchor"), Some(anchor), "{words}");
            assert_eq!(
                node.attribute("font-weight"),
                label.bold.then_some("bold"),
                "{words}"
            );
            let class = css_name(label.role).trim_start_matches('-');
            assert_eq!(node.attribute("class"), Some(class), "{words}");
            // Coordinates are written to the hundredth.
            for (name, value) in [
                ("x", label.at.x),
                ("y", label.at.y),
                ("font-size", label.size),
            ] {
                assert!((number(name) - value).abs() <= 0.0051, "{words}: {name}");
            }
        }
    }
}
