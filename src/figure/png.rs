//! The smallest PNG encoder that does: indexed colours, nothing compressed. It is far smaller than a library and works
//! in the browser; a map of 97 by 97 cells takes 10 kB.
//!
//! Source: PNG specification, third edition (W3C 2025); zlib, RFC 1950; deflate, RFC 1951; base64, RFC 4648 (all M).

/// What starts every PNG file.
const SIGNATURE: [u8; 8] = *b"\x89PNG\r\n\x1a\n";

/// A picture of indexed colours as a PNG file: `cells` row by row from the top, each the place of its colour in
/// `palette` or, without any colour, `clear`. All of width, height and palette have to be above 0, as PNG asks for.
pub(super) fn indexed_png(columns: usize, cells: &[u8], palette: &[[u8; 3]], clear: u8) -> Vec<u8> {
    let rows = cells.len() / columns;
    let mut file = SIGNATURE.to_vec();
    let mut header = [0; 13];
    header[..4].copy_from_slice(&(columns as u32).to_be_bytes());
    header[4..8].copy_from_slice(&(rows as u32).to_be_bytes());
    // 8 bits a cell, indexed colours; compression, filter and interlace have one common value each.
    header[8..].copy_from_slice(&[8, 3, 0, 0, 0]);
    push_chunk(&mut file, *b"IHDR", &header);
    let mut colors = palette.as_flattened().to_vec();
    let mut opaque = Vec::new();
    if cells.contains(&clear) {
        let places = usize::from(clear) + 1;
        colors.resize(colors.len().max(3 * places), 0);
        opaque = vec![255; places];
        opaque[places - 1] = 0;
    }
    push_chunk(&mut file, *b"PLTE", &colors);
    if !opaque.is_empty() {
        push_chunk(&mut file, *b"tRNS", &opaque);
    }
    push_chunk(&mut file, *b"IDAT", &stored(&scanlines(columns, cells)));
    push_chunk(&mut file, *b"IEND", &[]);
    file
}

/// The rows, each after the number of its filter: 0, none.
fn scanlines(columns: usize, cells: &[u8]) -> Vec<u8> {
    let mut lines = Vec::with_capacity(cells.len() + cells.len() / columns);
    for row in cells.chunks_exact(columns) {
        lines.push(0);
        lines.extend_from_slice(row);
    }
    lines
}

fn push_chunk(file: &mut Vec<u8>, kind: [u8; 4], content: &[u8]) {
    file.extend_from_slice(&(content.len() as u32).to_be_bytes());
    let start = file.len();
    file.extend_from_slice(&kind);
    file.extend_from_slice(content);
    let check = crc32(&file[start..]);
    file.extend_from_slice(&check.to_be_bytes());
}

/// Bytes as a zlib stream of stored blocks.
fn stored(bytes: &[u8]) -> Vec<u8> {
    const LONGEST: usize = 65_535;
    let mut stream = vec![0x78, 0x01];
    let mut left = bytes;
    loop {
        let (block, rest) = left.split_at(left.len().min(LONGEST));
        let length = block.len() as u16;
        stream.push(u8::from(rest.is_empty()));
        stream.extend_from_slice(&length.to_le_bytes());
        stream.extend_from_slice(&(!length).to_le_bytes());
        stream.extend_from_slice(block);
        left = rest;
        if rest.is_empty() {
            break;
        }
    }
    stream.extend_from_slice(&adler32(bytes).to_be_bytes());
    stream
}

/// The remainders of four bits, for the reflected polynomial of PNG and zlib.
const CRC_OF_FOUR_BITS: [u32; 16] = {
    let mut table = [0; 16];
    let mut bits = 0;
    while bits < 16 {
        let mut remainder = bits as u32;
        let mut i = 0;
        while i < 4 {
            remainder = (remainder >> 1) ^ (0xedb8_8320 * (remainder & 1));
            i += 1;
        }
        table[bits] = remainder;
        bits += 1;
    }
    table
};

