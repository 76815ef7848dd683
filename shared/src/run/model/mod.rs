//! Runs as the facts leave them.

mod check_record;
mod pace;
pub(crate) mod progress;
mod pull;
mod run;
mod set_up;
mod stop;

pub use check_record::CheckRecord;
pub use pace::{Pace, PullGap, UNMARKED_PAUSE_SECONDS, pull_gaps};
pub use progress::Progress;
pub use pull::Pull;
pub use run::Run;
pub use set_up::SetUp;
pub use stop::Stop;
