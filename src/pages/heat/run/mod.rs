//! The heat of one run, as shown on its page.

mod cure_on_paper;
mod rows;

pub use rows::RunHeatRows;
