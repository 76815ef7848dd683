//! What is in a pot: the replay of its events, the weigh-in, and corrections.

mod addition;
mod contents;
mod overpour;
pub(crate) mod reading;
pub(crate) mod replay;
mod stage;
pub(crate) mod weigh_in;

pub use addition::{AfterAddition, after_addition, components_to_add, last_added, top_up};
pub use contents::Contents;
pub use overpour::{OverPour, Repair, RepairPlan, RepairRow, over_pour, repair_facts};
pub use reading::{Garment, PotReading, garment_of, reading_now, with_reading};
pub use replay::{PotState, pot_state};
pub use stage::{PotStage, pot_stage};
pub use weigh_in::{StepState, WeighIn, WeighStep, weigh_in};
