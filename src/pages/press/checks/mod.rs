//! The checks before the first pull.

mod check_row;
mod page;

pub use page::{Checks, ChecksDone};
