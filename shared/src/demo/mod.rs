//! An invented shop in the middle of a busy day, with data for every page.
//!
//! All persons and clients are invented. The facts are generated around the time at which the demo is
//! opened, so that its day is always today, and in the language in which it is opened: like a shop's own
//! records they stay as they are if the language of the app changes.

mod colour;
mod day;
mod failures;
mod heat;
mod ink;
mod language;
mod maker;
mod screens;
mod stencils;

pub use day::demo_facts;
pub use language::Language;
