//! Pieces that screens are made of. None holds arithmetic, none knows a subject.

mod choice;
mod empty;
mod field;
mod icon;
mod menu_row;
mod notices;
mod page;
mod sending;
mod sheet;
mod swatch;

pub use choice::{Choice, Switch};
pub use empty::{Empty, NotHere};
pub use field::{Bound, Field, Kind, SaveBar, TextArea, bound};
pub use icon::Icon;
pub use menu_row::MenuRow;
pub use notices::{Faults, Notices};
pub use page::Page;
pub use sending::{Checked, Sending, delete, set};
pub use sheet::Sheet;
pub use swatch::{GarmentChip, Swatch};
