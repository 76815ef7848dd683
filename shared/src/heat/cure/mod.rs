//! Whether an ink cures on a fabric: by the data sheet, by tests and by trials.

pub(crate) mod dryer_choice;
mod dwell;
mod limits;
pub(crate) mod measured;
pub(crate) mod on_paper;
pub(crate) mod run_heat;
pub(crate) mod sensor;
mod sheets;
mod test_due;
mod tests_made;
mod transit;
mod trials;
mod while_entering;

pub use dryer_choice::DryerChoice;
pub use dwell::{dwell, fastest_belt, passes_for};
pub use limits::{FabricLimit, LimitOrigin, fabric_limit, fabric_limits};
pub use measured::{HeldBreach, MeasuredBreach};
pub use on_paper::{CureEstimate, LimitCheck, LimitName, LimitState, MissingInput, estimate_cure};
pub use run_heat::{CureConflict, DryerUsed, DwellView, HeatCaveat, RunHeat, heat_settings, run_heat};
pub use sensor::SensorView;
pub use sheets::sheet_for;
pub use test_due::{DueReason, PassedTest, TestDue, TestStatus, test_status};
pub use tests_made::test_log;
pub use transit::dryer_transit;
pub use trials::{TrialFit, trial_log, trials_for};
pub use while_entering::limits_while_entering;
