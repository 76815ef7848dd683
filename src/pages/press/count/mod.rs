//! The count: the count zone, the pace, the sizes, the controls and their dialogs.

mod controls;
mod dialogs;
mod pace;
mod page;
mod sizes;
mod zone;

pub use pace::chance_tone;
pub use page::Count;
