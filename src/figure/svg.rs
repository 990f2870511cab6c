//! A picture as SVG text: for files, tests and still pages. The text depends on the picture alone, byte for byte.

use std::fmt::Write as _;

use glam::DVec2;

use crate::decimal::with_decimals;

use super::arrow::{Arrow, Head};
use super::picture::{Anchor, Dash, Disc, Handle, Label, Mark, Path, Picture, Role, Stroke};
use super::png::{base64, indexed_png};
use super::raster::Raster;
use super::theme::{Theme, color, css_name};

/// The picture as a complete SVG document. `description` is what a screen reader says.
///
/// Colours are CSS custom properties with the theme's colours as fallbacks, so that a page may restyle an inlined
/// picture; programs that know no custom properties take the plain colour.
pub fn svg(picture: &Picture, description: &str, theme: Theme) -> String {
    let mut out = String::with_capacity(16_384);
    let (width, height) = (number(picture.size.x), number(picture.size.y));
    let _ = write!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" width=\"{width}\" height=\"{height}\" \
         class=\"{}\" role=\"img\" font-family=\"system-ui, sans-serif\">\n<title>{}</title>\n<desc>{}</desc>\n",
        scope(theme),
        escaped(&picture.title),
        escaped(description)
    );
    push_style(&mut out, theme, picture.labels().any(|label| label.halo));
    let _ = writeln!(
        out,
        "<rect class=\"ground\" width=\"{width}\" height=\"{height}\"/>"
    );
    for mark in &picture.marks {
        push_mark(&mut out, mark);
    }
    out.push_str("</svg>\n");
    out
}

/// One class for strokes and one for fills of each role, and one for halos where there are any.
fn push_style(out: &mut String, theme: Theme, halos: bool) {
    out.push_str("<style>\n");
    let scope = scope(theme);
    for role in Role::ALL {
        let (name, plain, property) = (class(role), color(theme, role), css_name(role));
        let _ = writeln!(
            out,
            ".{scope} .{name}{{fill:{plain};fill:var({property},{plain})}}\n\
             .{scope} .{name}-line{{fill:none;stroke:{plain};stroke:var({property},{plain});stroke-linejoin:round}}"
        );
    }
    if halos {
        let (plain, property) = (color(theme, Role::Ground), css_name(Role::Ground));
        let _ = writeln!(
            out,
            ".{scope} .halo{{stroke:{plain};stroke:var({property},{plain});stroke-linejoin:round;paint-order:stroke}}"
        );
    }
    out.push_str("</style>\n");
}

/// The class of the whole picture: styles stay inside it, so that several pictures and a page of any kind go together.
fn scope(theme: Theme) -> &'static str {
    match theme {
        Theme::Light => "two-frames-light",
        Theme::Dark => "two-frames-dark",
    }
}

fn class(role: Role) -> &'static str {
    css_name(role).trim_start_matches('-')
}

fn push_mark(out: &mut String, mark: &Mark) {
    match mark {
        Mark::Path(path) => push_path(out, path),
        Mark::Disc(disc) => push_disc(out, disc),
        Mark::Arrow(arrow) => push_arrow(out, arrow),
        Mark::Label(label) => push_label(out, label),
        Mark::Handle(handle) => push_handle(out, handle),
        Mark::Raster(raster) => push_raster(out, raster),
    }
}

fn push_path(out: &mut String, path: &Path) {
    out.push_str("<path d=\"");
    push_points(out, &path.points);
    let _ = writeln!(out, "\" {}/>", line_looks(&path.stroke));
}

fn push_points(out: &mut String, points: &[DVec2]) {
    for (i, point) in points.iter().enumerate() {
        let _ = write!(
            out,
            "{}{} {}",
            if i == 0 { "M" } else { "L" },
            number(point.x),
            number(point.y)
        );
    }
}

fn push_disc(out: &mut String, disc: &Disc) {
    let place = format!(
        "cx=\"{}\" cy=\"{}\" r=\"{}\"",
        number(disc.centre.x),
        number(disc.centre.y),
        number(disc.radius)
    );
    if let Some(fill) = disc.fill {
        let _ = writeln!(out, "<circle {place} class=\"{}\"/>", class(fill));
    }
    if let Some(edge) = &disc.edge {
        let _ = writeln!(out, "<circle {place} {}/>", line_looks(edge));
    }
}

fn push_arrow(out: &mut String, arrow: &Arrow) {
    for [from, to] in arrow.shaft_lines() {
        push_path(
            out,
            &Path {
                points: vec![from, to],
                stroke: arrow.stroke,
            },
        );
    }
    let Some([left, right]) = arrow.head_corners() else {
        return;
    };
    match arrow.head {
        Head::Filled => {
            out.push_str("<path d=\"");
            push_points(out, &[left, arrow.to, right]);
            let _ = writeln!(out, "Z\" class=\"{}\"/>", class(arrow.stroke.role));
        }
        Head::Open => {
            let stroke = arrow.stroke.with(Dash::Solid);
            push_path(
                out,
                &Path {
                    points: vec![left, arrow.to, right],
                    stroke,
                },
            );
        }
    }
}

fn push_label(out: &mut String, label: &Label) {
    let anchor = match label.anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    };
    let weight = if label.bold {
        " font-weight=\"bold\""
    } else {
        ""
    };
    let (halo, width) = if label.halo {
        (
            " halo",
            format!(" stroke-width=\"{}\"", number(label.halo_width())),
        )
    } else {
        ("", String::new())
    };
    let _ = writeln!(
        out,
        "<text x=\"{}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{anchor}\"{weight}{width} class=\"{}{halo}\">{}</text>",
        number(label.at.x),
        number(label.at.y),
        number(label.size),
        class(label.role),
        escaped(&label.text)
    );
}

fn push_handle(out: &mut String, handle: &Handle) {
    let edge = Stroke::solid(handle.role, 1.5);
    push_disc(
        out,
        &Disc {
            centre: handle.at,
            radius: handle.radius,
            fill: Some(Role::Ground),
            edge: Some(edge),
        },
    );
}

/// The cells as a picture file in the text itself.
fn push_raster(out: &mut String, raster: &Raster) {
    let rows = raster.rows();
    if rows == 0 {
        return;
    }
    let cells = &raster.cells[..rows * raster.columns];
    let file = indexed_png(raster.columns, cells, &raster.map.palette(), Raster::EMPTY);
    let _ = writeln!(
        out,
        "<image x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" preserveAspectRatio=\"none\" \
         style=\"image-rendering:auto\" href=\"data:image/png;base64,{}\"/>",
        number(raster.at.x),
        number(raster.at.y),
        number(raster.size.x),
        number(raster.size.y),
        base64(&file)
    );
}

fn line_looks(stroke: &Stroke) -> String {
    let dash = match stroke.dash_lengths() {
        Some([on, off]) => format!(" stroke-dasharray=\"{} {}\"", number(on), number(off)),
        None => String::new(),
    };
    format!(
        "class=\"{}-line\" stroke-width=\"{}\"{dash}",
        class(stroke.role),
        number(stroke.width)
    )
}

/// Two decimals are finer than any screen; trailing zeros and the sign of a zero are left out.
fn number(value: f64) -> String {
    let text = with_decimals(value, 2);
    text.trim_end_matches('0').trim_end_matches('.').into()
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}
