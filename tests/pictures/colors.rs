//! The colour maps against their published tables, and what they are for: equal steps in lightness, a light middle.

use two_frames::figure::{ColorMap, Raster};

use crate::theme::{lab, light};

/// Every 15th of the 256 colours, first and last included: red, green, blue, 0..1 in sRGB.
///
/// Source: Crameri 2018, "Scientific colour maps", doi:10.5281/zenodo.1243862, read from the tables `vik.txt` and
/// `batlow.txt` of the Python package cmcrameri 1.10 (S).
#[rustfmt::skip]
const VIK: [[f64; 3]; 18] = [
    [0.001_328, 0.069_836, 0.379_529],
    [0.008_947, 0.163_152, 0.438_691],
    [0.010_254, 0.253_516, 0.497_020],
    [0.031_980, 0.349_543, 0.558_906],
    [0.146_607, 0.458_643, 0.631_289],
    [0.317_174, 0.578_997, 0.712_950],
    [0.503_691, 0.697_910, 0.793_980],
    [0.690_457, 0.811_742, 0.871_059],
    [0.868_874, 0.900_206, 0.914_812],
    [0.933_752, 0.858_522, 0.815_421],
    [0.892_690, 0.743_148, 0.657_086],
    [0.844_258, 0.629_296, 0.505_146],
    [0.798_475, 0.522_380, 0.362_835],
    [0.753_316, 0.419_216, 0.228_190],
    [0.684_653, 0.299_264, 0.095_633],
    [0.562_268, 0.168_171, 0.022_523],
    [0.449_521, 0.078_741, 0.025_203],
    [0.350_423, 0.000_061, 0.030_499],
];

#[rustfmt::skip]
const BATLOW: [[f64; 3]; 18] = [
    [0.005_193, 0.098_238, 0.349_842],
    [0.047_665, 0.185_844, 0.364_915],
    [0.064_936, 0.255_264, 0.376_362],
    [0.083_082, 0.311_461, 0.383_936],
    [0.118_992, 0.362_849, 0.382_713],
    [0.182_732, 0.405_551, 0.361_714],
    [0.266_241, 0.438_555, 0.320_085],
    [0.358_277, 0.467_331, 0.269_037],
    [0.455_774, 0.495_585, 0.217_774],
    [0.562_506, 0.524_293, 0.176_964],
    [0.678_244, 0.550_712, 0.177_803],
    [0.790_568, 0.571_421, 0.236_160],
    [0.889_900, 0.592_087, 0.330_454],
    [0.961_696, 0.624_282, 0.455_702],
    [0.990_268, 0.667_280, 0.593_174],
    [0.992_619, 0.710_530, 0.720_639],
    [0.988_754, 0.753_949, 0.846_627],
    [0.981_354, 0.800_406, 0.981_267],
];

/// Lightness L*, 0 to 100.
fn lightness([red, green, blue]: [u8; 3]) -> f64 {
    lab(light(&format!("#{red:02x}{green:02x}{blue:02x}")))[0]
}

#[test]
fn colours_are_the_published_ones() {
    let mut worst = 0.0_f64;
    for (map, table) in [(ColorMap::Vik, VIK), (ColorMap::Batlow, BATLOW)] {
        for (i, published) in table.iter().enumerate() {
            let color = map.color(15.0 * i as f64 / 255.0);
            for (byte, part) in color.iter().zip(published) {
                worst = worst.max((f64::from(*byte) - 255.0 * part).abs());
            }
            // A cell's colour is that of its place: cells count to 254 where the table counts to 255.
            let palette = map.palette();
            let cell = Raster::cell(15.0 * i as f64 / 255.0);
            for (byte, part) in palette[usize::from(cell)].iter().zip(published) {
                let off = (f64::from(*byte) - 255.0 * part).abs();
                assert!(off < 5.0, "{map:?}, entry {}: off by {off}", 15 * i);
            }
        }
    }
    println!("off by {worst:.2} of 255 at most");
    assert!(worst <= 2.0, "off by {worst} of 255");
}

#[test]
fn batlow_gets_lighter_all_the_way() {
    let palette = ColorMap::Batlow.palette();
    for (i, pair) in palette.windows(2).enumerate() {
        let step = lightness(pair[1]) - lightness(pair[0]);
        // Rounding of each channel to a byte: half a step of 255 on either side, about 0.2 of L*.
        assert!(step > -0.2, "from cell {i} to the next: {step}");
    }
    // Over a tenth of the map the rounding no longer counts.
    for (i, pair) in palette.iter().zip(&palette[25..]).enumerate() {
        let step = lightness(*pair.1) - lightness(*pair.0);
        assert!((3.0..13.0).contains(&step), "from cell {i}: {step}");
    }
}

#[test]
fn vik_is_lightest_in_the_middle_and_alike_on_both_sides() {
    let cells = ColorMap::Vik.palette().map(lightness);
    let lightest = (0..cells.len()).max_by(|a, b| cells[*a].total_cmp(&cells[*b]));
    let lightest = lightest.expect("there are cells");
    assert!((125..=129).contains(&lightest), "cell {lightest}");
    assert!(cells[127] > 90.0 && cells[0] < 20.0 && cells[254] < 20.0);
    for i in 0..=127 {
        let apart = (cells[i] - cells[254 - i]).abs();
        // In the published table itself a pair differs by 8.7 at most.
        assert!(apart < 9.0, "{i} from either end: {apart}");
    }
    let [red, _, blue] = ColorMap::Vik.color(0.2);
    assert!(blue > red, "blue below");
    let [red, _, blue] = ColorMap::Vik.color(0.8);
    assert!(red > blue, "brown above");
}

#[test]
fn beyond_the_ends_is_the_end() {
    for map in [ColorMap::Vik, ColorMap::Batlow] {
        assert_eq!(map.color(-1.0), map.color(0.0));
        assert_eq!(map.color(f64::INFINITY), map.color(1.0));
        assert_eq!(map.palette()[0], map.color(0.0));
        assert_eq!(map.palette()[127], map.color(0.5));
        assert_eq!(map.palette()[254], map.color(1.0));
    }
}
