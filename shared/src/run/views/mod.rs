//! What the screens show at the press: the count, the pace, and the run when it is over.

mod count;
mod ended;
mod pace_chart;

pub use count::{CountView, PaceView, RunPhase, SizeCount, UndoView, UnsavedFact, count_view};
pub use ended::{RunSummary, run_summary};
pub use pace_chart::{ChartPoint, PaceChart, pace_chart};
