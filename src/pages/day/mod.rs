//! The day: open runs scheduled from now to closing, and what was done.

mod closing;
mod done_today;
mod first_steps;
mod keep_data_hint;
mod page;
mod rail;
mod run_block;

pub use page::DayPage;
