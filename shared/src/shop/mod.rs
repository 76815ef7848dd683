//! The shop as it stands: the fold of the journal.

pub mod checkpoint;
mod fold;
mod form;
mod state;

pub use form::ShopForm;
pub use state::{Shop, UnknownFacts};
