//! What the screen of the day shows: the rail of runs against closing, and what was done.

mod done_today;
mod rail;

pub use done_today::{DoneToday, done_today};
pub use rail::{Rail, RailRun, RailVerdict, RunFit, order_fact, rail, reordered};
