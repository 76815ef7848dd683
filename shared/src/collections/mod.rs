//! Collections that the core needs beside those of `std`.

mod groups;
mod sort;
mod table;

pub use groups::Groups;
pub use sort::{sort_by, sort_by_key};
pub use table::Table;
