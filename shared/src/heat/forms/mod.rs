//! The forms about heat.

mod cure_test;
mod heater;
mod room;
mod sheet;
mod trial;
mod typed;

pub use cure_test::TestForm;
pub use heater::{HeaterForm, SensorForm, SettlingForm};
pub use room::ClimateForm;
pub use sheet::{FabricLimitForm, SheetForm};
pub use trial::TrialForm;
