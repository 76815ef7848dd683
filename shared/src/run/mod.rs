//! A run: one garment lot, one print location, one ink. Its set-up, the checks before the first
//! pull, the count, the pace, and when it will leave the dryer.

mod checks;
mod contact;
mod form;
pub(crate) mod model;
mod pace;
mod views;

pub use crate::facts::{CheckItem, CheckOutcome, Expected, Flash, Location, MisprintCause, StopCause};
pub use checks::{CheckList, CheckRow, CheckState, check_list, check_list_after};
pub use contact::{Contacts, KeyMeaning, Keys, Touch, Window};
pub use form::RunForm;
pub use model::*;
pub use pace::*;
pub use views::*;
