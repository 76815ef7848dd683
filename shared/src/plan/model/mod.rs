//! Closing times and pieces a day as the facts leave them.

mod closings;
mod tally;

pub use closings::{Closings, DEFAULT_CLOSING};
pub use tally::{Tally, TallyRow};
