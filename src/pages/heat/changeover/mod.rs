//! What to change at dryer and flash before a run.

mod change_first;
mod doubt_dialog;
mod end_settling;
mod hold_dialog;
mod settle;

pub use change_first::{ChangeFirst, to_heat};
pub use hold_dialog::HoldSheet;
