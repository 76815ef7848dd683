//! Collections that the core needs beside those of `std`.

mod map;
mod sort;
mod table;

pub use map::Map;
pub use sort::{sort_by, sort_by_key};
pub use table::Table;
