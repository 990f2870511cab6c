//! Colours for values: two published maps whose steps look equally large to the eye, also to a colour-blind one.
//!
//! Source: Crameri 2018, "Scientific colour maps", doi:10.5281/zenodo.1243862; tables as in the Python package
//! cmcrameri 1.10. MIT licence, Copyright (c) 2020 Fabio Crameri: see LICENSE and www/licenses.txt.

use crate::decimal::within;

/// A way to turn a value into a colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ColorMap {
    /// Blue below, brown above, lightest in the middle: for values about zero.
    Vik,
    /// Dark blue to light pink: for values from one side.
    Batlow,
}

impl ColorMap {
    /// Colours that a raster tells apart; an odd number, so that one of them is the middle.
    pub const COLORS: usize = 255;

    /// The colour, red, green and blue in sRGB, of a part of the way from the lowest value (0) to the highest (1); what
    /// lies outside has the colour of the nearer end. Within 2/255 of the published table of 256 colours.
    pub fn color(self, part: f64) -> [u8; 3] {
        let table = match self {
            Self::Vik => &VIK,
            Self::Batlow => &BATLOW,
        };
        let place = within(part, 0.0, 1.0) * (SAMPLES - 1) as f64;
        let below = (place as usize).min(SAMPLES - 2);
        let rest = place - below as f64;
        let mix = |channel: usize| {
            let (low, high) = (table[below][channel], table[below + 1][channel]);
            (f64::from(low) * (1.0 - rest) + f64::from(high) * rest + 0.5) as u8
        };
        [mix(0), mix(1), mix(2)]
    }

    /// The colours of a raster's cells, lowest value first.
    pub fn palette(self) -> [[u8; 3]; Self::COLORS] {
        std::array::from_fn(|cell| self.color(cell as f64 / (Self::COLORS - 1) as f64))
    }
}

/// Evenly spaced samples of each table: the fewest, one of them the middle, with vik's error below 2/255.
const SAMPLES: usize = 33;

#[rustfmt::skip]
const VIK: [[u8; 3]; SAMPLES] = [
    [0, 18, 97], [2, 31, 105], [2, 43, 113], [2, 55, 121], [3, 68, 129], [4, 80, 137],
    [12, 94, 146], [27, 109, 155], [47, 124, 166], [71, 141, 177], [96, 157, 188], [121, 173, 199],
    [146, 189, 210], [172, 204, 220], [197, 219, 229], [220, 229, 233], [236, 229, 225], [238, 218, 207],
    [233, 203, 185], [226, 187, 164], [220, 171, 143], [213, 156, 123], [207, 142, 104], [201, 127, 85],
    [195, 114, 67], [188, 99, 49], [179, 83, 31], [165, 64, 14], [147, 46, 6], [131, 33, 6],
    [116, 21, 6], [102, 10, 7], [89, 0, 8],
];

#[rustfmt::skip]
const BATLOW: [[u8; 3]; SAMPLES] = [
    [1, 25, 89], [8, 37, 91], [13, 49, 93], [15, 59, 95], [17, 67, 96], [19, 75, 97],
    [22, 82, 98], [27, 89, 98], [34, 96, 97], [42, 101, 94], [53, 106, 89], [64, 111, 84],
    [77, 115, 77], [89, 118, 70], [102, 122, 63], [115, 126, 56], [129, 130, 50], [144, 134, 45],
    [160, 138, 43], [176, 141, 46], [191, 144, 53], [206, 146, 63], [219, 149, 76], [232, 152, 91],
    [242, 157, 108], [248, 162, 126], [252, 168, 145], [253, 174, 163], [253, 180, 180], [253, 186, 197],
    [252, 192, 214], [251, 198, 232], [250, 204, 250],
];
