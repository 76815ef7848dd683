//! The forms about heat.

mod climate;
mod cure_test;
mod heater;
mod sheet;
mod trial;
mod typed;

pub use climate::ClimateForm;
pub use cure_test::TestForm;
pub use heater::{HeaterForm, SensorForm, SettlingForm};
pub use sheet::{FabricLimitForm, SheetForm};
pub use trial::TrialForm;
