//! Views that several pages show.

mod day_verdict;
mod failure_bar;
mod goal;

pub use day_verdict::Verdict;
pub use failure_bar::FailureBar;
pub use goal::GoalBadge;
