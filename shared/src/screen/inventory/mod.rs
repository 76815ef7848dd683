//! The screens of the shop: labels, states, age, and what they are needed for.

mod age;
pub(crate) mod burn_steps;
pub(crate) mod carried;
mod label_range;
pub(crate) mod labels;
mod moves;
mod new_screens;
mod on_press;
mod readiness;
mod undo;
mod wait;

pub use age::{AgeWarning, age_warning};
pub use burn_steps::{StepRow, burn_steps, steps_left};
pub use carried::Carried;
pub use label_range::{MOST_LABELS, expand_labels};
pub(crate) use labels::with_label;
pub use labels::{LabelMatch, match_labels, screens_of};
pub(crate) use moves::moved;
pub use moves::{move_facts, next_states, step_done, tick_facts};
pub use new_screens::{new_labels, sheet_to_take};
pub use on_press::{OffPress, facts_on_end, facts_on_finish, facts_on_start, keeps_ready, not_ready, off_press};
pub use readiness::{Readiness, StepSum, readiness, readiness_of};
pub use undo::{as_it_stands, latest_undone, step_undone, undo_of};
pub use wait::wait_for_screen;
