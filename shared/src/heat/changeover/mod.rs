//! From one run to the next: what the dryer has to do, and how long it takes.

mod settled;
mod settling;
mod start;
mod status;

pub use settled::settled_facts;
pub use settling::{Direction, SettlingBasis, SettlingPace, settling_pace, settling_time};
pub use start::checks_skipped_at_start;
pub use status::{ActiveSettling, Changeover, HeatStatus, TemperatureSource, Wait, changeover, changeover_between};
