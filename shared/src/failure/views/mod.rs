//! What the pages show of failures.

mod card;
mod notice;
mod print;
mod rows;
mod stock;

pub use card::{FailureCard, FinishForecast, JudgeRow, ReplacementView, failure_card};
pub use notice::{FailureNotice, failures_stopping_press, notice_at_press, notices_of, notices_today};
pub use print::{AspectRatio, PrintSketch, SketchColours};
pub use rows::{DayFailures, FailureRow, failures_of, failures_of_screen, failures_today};
pub use stock::{SpareScreenRow, SpareScreens, spare_screens_for};
