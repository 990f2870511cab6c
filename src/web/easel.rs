//! Rasters on a canvas: each is painted once, cell by pixel, on a small canvas of its own, which is kept as long as the
//! cells stay the same and stretched into the picture every time.

use wasm_bindgen::{Clamped, JsCast};
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement, ImageData};

use super::dom::{certain, document};
use crate::figure::Raster;

/// The small canvases of one picture, in the order of its rasters.
#[derive(Default)]
pub(super) struct Easel {
    boards: Vec<Board>,
    /// How many of them the picture has used so far.
    used: usize,
    /// Red, green, blue and opacity of each cell; kept, so that a map that follows a slider asks for no memory.
    pixels: Vec<u8>,
}

/// A small canvas, and what is on it.
struct Board {
    element: HtmlCanvasElement,
    pen: CanvasRenderingContext2d,
    raster: Option<Raster>,
}

impl Easel {
    /// Starts a picture.
    pub(super) fn start(&mut self) {
        self.used = 0;
    }

    /// Paints the picture's next raster.
    pub(super) fn paint(&mut self, pen: &CanvasRenderingContext2d, raster: &Raster) {
        if raster.rows() == 0 {
            return;
        }
        if self.boards.len() == self.used {
            self.boards.push(Board::new());
        }
        let board = &mut self.boards[self.used];
        self.used += 1;
        board.show(raster, &mut self.pixels);
        let (at, size) = (raster.at, raster.size);
        certain(
            pen.draw_image_with_html_canvas_element_and_dw_and_dh(
                &board.element,
                at.x,
                at.y,
                size.x,
                size.y,
            ),
            "a canvas takes another one",
        );
    }
}

impl Board {
    fn new() -> Self {
        let element: HtmlCanvasElement = certain(
            document().create_element("canvas"),
            "this browser has canvases",
        )
        .unchecked_into();
        let pen = context(&element);
        Self {
            element,
            pen,
            raster: None,
        }
    }

    /// Puts a raster's cells on this canvas, unless they are there already.
    fn show(&mut self, raster: &Raster, pixels: &mut Vec<u8>) {
        if self
            .raster
            .as_ref()
            .is_some_and(|old| old.looks_like(raster))
        {
            return;
        }
        let (columns, rows) = (raster.columns as u32, raster.rows() as u32);
        if self.element.width() != columns || self.element.height() != rows {
            self.element.set_width(columns);
            self.element.set_height(rows);
        }
        fill(pixels, raster);
        let image = certain(
            ImageData::new_with_u8_clamped_array_and_sh(Clamped(pixels), columns, rows),
            "four bytes a cell are an image",
        );
        certain(
            self.pen.put_image_data(&image, 0.0, 0.0),
            "a canvas takes an image",
        );
        self.raster = Some(raster.clone());
    }
}

/// The pixels of a raster's whole rows; the bytes of an empty cell are all 0.
fn fill(pixels: &mut Vec<u8>, raster: &Raster) {
    let mut colors = [[0; 4]; 256];
    for (color, [red, green, blue]) in colors.iter_mut().zip(raster.map.palette()) {
        *color = [red, green, blue, 255];
    }
    pixels.resize(4 * raster.columns * raster.rows(), 0);
    let (pixels, _) = pixels.as_chunks_mut();
    for (pixel, cell) in pixels.iter_mut().zip(&*raster.cells) {
        *pixel = colors[usize::from(*cell)];
    }
}

/// A canvas's pen.
pub(super) fn context(element: &HtmlCanvasElement) -> CanvasRenderingContext2d {
    element
        .get_context("2d")
        .ok()
        .flatten()
        .expect("this browser draws on a canvas")
        .unchecked_into()
}
