//! What the day's page shows: the rail of runs against closing, and what was done.

mod done_today;
mod fit;
mod rail;
mod rail_run;
mod verdict;

pub use done_today::{DoneToday, done_today};
pub use fit::RunFit;
pub use rail::{Rail, order_fact, rail, reordered};
pub use rail_run::RailRun;
pub use verdict::{LastFinish, RailVerdict};
