//! Pictures as data: marks with roles, without colours and without the pixels of a real screen. Composed once here,
//! painted by two back ends: SVG text ([`svg`]) and, in the browser, a canvas.

mod arrow;
mod chart;
mod chart_axes;
mod chart_gaps;
mod chart_marks;
mod color_map;
mod contour;
mod diagram;
mod drawing;
mod label;
#[cfg_attr(not(test), expect(dead_code, reason = "the aim plane will have one"))]
mod legend;
mod picture;
mod png;
mod raster;
mod record;
mod room;
mod ruler;
mod scene;
mod stage;
mod stage_words;
mod svg;
mod theme;
mod ticks;
mod track;
mod view;

pub use arrow::{Arrow, Head, Shaft};
pub use chart::{chart_picture, outcome_chart};
pub use color_map::ColorMap;
pub use contour::{Contour, Grid, contours};
pub use diagram::velocity_diagram;
pub use label::text_width;
pub use picture::{Anchor, Dash, Disc, Grip, Handle, Label, Mark, Path, Picture, Role, Stroke};
pub use raster::Raster;
pub use record::speed_record;
pub use scene::{Scene, Views};
pub use stage::{FrameKind, stage};
pub use svg::svg;
pub use theme::{Theme, color, css_name};
pub use track::Track;
pub use view::View;
