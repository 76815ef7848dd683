//! The shop's state: the fold of the journal, and the settings of the shop as a whole.
//!
//! # Decisions
//!
//! - Entries are folded by (stamp, device, sequence number). Fields are last-writer-wins because they are
//!   written in that order; pieces are signed sums.
//! - Nothing is ever removed from the journal: deleting is a fact, and undo is another one.

pub mod checkpoint;
mod deleted;
mod fold;
mod settings_form;
mod state;

pub use deleted::{DeletedKind, DeletedThing};
pub use settings_form::{ShopForm, WEEK_FIELDS};
pub use state::{Shop, UnknownFacts};
