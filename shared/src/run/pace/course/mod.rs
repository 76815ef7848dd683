//! The course of a run, and when the pieces that are left will be pulled.
//!
//! - [`PaceSummary`](super::super::PaceSummary): what is kept of an ended run.
//! - [`CoursePrior`] and [`TroublePrior`]: what the shop's runs say before the first piece.
//! - [`Course`]: the run after its gaps so far.
//! - [`Outlook`]: the time of the pieces to come, with misprints and stops: mean, interval, chance; several
//!   runs one after another add up.

mod chains;
mod correlation;
mod fit;
mod matrix;
mod mixed;
mod outlook;
mod own_and_shared;
mod prior;
mod terms;
mod trouble;

pub use fit::{Course, Work};
pub use outlook::Outlook;
pub use own_and_shared::OwnAndShared;
pub use prior::{CoursePrior, RunSimilarity};
pub use trouble::{TroublePrior, TroubleRate};
