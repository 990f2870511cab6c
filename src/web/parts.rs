//! The page's elements, grouped by what they show.

use web_sys::Element;

use super::address::Link;
use super::aim::Aim;
use super::canvas::Canvas;
use super::controls::Controls;
use super::looks::Looks;
use super::palette::Palette;
use super::playback::Playback;
use super::readout::Readout;

/// All of them.
pub(super) struct Parts {
    /// Planet frame, Sun frame, diagram, record.
    pub(super) canvases: [Canvas; 4],
    pub(super) controls: Controls,
    pub(super) playback: Playback,
    pub(super) looks: Looks,
    pub(super) aim: Aim,
    pub(super) readout: Readout,
    pub(super) link: Link,
    pub(super) palette: Palette,
}

impl Parts {
    pub(super) fn find(root: &Element) -> Self {
        Self {
            canvases: ["planet", "sun", "diagram", "record"].map(|name| Canvas::find(root, name)),
            controls: Controls::find(root),
            playback: Playback::find(root),
            looks: Looks::find(root),
            aim: Aim::find(root),
            readout: Readout::find(root),
            link: Link::find(root),
            palette: Palette::read(root),
        }
    }
}
