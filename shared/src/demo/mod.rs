//! An invented shop, part-way through a busy day: every screen has something to show.
//!
//! Nobody and nothing in it is real. Its facts are made around the moment it is opened, so that
//! the day in it is always today.

mod colour;
mod day;
mod failures;
mod heat;
mod ink;
mod maker;
mod screens;
mod stencils;

pub use day::demo_facts;
