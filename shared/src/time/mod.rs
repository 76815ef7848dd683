//! Days, due times, and the clock on the shop's wall.

mod day;
mod due;
mod wall_clock;

pub use day::Day;
pub use due::Due;
pub use wall_clock::WallClock;
