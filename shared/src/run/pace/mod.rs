//! How fast a run goes, and when it will be done.

mod course;
mod fan;
mod finish;
mod forecast;
mod history;
mod student_t;

pub use course::{
    Course, CoursePrior, Kinship, Outlook, PaceSummary, Stretch, TroublePrior, TroubleRate, Work, WorkGap,
};
pub use fan::{Fan, FanPoint, fan};
pub use finish::{PieceTime, TimeLeft, pieces_within};
pub use forecast::{Forecast, ForecastBasis, forecast};
pub use history::{History, history_for, stop_rate};
pub use student_t::{t_cdf, t_quantile};
