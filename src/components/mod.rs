//! Building blocks of pages. They depend neither on the store nor on any subject of the shop.

mod checkboxes;
mod choice;
pub mod drag;
mod empty;
mod help_button;
mod icon;
mod keypad;
mod long_list;
mod menu_row;
mod page;
mod repeated_tap;
mod search_field;
mod sheet;
mod swatch;

pub use checkboxes::Checkboxes;
pub use choice::{Choice, Switch};
pub use empty::{Empty, NotHere};
pub use help_button::{HelpButton, HelpSheet};
pub use icon::Icon;
pub use keypad::Keypad;
pub use long_list::{LongList, long_rows};
pub use menu_row::MenuRow;
pub use page::Page;
pub use repeated_tap::RepeatedTap;
pub use search_field::{SearchField, searched};
pub use sheet::{Sheet, close_on_back};
pub use swatch::{GarmentChip, Swatch};
