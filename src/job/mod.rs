//! Jobs, their garment lots and runs: the list, the card, the forms.

mod card;
mod edit;
mod list;
mod lot_form;
mod lot_section;
mod run_form;

pub use card::JobScreen;
pub use edit::JobFormScreen;
pub use list::JobsScreen;
pub use lot_form::LotFormScreen;
pub use run_form::RunFormScreen;
