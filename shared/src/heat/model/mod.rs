//! Dryers, sheets, tests, trials and readings as the facts leave them.

mod cure_test;
mod heater;
mod log;
mod own_limit;
mod room;
mod settling;
mod sheet;
mod trial;

pub use cure_test::CureTest;
pub use heater::{Heater, SensorReading};
pub use log::HeatLog;
pub use own_limit::OwnLimit;
pub use room::ClimateReading;
pub use settling::{Settling, Transition};
pub use sheet::{InkSheet, ink_key};
pub use trial::Trial;
