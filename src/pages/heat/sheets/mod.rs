//! Data sheets of inks.

mod form;
mod list;

pub use form::InkSheetFormPage;
pub use list::InkSheetsPage;
