//! Views that several pages show.

mod day_verdict;
mod exposure_links;
mod failure_bar;
mod finish_job;
mod finish_time;
mod goal;
mod open_failure;
mod step_cautions;
mod waits;

pub use day_verdict::Verdict;
pub use exposure_links::ExposureLinks;
pub use failure_bar::FailureBar;
pub use finish_job::finish_job;
pub use finish_time::out_at;
pub use goal::GoalBadge;
pub use open_failure::open_failure;
pub use step_cautions::StepCautions;
pub use waits::Waits;
