//! Views that several pages show.

mod day_verdict;
mod failure_bar;

pub use day_verdict::Verdict;
pub use failure_bar::FailureBar;