fn crc32(bytes: &[u8]) -> u32 {
    let mut crc = !0;
    for byte in bytes {
        crc ^= u32::from(*byte);
        for _ in 0..2 {
            crc = (crc >> 4) ^ CRC_OF_FOUR_BITS[(crc & 15) as usize];
        }
    }
    !crc
}

fn adler32(bytes: &[u8]) -> u32 {
    const MODULUS: u32 = 65_521;
    let (mut sum, mut sums) = (1, 0);
    for byte in bytes {
        sum = (sum + u32::from(*byte)) % MODULUS;
        sums = (sums + sum) % MODULUS;
    }
    sums << 16 | sum
}

/// Bytes as text, with padding.
pub(super) fn base64(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut text = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for group in bytes.chunks(3) {
        let mut three = [0; 4];
        three[1..=group.len()].copy_from_slice(group);
        let bits = u32::from_be_bytes(three);
        for i in 0..4 {
            // One byte fills two letters, and each more another one.
            text.push(if i <= group.len() {
                LETTERS[(bits >> (18 - 6 * i) & 63) as usize].into()
            } else {
                '='
            });
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every cell comes back from a general-purpose decoder, at sizes of one block and of several.
    ///
    /// Source: the crate png, an independent decoder.
    #[test]
    fn a_decoder_reads_every_cell() {
        let mut random = fastrand::Rng::with_seed(1);
        let palette: Vec<[u8; 3]> = (0..=254).map(|i| [i, 255 - i, i ^ 0x55]).collect();
        for (columns, rows) in [
            (1, 1),
            (3, 7),
            (255, 1),
            (1, 255),
            (97, 97),
            (256, 256),
            (300, 500),
        ] {
            for most in [254, 255] {
                let mut cells: Vec<u8> = (0..columns * rows).map(|_| random.u8(..=most)).collect();
                cells[0] = most;
                let file = indexed_png(columns, &cells, &palette, 255);
                let mut decoder = png::Decoder::new(std::io::Cursor::new(file));
                decoder.set_transformations(png::Transformations::IDENTITY);
                let mut reader = decoder.read_info().expect("a PNG file");
                assert_eq!(reader.info().size(), (columns as u32, rows as u32));
                let info = reader.info();
                assert_eq!(
                    info.palette.as_ref().expect("colours")[..765],
                    *palette.as_flattened()
                );
                let opaque = info.trns.as_ref().map(|trns| trns.to_vec());
                assert_eq!(opaque.is_some(), most == 255, "{columns} x {rows}");
                for (place, opaque) in opaque.iter().flatten().enumerate() {
                    assert_eq!(*opaque, if place == 255 { 0 } else { 255 });
                }
                let mut decoded = vec![0; columns * rows];
                reader.next_frame(&mut decoded).expect("whole cells");
                assert!(decoded == cells, "{columns} x {rows}");
                reader.finish().expect("nothing amiss up to the end");
            }
        }
    }

    /// Source: RFC 4648, section 10 (M).
    #[test]
    fn base64_is_that_of_the_standard() {
        for (bytes, text) in [
            ("", ""),
            ("f", "Zg=="),
            ("fo", "Zm8="),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg=="),
            ("fooba", "Zm9vYmE="),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(base64(bytes.as_bytes()), text);
        }
        assert_eq!(base64(&[0xfb, 0xef, 0xff]), "++//");
    }

    /// Source: CRC-32 check value cbf43926 of the catalogue of parametrised CRC algorithms (M); Adler-32 of "Wikipedia",
    /// 11e60398, as worked out in the encyclopedia of that name (M).
    #[test]
    fn checks_are_those_of_the_standards() {
        assert_eq!(crc32(b"123456789"), 0xcbf4_3926);
        assert_eq!(adler32(b"Wikipedia"), 0x11e6_0398);
    }
}
