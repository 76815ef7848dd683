//! What goes wrong on the press, and what it costs.

mod card;
mod failures;
mod form;
mod judge;
mod notice;
mod open;
mod pieces;
mod print;
mod remedy;
mod rows;
mod stock;
mod wait;

pub use crate::facts::{FailureFact, FailureField, FailureKind, Mark, Remedy, Suspects, Verdict};
pub use card::{FailureCard, JudgeRow, NewFinish, ReplacementView, failure_card};
pub use failures::{Failure, Failures};
pub use form::FailureForm;
pub use judge::{judge_all_facts, judge_facts, judgement_back, taken_back};
pub use notice::{FailureNotice, notice_at_press, notices_of, notices_today, standing_failures};
pub use open::{delete_facts, list_screen_facts, open_facts, undelete_facts};
pub use pieces::{RunPieces, run_pieces, suspects_back, suspects_of};
pub use print::Print;
pub use remedy::{Replacement, burn_again_facts, go_on_facts, remedy_facts};
pub use rows::{DayFailures, FailureRow, failures_of, failures_of_screen, failures_today};
pub use stock::{Stock, StockRow, stock_for};
pub use wait::wait_for_screen;
