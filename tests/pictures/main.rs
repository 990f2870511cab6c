//! The pictures as data and as text.

#[path = "../scenarios/mod.rs"]
mod scenarios;

mod aim;
mod aim_words;
mod arrows;
mod beads;
mod chart;
mod colors;
mod common;
mod contours;
mod depth;
mod diagram;
mod finite;
mod geometry;
mod golden;
mod letters;
mod looks;
mod markup;
mod own;
mod raster;
mod reach;
mod record;
mod room;
mod ruler;
mod stage;
mod theme;
