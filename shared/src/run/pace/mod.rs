//! How fast a run goes, and when it will be done.

mod fan;
mod finish;
mod forecast;
mod history;
mod student_t;

pub use fan::{Fan, FanPoint, fan};
pub use finish::{Spread, TimeLeft, pieces_within};
pub use forecast::{Basis, Forecast, forecast};
pub use history::{History, history_for, stop_rate};
pub use student_t::{chance_below, quantile};
