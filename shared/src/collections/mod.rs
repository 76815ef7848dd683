//! Collections that the core needs beside those of `std`.

mod sort;
mod table;

pub use sort::{sort_by, sort_by_key};
pub use table::Table;
