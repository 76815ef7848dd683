//! The day: its runs compared with due times and closing, and what was done.
//!
//! # Decisions
//!
//! - A rail run fits with a probability of 0.9 or more. The variances of the runs are added up along the
//!   rail, so uncertainty grows towards the end of the day.
//! - The set-up time between runs is learned from the shop's own changes; until there are three, it is what
//!   the shop entered, or ten minutes.

mod closing;
mod day;
mod done_today;
mod press;
mod rail;
mod tally;
mod wall_clock;

pub use closing::{Closings, closing_of};
pub use day::Day;
pub use done_today::{DoneToday, done_today};
pub use press::only_on_press;
pub use rail::{Fit, Rail, RailRun, RailVerdict, rail, reordered};
pub(crate) use rail::{open_runs, set_up_time};
pub use tally::{Tally, TallyRow};
pub use wall_clock::WallClock;
