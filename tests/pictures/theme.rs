//! Colours: enough contrast in both themes, the same in the style sheet, and apart for those who see fewer of them.

use two_frames::figure::{Role, Theme, color, css_name};

/// Red, green and blue, 0..1, proportional to light.
pub(crate) type Light = [f64; 3];

/// The light of a colour as `#rrggbb`.
///
/// Source: IEC 61966-2-1 (sRGB), transfer function, as WCAG 2.2 repeats it in "relative luminance" (M).
pub(crate) fn light(hex: &str) -> Light {
    assert!(hex.len() == 7 && hex.starts_with('#'), "{hex}");
    [1, 3, 5].map(|at| {
        let byte = u8::from_str_radix(&hex[at..at + 2], 16).expect("two hexadecimal digits");
        let value = f64::from(byte) / 255.0;
        if value <= 0.04045 {
            value / 12.92
        } else {
            ((value + 0.055) / 1.055).powf(2.4)
        }
    })
}

/// Source: WCAG 2.2, definition of "relative luminance" (M).
fn luminance([red, green, blue]: Light) -> f64 {
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/// Source: WCAG 2.2, definition of "contrast ratio" (M).
fn contrast(a: &str, b: &str) -> f64 {
    let (a, b) = (luminance(light(a)), luminance(light(b)));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

const THEMES: [Theme; 2] = [Theme::Light, Theme::Dark];

#[test]
fn contrast_is_that_of_the_standard() {
    // Source: WCAG 2.2, note to "contrast ratio": ratios run from 1 to 21 (M). #767676 on white is the well-known
    // lightest grey with 4.5:1 (common practice, no source).
    assert!((contrast("#000000", "#ffffff") - 21.0).abs() < 1e-12);
    assert!((contrast("#123456", "#123456") - 1.0).abs() < 1e-12);
    assert!(contrast("#767676", "#ffffff") >= 4.5 && contrast("#777777", "#ffffff") < 4.5);
}

/// Source: WCAG 2.2, success criteria 1.4.3 (text 4.5:1) and 1.4.11 (graphics 3:1) (M).
#[test]
fn every_role_stands_out_from_the_ground() {
    for theme in THEMES {
        for role in Role::ALL {
            let least = match role {
                Role::Ground => continue,
                // Gridlines only help the eye along to numbers that stand there as text: nothing is lost without them.
                Role::Faint => 1.2,
                // The planet's body carries no text; its name is in ink.
                Role::Planet => 3.0,
                _ => 4.5,
            };
            let ratio = contrast(color(theme, role), color(theme, Role::Ground));
            assert!(
                ratio >= least,
                "{theme:?} {role:?}: {ratio:.2}, at least {least}"
            );
        }
    }
}

/// No picture writes in a role that is held to the contrast of a line only.
#[test]
fn words_are_in_roles_with_the_contrast_of_text() {
    use crate::common::{Moment, parts, sandbox, usual};
    for preset in &two_frames::scenario::PRESETS {
        for part in parts(&mut sandbox(preset.text, Moment::Telling), &usual()) {
            for label in part.picture.labels() {
                let quiet = matches!(label.role, Role::Planet | Role::Faint | Role::Ground);
                assert!(
                    !quiet,
                    "{} {}: “{}” is {:?}",
                    preset.id, part.name, label.text, label.role
                );
            }
        }
    }
}

/// The declarations of the first rule whose selector is exactly this, after `start` of the style sheet.
fn rule<'a>(css: &'a str, start: &str, selector: &str) -> &'a str {
    let from = css.find(start).unwrap_or_else(|| panic!("no {start}"));
    let opening = format!("{selector} {{");
    let at = css[from..]
        .find(&opening)
        .unwrap_or_else(|| panic!("no {selector} after {start}"));
    let body = &css[from + at + opening.len()..];
    &body[..body.find('}').expect("a closed rule")]
}

fn declared<'a>(body: &'a str, property: &str) -> Option<&'a str> {
    let declarations = body
        .split(';')
        .filter_map(|declaration| declaration.split_once(':'));
    declarations
        .map(|(name, value)| (name.trim(), value.trim()))
        .find(|(name, _)| *name == property)
        .map(|(_, value)| value)
}

