//! Two Frames.
