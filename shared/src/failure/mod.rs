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

mod card;
mod fact;
mod failures;
mod form;
mod judge;
mod kind;
mod notice;
mod open;
mod pieces;
mod print;
mod remedy;
mod rows;
mod stock;
mod wait;

pub use card::{FailureCard, JudgeRow, NewFinish, ReplacementView, failure_card};
pub use fact::{FailureFact, FailureField, Suspects, Verdict};
pub use failures::{Failure, Failures};
pub use form::FailureForm;
pub use judge::{judge_all_facts, judge_facts, judgement_back, taken_back};
pub use kind::{FailureKind, Mark, Remedy};
pub use notice::{FailureNotice, notice_at_press, notices_of, notices_today, standing_failures};
pub use open::{delete_facts, list_screen_facts, open_facts, undelete_facts};
pub use pieces::{RunPieces, run_pieces, suspects_back, suspects_of};
pub use print::Print;
pub use remedy::{Replacement, burn_again_facts, go_on_facts, remedy_facts};
pub use rows::{DayFailures, FailureRow, failures_of, failures_of_screen, failures_today};
pub use stock::{Stock, StockRow, stock_for};
pub use wait::wait_for_screen;
