//! Failures on the press, and what they cost in time and pieces.
//!
//! # Decisions
//!
//! - **Failures.** One tap stops the press. Everything else about a failure is entered step by step, each
//!   answer as a fact of its own, and what is not entered stays open. A stop that begins again before
//!   another piece was pulled continues the earlier stop, because the press did not run in between.
//! - **Suspect pieces** stay in the count until somebody inspects them. A spoiled piece leaves the count
//!   through a misprint of its own, and undo at the count takes both back. A suspect piece belongs to the
//!   first failure that made it suspect.

mod form;
mod judge;
pub(crate) mod model;
mod open;
mod pieces;
mod remedy;
mod views;

pub use crate::facts::{FailureFact, FailureField, FailureKind, GridCell, Mark, Remedy, Suspects, Verdict};
pub use form::FailureForm;
pub use judge::{judge_all_facts, judge_facts, undo_verdict_facts, undo_verdict_of_misprint};
pub use model::{Failure, Failures};
pub use open::{add_screen_facts, delete_facts, open_facts, undo_delete_facts};
pub use pieces::{RunPieces, run_pieces, suspects_before, suspects_of};
pub use remedy::{Replacement, burn_again_facts, remedy_facts, resume_facts};
pub use views::*;
