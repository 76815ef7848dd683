//! Jobs: the list, what a repeated order takes over, and what new lots and runs start from.

use lastpull_core::facts::RunField;
use lastpull_core::units::Temperature;

mod defaults;
mod list;
mod repeat;

fn dryer(fahrenheit: f64) -> RunField {
    RunField::Dryer(Some(Temperature::from_fahrenheit(fahrenheit)))
}
