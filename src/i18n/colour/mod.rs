//! Messages: colour readings, differences, additions, and coverage.

mod component;
mod coverage;
mod drawdown;
mod matching;
mod reading;
mod target;

pub use component::*;
pub use coverage::*;
pub use drawdown::*;
pub use matching::*;
pub use reading::*;
pub use target::*;
