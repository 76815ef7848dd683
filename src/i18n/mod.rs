//! The catalogue: every text that the user sees, in English and Spanish.
//!
//! A message is a function, so that a missing message, a missing translation or a misspelt argument does
//! not compile. Each subject has its file. The language is that of the device; a change of it reloads
//! the page.

mod backup;
mod bath;
mod cautions;
pub mod check_values;
mod climate;
mod colour;
mod common;
mod day;
mod errors;
mod exposure;
mod failure;
mod format;
mod heat;
mod heat_run;
mod help;
mod ink;
mod jobs;
mod locale;
mod messages;
mod photos;
mod pot;
mod press;
mod screens;
mod settings;
mod welcome;

pub use backup::*;
pub use bath::*;
pub use cautions::*;
pub use climate::*;
pub use colour::*;
pub use common::*;
pub use day::*;
pub use errors::*;
pub use exposure::*;
pub use failure::*;
pub use format::*;
pub use heat::*;
pub use heat_run::*;
pub use help::*;
pub use ink::*;
pub use jobs::*;
pub use locale::{Locale, set_clock, units};
pub use photos::*;
pub use pot::*;
pub use press::*;
pub use screens::*;
pub use settings::*;
pub use welcome::*;
