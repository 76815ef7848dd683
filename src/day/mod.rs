//! The day: open runs from now to closing, and what was done.

mod closing;
mod done;
mod keep;
mod rail;
mod run_block;
mod screen;
mod verdict;

pub use screen::DayScreen;
pub use verdict::Verdict;
