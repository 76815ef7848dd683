//! The shop as it stands: the fold of the journal.

mod fold;
mod state;

pub use state::{Shop, UnknownFacts};
