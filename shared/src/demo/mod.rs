//! An invented shop in the middle of a busy day, with data for every page.
//!
//! All persons and clients are invented. The facts are generated around the time at which the demo is
//! opened, so that its day is always today.

mod colour;
mod day;
mod failures;
mod heat;
mod ink;
mod maker;
mod screens;
mod stencils;

pub use day::demo_facts;
