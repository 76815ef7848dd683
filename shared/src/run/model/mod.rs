//! Runs as the facts leave them.

mod check_record;
pub(crate) mod progress;
mod pull;
mod run;
mod run_kind;
mod set_up;
mod stop;
mod summary;
mod work_gap;

pub use check_record::{CheckRecord, DryerUse};
pub use progress::Progress;
pub use pull::Pull;
pub use run::Run;
pub(crate) use run_kind::RunKind;
pub use set_up::SetUp;
pub use stop::Stop;
pub use summary::{Pace, PaceSummary, Stretch};
pub use work_gap::{UNMARKED_PAUSE_SECONDS, WorkGap, work_gaps};
