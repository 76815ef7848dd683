//! The screens of the shop: labels, states, age, and what they are needed for.

mod age;
pub(crate) mod burn_steps;
pub(crate) mod carried;
mod label_range;
pub(crate) mod labels;
mod mesh_check;
mod moves;
mod new_screens;
mod on_press;
mod readiness;
mod undo;
mod wait;

pub use age::{AgeWarning, age_warning};
pub use burn_steps::{StepRow, burn_steps, remaining_steps};
pub use carried::AssignedRun;
pub use label_range::{MAX_LABELS, expand_labels};
pub use labels::{LabelMatch, match_labels, screens_of};
pub(crate) use labels::{replace_label, without_screen};
pub use mesh_check::{OtherMesh, other_mesh};
pub(crate) use moves::moved;
pub use moves::{move_facts, next_states, step_done, tick_facts};
pub use new_screens::{NewLabels, new_labels, sheet_to_copy};
pub use on_press::{
    ScreensOffPress, facts_on_end, facts_on_finish, facts_on_start, not_ready, off_press, should_keep_ready,
};
pub use readiness::{Readiness, StepTotal, readiness, readiness_of};
pub use undo::{restore_fact, undo_facts, undo_latest, undo_step_fact};
pub use wait::replacement_wait;
