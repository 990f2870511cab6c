//! A picture painted on a canvas. The same marks as in SVG; only the pen is another.

use glam::DVec2;
use js_sys::Array;
use web_sys::{CanvasRenderingContext2d, Element, HtmlCanvasElement};

use super::dom::{certain, find, window};
use super::easel::{Easel, context};
use super::palette::Palette;
use crate::decimal::with_decimals;
use crate::figure::{Anchor, Arrow, Dash, Disc, Handle, Head, Label, Mark, Picture, Role, Stroke};

/// One canvas of the page.
pub(super) struct Canvas {
    pub(super) element: HtmlCanvasElement,
    pen: CanvasRenderingContext2d,
    easel: Easel,
}

impl Canvas {
    /// The canvas of the figure that carries `data-picture="name"`.
    pub(super) fn find(root: &Element, name: &str) -> Self {
        let element: HtmlCanvasElement = find(root, &["[data-picture=", name, "] canvas"].concat());
        let pen = context(&element);
        Self {
            element,
            pen,
            easel: Easel::default(),
        }
    }

    /// The size on the page, CSS pixels; at least 1 by 1, so that a hidden canvas divides by nothing.
    pub(super) fn size(&self) -> DVec2 {
        let size = DVec2::new(
            f64::from(self.element.client_width()),
            f64::from(self.element.client_height()),
        );
        size.max(DVec2::ONE)
    }

    /// Paints a picture over whatever was there.
    pub(super) fn paint(&mut self, picture: &Picture, palette: &Palette) {
        self.fit_pixels(picture.size);
        self.pen.set_fill_style_str(palette.get(Role::Ground));
        self.pen.fill_rect(0.0, 0.0, picture.size.x, picture.size.y);
        self.pen.set_line_join("round");
        self.easel.start();
        let mut brush = Brush {
            pen: &self.pen,
            palette,
            easel: &mut self.easel,
        };
        for mark in &picture.marks {
            brush.mark(mark);
        }
    }

    /// As many pixels as the screen has there, and units of one CSS pixel.
    fn fit_pixels(&self, size: DVec2) {
        let ratio = window().device_pixel_ratio();
        let (width, height) = (
            (size.x * ratio).round() as u32,
            (size.y * ratio).round() as u32,
        );
        if self.element.width() != width || self.element.height() != height {
            self.element.set_width(width);
            self.element.set_height(height);
        }
        certain(
            self.pen.set_transform(ratio, 0.0, 0.0, ratio, 0.0, 0.0),
            "a canvas takes a scale",
        );
    }
}

struct Brush<'a> {
    pen: &'a CanvasRenderingContext2d,
    palette: &'a Palette,
    easel: &'a mut Easel,
}

impl Brush<'_> {
    fn mark(&mut self, mark: &Mark) {
        match mark {
            Mark::Path(path) => self.line(&path.points, &path.stroke),
            Mark::Disc(disc) => self.disc(disc),
            Mark::Arrow(arrow) => self.arrow(arrow),
            Mark::Label(label) => self.label(label),
            Mark::Handle(handle) => self.handle(handle),
            Mark::Raster(raster) => self.easel.paint(self.pen, raster),
        }
    }

    fn line(&self, points: &[DVec2], stroke: &Stroke) {
        self.trace(points);
        self.stroke(stroke);
    }

    fn trace(&self, points: &[DVec2]) {
        self.pen.begin_path();
        for (i, point) in points.iter().enumerate() {
            if i == 0 {
                self.pen.move_to(point.x, point.y);
            } else {
                self.pen.line_to(point.x, point.y);
            }
        }
    }

    fn stroke(&self, stroke: &Stroke) {
        self.pen.set_stroke_style_str(self.palette.get(stroke.role));
        self.pen.set_line_width(stroke.width);
        let broken = stroke.dash != Dash::Solid;
        if broken {
            self.set_dash(stroke);
        }
        self.pen.stroke();
        if broken {
            self.set_dash(&stroke.with(Dash::Solid));
        }
    }

    fn set_dash(&self, stroke: &Stroke) {
        let lengths = Array::new();
        if let Some([dash, gap]) = stroke.dash_lengths() {
            lengths.push(&dash.into());
            lengths.push(&gap.into());
        }
        certain(
            self.pen.set_line_dash(&lengths),
            "a list of numbers is a dash",
        );
    }

    fn fill(&self, role: Role) {
        self.pen.set_fill_style_str(self.palette.get(role));
        self.pen.fill();
    }

    fn disc(&self, disc: &Disc) {
        self.pen.begin_path();
        let whole = std::f64::consts::TAU;
        certain(
            self.pen
                .arc(disc.centre.x, disc.centre.y, disc.radius, 0.0, whole),
            "a radius is not negative",
        );
        if let Some(role) = disc.fill {
            self.fill(role);
        }
        if let Some(edge) = &disc.edge {
            self.stroke(edge);
        }
    }

    fn arrow(&self, arrow: &Arrow) {
        for ends in arrow.shaft_lines() {
            self.line(&ends, &arrow.stroke);
        }
        let Some([left, right]) = arrow.head_corners() else {
            return;
        };
        self.trace(&[left, arrow.to, right]);
        match arrow.head {
            Head::Filled => self.fill(arrow.stroke.role),
            Head::Open => self.stroke(&arrow.stroke.with(Dash::Solid)),
        }
    }

    fn label(&self, label: &Label) {
        let weight = if label.bold { "bold " } else { "" };
        let size = with_decimals(label.size, 1);
        self.pen
            .set_font(&[weight, &size, "px system-ui, sans-serif"].concat());
        self.pen.set_text_align(match label.anchor {
            Anchor::Start => "left",
            Anchor::Middle => "center",
            Anchor::End => "right",
        });
        if label.halo {
            self.pen
                .set_stroke_style_str(self.palette.get(Role::Ground));
            self.pen.set_line_width(label.halo_width());
            certain(
                self.pen.stroke_text(&label.text, label.at.x, label.at.y),
                "a canvas takes text",
            );
        }
        self.pen.set_fill_style_str(self.palette.get(label.role));
        certain(
            self.pen.fill_text(&label.text, label.at.x, label.at.y),
            "a canvas takes text",
        );
    }

    fn handle(&self, handle: &Handle) {
        let edge = Some(Stroke::solid(handle.role, 1.5));
        self.disc(&Disc {
            centre: handle.at,
            radius: handle.radius,
            fill: Some(Role::Ground),
            edge,
        });
    }
}
