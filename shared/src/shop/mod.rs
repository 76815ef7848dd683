//! The shop as it stands: the fold of the journal.

pub mod checkpoint;
mod fold;
mod settings_form;
mod state;

pub use settings_form::ShopForm;
pub use state::{Shop, UnknownFacts};
