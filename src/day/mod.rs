//! The day: open runs from now to closing, and what was done.

mod closing;
mod done;
mod keep;
mod rail;
mod run_block;
mod screen;

pub use screen::DayScreen;
