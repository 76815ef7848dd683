//! How fast a run goes, and when it will be done.

mod chance;
mod course;
mod experience;
mod fan;
mod forecast;
mod student_t;

pub(crate) use chance::SURE;
pub use chance::{Chance, Likelihood};
pub use course::{Course, CoursePrior, Outlook, OwnAndShared, RunSimilarity, TroublePrior, TroubleRate, Work};
pub use experience::{Experience, PaceSource};
pub use fan::{Fan, FanPoint, fan};
pub(crate) use forecast::{CONFIDENCE, forecast_from};
pub use forecast::{Forecast, ForecastBasis, forecast};
