//! Moments, spans, days, times of day, due times, and the clock on the shop's wall.

mod day;
mod due;
mod estimate;
mod millis;
mod newest;
mod newest_of_kinds;
mod time_of_day;
mod wall_clock;
mod wall_time;
mod zone;

pub use day::Day;
pub use due::Due;
pub use estimate::Estimate;
pub use millis::Millis;
pub(crate) use newest::{LeftOut, Newest};
pub(crate) use newest_of_kinds::NewestOfKinds;
pub use time_of_day::TimeOfDay;
pub use wall_clock::{DAY_TURN, WallClock};
pub use wall_time::WallTime;
pub use zone::{OffsetChange, Zone, offset_changes};

#[cfg(test)]
pub(crate) use wall_time::wall;
