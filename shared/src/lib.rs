//! # Lastpull core
//!
//! What happens in a small garment screen-print shop, kept as facts; the fold of those facts into
//! the shop as it stands; and everything the shop computes from it.
//!
//! The crate knows no browser, clock, randomness or disk: the time, new ids and bytes are passed in.
//! Read it like the table of contents of the trade:
//!
//! - [`facts`]: everything that can happen, as it is stored
//! - [`journal`]: entries, the clock that orders them, merging, packing, and the storage contract
//! - [`shop`]: the fold of the journal, and what belongs to the shop as a whole
//! - [`job`]: the client's order, its garment lots and sizes
//! - [`run`]: one lot, one print location, one ink: set-up, checks, counting, pace, finish
//! - [`plan`]: the day's runs against closing
//! - [`ink`]: recipes, pots and stock at the bench where inks are mixed
//! - [`colour`]: colours seen and measured, pigment, what to add, will it cover
//! - [`screen`]: screens from clean to reclaimed, their mesh and exposure, and the reclaim bath
//! - [`heat`]: dryer, flash, cure, and the heat of the room
//! - [`failure`]: what goes wrong on the press, and what it costs
//! - [`photo`]: photos of screens, prints and tests, and the contract of what keeps their bytes
//! - [`exchange`]: the backup file that travels between devices
//! - [`form`]: what every form needs
//! - [`ids`], [`time`], [`units`]: identifiers; moments, spans and days; quantities that know their unit
//! - [`codec`], [`collections`]: stored bytes, and collections beside those of `std`
//! - [`demo`]: an invented shop that fills every page

// A new variant of a stored enum must not be swallowed by a wildcard arm.
#![warn(clippy::wildcard_enum_match_arm)]

pub mod bounds;
pub mod codec;
pub mod collections;
pub mod colour;
pub(crate) mod deletion;
pub mod demo;
pub mod exchange;
pub mod facts;
pub mod failure;
pub mod form;
pub mod heat;
pub mod ids;
pub mod ink;
pub mod job;
pub mod journal;
pub mod photo;
pub mod plan;
pub mod run;
pub mod screen;
pub mod shop;
pub mod text;
pub mod time;
pub mod units;

// The derive of `Encode` names this crate by its full path.
extern crate self as lastpull_core;
