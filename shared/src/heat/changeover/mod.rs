//! From one run to the next: what the dryer has to do, and how long it takes.

mod doubt;
mod settled;
mod settling;
mod start;
mod status;

pub use doubt::{SettlingDoubt, settling_doubt};
pub use settled::{SettledTime, settled_facts, settled_undo};
pub(crate) use settling::plausible_times;
pub use settling::{
    Direction, SettlingBasis, SettlingPace, is_possible_time, settling_pace, settling_time, teaches_pace,
};
pub use start::checks_skipped_at_start;
pub use status::{ActiveSettling, Changeover, HeatStatus, TemperatureSource, Wait, changeover, changeover_between};
