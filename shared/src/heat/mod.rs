//! Dryer, flash and cure; and the heat of the room.

mod fact;
mod log;

pub use fact::HeatFact;
pub use log::HeatLog;
