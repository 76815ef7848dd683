//! What goes wrong on the press, and what it costs.

mod card;
mod fact;
mod failures;
mod form;
mod judge;
mod kind;
mod open;
mod pieces;
mod remedy;
mod rows;
mod wait;

pub use card::{FailureCard, JudgeRow, ReplacementView, failure_card};
pub use fact::{FailureFact, FailureField, Suspects, Verdict};
pub use failures::{Failure, Failures};
pub use form::FailureForm;
pub use judge::{judge_all_facts, judge_facts};
pub use kind::{FailureKind, Mark, Remedy};
pub use open::{delete_facts, open_facts, restore_facts};
pub use pieces::{RunPieces, run_pieces, suspects_back, suspects_of};
pub use remedy::{Replacement, burn_again_facts, go_on_facts, remedy_facts, stock_for};
pub use rows::{DayFailures, FailureRow, failures_of, failures_of_screen, failures_today};
pub use wait::wait_for_screen;
