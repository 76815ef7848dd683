//! Trials of inks on fabrics.

mod form;
mod list;

pub use form::TrialFormPage;
pub use list::{TrialsPage, trial_rows};
