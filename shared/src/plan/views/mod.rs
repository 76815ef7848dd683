//! What the day's page shows: the rail of runs against closing, what was done, and the first steps of a new shop.

mod done_today;
mod first_steps;
mod fit;
mod rail;
mod rail_run;
mod verdict;

pub use done_today::{DoneToday, done_today};
pub use first_steps::{FirstStep, first_step};
pub use fit::RunFit;
pub use rail::{Rail, order_fact, rail, reordered};
pub use rail_run::RailRun;
pub use verdict::{LastFinish, RailVerdict};