#[test]
fn the_style_sheet_has_the_same_table() {
    let css = include_str!("../../www/style.css");
    let blocks = [
        ("light", Theme::Light, rule(css, ":root", ":root")),
        (
            "dark by preference",
            Theme::Dark,
            rule(
                css,
                "prefers-color-scheme: dark",
                ":root:not([data-theme=\"light\"])",
            ),
        ),
        (
            "dark by choice",
            Theme::Dark,
            rule(
                css,
                ":root[data-theme=\"dark\"]",
                ":root[data-theme=\"dark\"]",
            ),
        ),
    ];
    for (name, theme, body) in blocks {
        for role in Role::ALL {
            assert_eq!(
                declared(body, css_name(role)),
                Some(color(theme, role)),
                "{name}, {role:?}"
            );
        }
    }
    // The page's own colours have to be the same in both dark blocks as well.
    for property in ["--page", "--edge", "--alarm"] {
        assert!(declared(blocks[1].2, property).is_some(), "{property}");
        assert_eq!(
            declared(blocks[1].2, property),
            declared(blocks[2].2, property),
            "{property}"
        );
    }
}

/// How somebody sees a colour who lacks one kind of cone, as a matrix on light.
///
/// Source: Machado, Oliveira & Fernandes 2009, "A Physiologically-based Model for Simulation of Color Vision Deficiency",
/// IEEE TVCG 15(6), table for severity 1 (S: as transcribed in the R package prismatic).
const PROTANOPIA: [Light; 3] = [
    [0.152_286, 1.052_583, -0.204_868],
    [0.114_503, 0.786_281, 0.099_216],
    [-0.003_882, -0.048_116, 1.051_998],
];
const DEUTERANOPIA: [Light; 3] = [
    [0.367_322, 0.860_646, -0.227_968],
    [0.280_085, 0.672_501, 0.047_413],
    [-0.011_820, 0.042_940, 0.968_881],
];
const ALL_CONES: [Light; 3] = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];

fn seen(sight: &[Light; 3], colour: Light) -> Light {
    let dot = |row: &Light| row.iter().zip(colour).map(|(a, b)| a * b).sum::<f64>();
    [dot(&sight[0]), dot(&sight[1]), dot(&sight[2])].map(|part| part.clamp(0.0, 1.0))
}

/// CIE L*a*b* of a light, D65.
///
/// Source: CIE 15:2004, with the sRGB primaries of IEC 61966-2-1 (M).
pub(crate) fn lab([red, green, blue]: Light) -> [f64; 3] {
    let x = (0.4124 * red + 0.3576 * green + 0.1805 * blue) / 0.9505;
    let y = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    let z = (0.0193 * red + 0.1192 * green + 0.9505 * blue) / 1.089;
    let [x, y, z] = [x, y, z].map(|part: f64| {
        if part > 216.0 / 24_389.0 {
            part.cbrt()
        } else {
            part * 841.0 / 108.0 + 4.0 / 29.0
        }
    });
    [116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)]
}

/// The three frame colours stay apart for a colour-blind eye. Shape and dash say the same as colour does, so this is a
/// comfort: a difference ΔE*ab of 20 is plain at a glance (common practice, no source).
#[test]
fn frame_colours_stay_apart_without_one_kind_of_cone() {
    let roles = [Role::Relative, Role::PlanetMotion, Role::RoundSun];
    for theme in THEMES {
        for (name, sight) in [
            ("all cones", ALL_CONES),
            ("protanopia", PROTANOPIA),
            ("deuteranopia", DEUTERANOPIA),
        ] {
            let colours = roles.map(|role| lab(seen(&sight, light(color(theme, role)))));
            for (i, j) in [(0, 1), (0, 2), (1, 2)] {
                let squares = colours[i]
                    .iter()
                    .zip(colours[j])
                    .map(|(a, b)| (a - b) * (a - b));
                let difference = squares.sum::<f64>().sqrt();
                println!(
                    "{theme:?}, {name}: {:?} and {:?} differ by {difference:.1}",
                    roles[i], roles[j]
                );
                assert!(
                    difference >= 20.0,
                    "{theme:?}, {name}: {:?} and {:?} differ by {difference:.1}",
                    roles[i],
                    roles[j]
                );
            }
        }
    }
}
