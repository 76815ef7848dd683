//! What the screens show at the press: the count, the pace, and the run when it is over.

mod count;
mod ended;
mod pace_chart;

pub use count::{CountView, PaceView, Pending, SizeCount, Standing, UndoView, count_view};
pub use ended::{EndedView, ended_view};
pub use pace_chart::{ChartPoint, PaceChart, pace_chart};
