//! # Lastpull core
//!
//! Domain logic of a small garment screen-print shop: the facts that record what happened, the fold of those
//! facts into the shop's state, and everything computed from it.
//!
//! The crate knows no browser, clock, randomness or disk: the time, new ids and bytes are passed in. A table
//! of contents of the trade:
//!
//! ## The order and its day
//!
//! - [`job`]: a client's order, its garment lots and sizes
//! - [`run`]: printing one lot at one location in one ink: set-up, checks, count, pace, forecast
//! - [`plan`]: the day's runs compared with due times and closing
//! - [`failure`]: failures on the press: what broke, which pieces are suspect, what it costs
//!
//! ## The workshop
//!
//! - [`screen`]: screens and their mesh, stencils and exposure, the reclaim bath
//! - [`ink`]: components, recipes, weighing in, pots and their ledger, stock
//! - [`colour`]: colour as seen and measured, pigments, corrections, coverage
//! - [`heat`]: dryers and flash units, cure, fabric limits, heat stress in the shop
//! - [`photo`]: photos of screens, prints and tests, and the storage contract for their bytes
//!
//! ## The shop and its data
//!
//! - [`shop`]: the folded state, and the settings of the shop as a whole
//! - [`journal`]: facts, the clock that orders them, merging, stored bytes, the storage contract
//! - [`exchange`]: the backup file that travels between devices
//! - [`demo`]: an invented shop that fills every page
//!
//! ## Shared by all
//!
//! - [`quantity`]: temperatures, lengths, weights and times with their units
//! - [`pack`]: the binary codec of everything stored
//! - [`table`], [`sorted`]: collections that add little code to the app

// A new variant of a stored enum must not be swallowed by a wildcard arm.
#![warn(clippy::wildcard_enum_match_arm)]

pub mod colour;
pub(crate) mod deletion;
pub mod demo;
pub mod exchange;
#[doc(hidden)]
pub mod facts {
    //! The frozen format of the facts.
    pub mod frozen;
}
pub mod failure;
pub mod heat;
pub mod ink;
pub mod job;
pub mod journal;
pub mod pack;
pub mod photo;
pub mod plan;
pub mod quantity;
pub mod run;
pub mod screen;
pub mod shop;
pub mod sorted;
pub mod table;
