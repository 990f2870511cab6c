//! A picture's size on the command line, as in `640x480`.

use std::str::FromStr;

/// The least and the greatest width and height: below, the labels have no room; above, a screen of the largest kind is
/// full, and an SVG picture grows without a larger size.
const RANGE: std::ops::RangeInclusive<u32> = 240..=4_096;

/// Width and height of a picture, in its own units (CSS pixels where nothing scales it).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Size {
    /// From left to right.
    pub width: u32,
    /// From top to bottom.
    pub height: u32,
}

impl FromStr for Size {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let side = |text: &str| text.parse().ok().filter(|side| RANGE.contains(side));
        let sides = text
            .split_once('x')
            .and_then(|(width, height)| Some((side(width)?, side(height)?)));
        let rule = || {
            let (least, greatest) = (RANGE.start(), RANGE.end());
            format!(
                "a size is a width and a height, each a whole number from {least} to {greatest}; try 640x480"
            )
        };
        sides
            .map(|(width, height)| Self { width, height })
            .ok_or_else(rule)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn width_comes_before_height() {
        assert_eq!(
            "640x480".parse(),
            Ok(Size {
                width: 640,
                height: 480
            })
        );
    }

    #[test]
    fn anything_else_is_refused_with_the_rule() {
        for text in [
            "",
            "640",
            "640x",
            "x480",
            "640X480",
            "640x480x2",
            "640.5x480",
            "239x480",
            "640x4097",
            "-640x480",
        ] {
            let rule = text.parse::<Size>().expect_err(text);
            assert!(rule.contains("try 640x480"), "{rule}");
        }
    }
}
