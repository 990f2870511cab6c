//! Rasters and halos as SVG text.

use std::io::Cursor;

use glam::dvec2;
use roxmltree::Document;
use two_frames::figure::{Anchor, ColorMap, Label, Mark, Picture, Raster, Role, Theme, color, svg};

/// Bytes of a base64 text.
///
/// Source: RFC 4648, section 4 (M).
fn decoded(text: &str) -> Vec<u8> {
    let value = |letter: u8| match letter {
        b'A'..=b'Z' => letter - b'A',
        b'a'..=b'z' => letter - b'a' + 26,
        b'0'..=b'9' => letter - b'0' + 52,
        b'+' => 62,
        b'/' => 63,
        _ => panic!("{letter} is no base64"),
    };
    let (mut bits, mut count, mut bytes) = (0_u32, 0, Vec::new());
    for letter in text.trim_end_matches('=').bytes() {
        bits = bits << 6 | u32::from(value(letter));
        count += 6;
        if count >= 8 {
            count -= 8;
            bytes.push((bits >> count) as u8);
        }
    }
    bytes
}

fn picture(columns: usize, cells: &[u8], map: ColorMap) -> Picture {
    let mut picture = Picture::new(dvec2(100.0, 80.0), "A map of something");
    picture.marks.push(Mark::Raster(Raster {
        at: dvec2(10.0, 20.0),
        size: dvec2(60.0, 30.5),
        columns,
        cells: cells.into(),
        map,
    }));
    picture
}

/// The text's own picture file, decoded to colours with opacity.
fn pixels(text: &str) -> (u32, u32, Vec<u8>) {
    let document = Document::parse(text).expect("well-formed XML");
    let image = document
        .descendants()
        .find(|node| node.has_tag_name("image"))
        .expect("an image");
    let href = image.attribute("href").expect("a picture");
    let file = href
        .strip_prefix("data:image/png;base64,")
        .expect("a picture in the text itself");
    let mut decoder = png::Decoder::new(Cursor::new(decoded(file)));
    decoder.set_transformations(png::Transformations::EXPAND | png::Transformations::ALPHA);
    let mut reader = decoder.read_info().expect("a PNG file");
    let (width, height) = reader.info().size();
    let mut pixels = vec![0; 4 * (width * height) as usize];
    reader.next_frame(&mut pixels).expect("whole cells");
    (width, height, pixels)
}

/// Source: the crate png, an independent decoder.
#[test]
fn cells_reach_the_text_the_right_way_up() {
    let cells = [0, 127, 254, Raster::EMPTY, 10, 20];
    for map in [ColorMap::Vik, ColorMap::Batlow] {
        let (width, height, pixels) = pixels(&svg(&picture(3, &cells, map), "", Theme::Light));
        assert_eq!((width, height), (3, 2));
        for (pixel, cell) in pixels.chunks(4).zip(cells) {
            if cell == Raster::EMPTY {
                assert_eq!(pixel[3], 0);
            } else {
                let [red, green, blue] = map.palette()[usize::from(cell)];
                assert_eq!(pixel, [red, green, blue, 255], "{cell}");
            }
        }
    }
}

#[test]
fn an_image_is_where_its_raster_is() {
    let text = svg(&picture(2, &[1; 4], ColorMap::Vik), "", Theme::Dark);
    let document = Document::parse(&text).expect("well-formed XML");
    let image = document
        .descendants()
        .find(|node| node.has_tag_name("image"))
        .expect("an image");
    for (name, value) in [
        ("x", "10"),
        ("y", "20"),
        ("width", "60"),
        ("height", "30.5"),
        ("preserveAspectRatio", "none"),
    ] {
        assert_eq!(image.attribute(name), Some(value), "{name}");
    }
}

#[test]
fn a_raster_without_cells_is_no_image() {
    for (columns, cells) in [(0, &[][..]), (3, &[]), (0, &[1, 2]), (3, &[1, 2])] {
        let text = svg(&picture(columns, cells, ColorMap::Vik), "", Theme::Light);
        assert!(!text.contains("<image"), "{columns} columns, {cells:?}");
    }
    // An unfinished row is left out.
    let text = svg(&picture(2, &[1, 2, 3], ColorMap::Vik), "", Theme::Light);
    assert_eq!(pixels(&text).1, 1);
}

#[test]
fn letters_with_a_halo_have_the_ground_behind_them() {
    let label = |halo| Label {
        at: dvec2(1.0, 10.0),
        anchor: Anchor::Start,
        text: "no change".into(),
        role: Role::Ink,
        size: 10.0,
        bold: false,
        halo,
    };
    for theme in [Theme::Light, Theme::Dark] {
        let mut picture = Picture::new(dvec2(100.0, 20.0), "Words on a map");
        picture.marks.push(Mark::Label(label(false)));
        let plain = svg(&picture, "", theme);
        assert!(!plain.contains("halo") && !plain.contains("paint-order"));
        picture.marks.push(Mark::Label(label(true)));
        let text = svg(&picture, "", theme);
        let document = Document::parse(&text).expect("well-formed XML");
        let texts: Vec<_> = document
            .descendants()
            .filter(|node| node.has_tag_name("text"))
            .collect();
        assert_eq!(texts[0].attribute("class"), Some("ink"));
        assert_eq!(texts[0].attribute("stroke-width"), None);
        assert_eq!(texts[1].attribute("class"), Some("ink halo"));
        assert_eq!(texts[1].attribute("stroke-width"), Some("2.8"));
        let ground = color(theme, Role::Ground);
        let rule = format!(".halo{{stroke:{ground};stroke:var(--ground,{ground});");
        assert!(
            text.contains(&rule) && text.contains("paint-order:stroke}"),
            "{text}"
        );
    }
}
