//! What the screens show of failures.

mod card;
mod notice;
mod print;
mod rows;
mod stock;

pub use card::{FailureCard, JudgeRow, NewFinish, ReplacementView, failure_card};
pub use notice::{FailureNotice, notice_at_press, notices_of, notices_today, standing_failures};
pub use print::Print;
pub use rows::{DayFailures, FailureRow, failures_of, failures_of_screen, failures_today};
pub use stock::{Stock, StockRow, stock_for};
