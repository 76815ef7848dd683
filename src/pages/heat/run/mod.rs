//! The heat of one run, as its page at the press shows it.

mod cure_on_paper;
mod rows;

pub use rows::RunHeatRows;
