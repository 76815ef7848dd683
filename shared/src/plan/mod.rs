//! The day: its runs against due times and closing.

mod closing;
mod done_today;
mod press;
mod rail;
mod tally;

pub use closing::{Closings, closing_of};
pub use done_today::{DoneToday, done_today};
pub use press::only_on_press;
pub use rail::{Fit, Rail, RailRun, RailVerdict, rail, reordered};
pub(crate) use rail::{open_runs, set_up_time};
pub use tally::{Tally, TallyRow};
