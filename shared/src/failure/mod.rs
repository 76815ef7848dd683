//! What goes wrong on the press, and what it costs.

mod form;
mod judge;
pub(crate) mod model;
mod open;
mod pieces;
mod remedy;
mod views;

pub use crate::facts::{FailureFact, FailureField, FailureKind, Mark, Remedy, Suspects, Verdict};
pub use form::FailureForm;
pub use judge::{judge_all_facts, judge_facts, judgement_back, taken_back};
pub use model::{Failure, Failures};
pub use open::{delete_facts, list_screen_facts, open_facts, undelete_facts};
pub use pieces::{RunPieces, run_pieces, suspects_back, suspects_of};
pub use remedy::{Replacement, burn_again_facts, go_on_facts, remedy_facts};
pub use views::*;
