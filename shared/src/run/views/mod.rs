//! What the pages at the press show: the count, the pace, and the run when it is over.

mod count;
mod ended;
mod pace;
mod pace_chart;

pub use count::{CountView, RunPhase, SizeCount, UndoView, UnsavedFact, count_view};
pub use ended::{RunSummary, run_summary};
pub(crate) use pace::run_goal;
pub use pace::{Goal, GoalKind, PaceView, RunPace, run_pace};
pub use pace_chart::{ChartPoint, PaceChart};
