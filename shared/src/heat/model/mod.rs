//! Dryers, sheets, tests, trials and readings as the facts leave them.

mod climate_reading;
mod cure_test;
mod heater;
mod log;
mod own_limit;
mod settling;
mod sheet;
mod tests_by_ink;
mod trial;

pub use climate_reading::ClimateReading;
pub use cure_test::CureTest;
pub use heater::{Heater, SensorReading};
pub use log::HeatLog;
pub use own_limit::OwnLimit;
pub use settling::{Settling, Transition};
pub use sheet::{InkSheet, ink_key};
pub use trial::Trial;
