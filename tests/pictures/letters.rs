//! A label's box holds its words as a real font writes them.

use two_frames::figure::text_width;
use two_frames::scenario::PRESETS;

use crate::common::{Moment, parts, sandbox, usual};

/// Advance widths, in 2048ths of the letter height, of `DejaVu` Sans 2.37, regular and bold: the widest of the sans-serif
/// fonts that browsers take for `system-ui` or `sans-serif` (common practice, no source).
///
/// Source: the fonts' own `hmtx` tables, read with fonttools (R).
const WIDTHS: &str = "\
    ! 821 934|% 1946 2052|( 799 936|) 799 936|+ 1716 1716|, 651 778|- 739 850|. 651 778|/ 690 748|0 1303 1425|\
    1 1303 1425|2 1303 1425|3 1303 1425|4 1303 1425|5 1303 1425|6 1303 1425|7 1303 1425|8 1303 1425|9 1303 1425|\
    : 690 819|= 1716 1716|A 1401 1585|B 1405 1561|C 1430 1503|D 1577 1700|E 1294 1399|F 1178 1399|G 1587 1681|\
    H 1540 1714|I 604 762|J 604 762|K 1343 1587|L 1141 1305|M 1767 2038|N 1532 1714|O 1612 1741|P 1235 1501|\
    Q 1612 1741|R 1423 1577|S 1300 1475|T 1251 1397|U 1499 1663|V 1401 1585|W 2025 2259|X 1403 1579|Y 1251 1483|\
    Z 1403 1485|a 1255 1382|b 1300 1466|c 1126 1214|d 1300 1466|e 1260 1389|f 721 891|g 1300 1466|h 1298 1458|\
    i 569 702|j 569 702|k 1186 1362|l 569 702|m 1995 2134|n 1298 1458|o 1253 1407|p 1300 1466|q 1300 1466|r 842 1010|\
    s 1067 1219|t 803 979|u 1298 1458|v 1212 1335|w 1675 1892|x 1212 1321|y 1212 1335|z 1075 1192|° 1024 1024|\
    − 1716 1716|× 1716 1716|∞ 1706 1706|\u{202f} 409 409";

/// The greatest rise of these letters over the baseline and fall below it, in 2048ths, accents aside.
///
/// Source: the same fonts' `glyf` tables: b, d, f, h and the bold g.
const RISE: f64 = 1556.0;
const FALL: f64 = 442.0;

/// The width of a text as the font sets it, for letters of height 1.
fn real_width(text: &str, bold: bool) -> f64 {
    let of_letter = |letter: char| {
        if letter == ' ' {
            return if bold { 713.0 } else { 651.0 };
        }
        let row = WIDTHS.split('|').find(|row| row.starts_with(letter));
        let row = row.unwrap_or_else(|| panic!("no width of “{letter}” in “{text}”"));
        let width = row
            .split(' ')
            .nth(if bold { 2 } else { 1 })
            .expect("two widths a letter");
        width.parse::<f64>().expect("a whole number")
    };
    text.chars().map(of_letter).sum::<f64>() / 2048.0
}

#[test]
fn no_label_is_wider_than_its_box() {
    let mut widest = (0.0_f64, String::new());
    for preset in &PRESETS {
        for moment in Moment::ALL {
            for part in parts(&mut sandbox(preset.text, moment), &usual()) {
                for label in part.picture.labels() {
                    let share = real_width(&label.text, label.bold)
                        / text_width(&label.text, 1.0, label.bold);
                    if share > widest.0 {
                        widest = (share, label.text.clone());
                    }
                    let [low, high] = label.bounds();
                    assert!(
                        label.at.y - low.y >= RISE / 2048.0 * label.size,
                        "“{}”",
                        label.text
                    );
                    assert!(
                        high.y - label.at.y >= FALL / 2048.0 * label.size,
                        "“{}”",
                        label.text
                    );
                }
            }
        }
    }
    println!("the fullest box: {:.3} by “{}”", widest.0, widest.1);
    // Two hundredths: a label of ten letters then reaches a tenth of a letter over each edge, which nobody sees.
    assert!(
        widest.0 < 1.02,
        "“{}” fills {:.3} of its box",
        widest.1,
        widest.0
    );
}
