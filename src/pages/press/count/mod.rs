//! The count: the count zone, the pace, the sizes, the controls and their dialogs.
//!
//! # Decisions
//!
//! - `lastpull_core` decides which touches count; see its `run` module.
//! - A touch on the zone makes no tap, highlight or click: the browser would work on those during the write, and the
//!   slowest 1 % of commits took a fifth longer.
//! - Five buttons fit beside each other under a gloved thumb on a screen 360 px wide, so stop and end share a place.
//! - The zone has the garment's colour with the count in the ink's colour if their contrast is at least 3:1, else black
//!   or white.

mod actions;
mod controls;
mod dialogs;
mod pace;
mod pace_chart;
mod page;
mod sizes;
mod zone;

pub use page::Count;
