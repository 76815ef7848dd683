//! Quantities that know their unit.
//!
//! Values are stored as whole numbers of a small unit, so that two devices fold the same facts to the same
//! bytes, and so that what a printer typed in any unit reads back unchanged.
//!
//! # Decisions
//!
//! **One notation of numbers** (2026-11-30). The texts of forms are in one notation whatever the device writes: a
//! decimal point, commas between thousands. The app's fields translate on the way in and out, where the region
//! writes a decimal comma; so neither a form nor its draft depends on the region. A draft depends on the units: they are in
//! its key, and it is there again when the device shows them again.
//!
//! **Bounds in the stored unit** (2026-11-30). What is typed is compared with one bound whatever the device's unit, wide
//! enough for what earlier versions accepted in any: a stored value must never block its form. Only the bound that is
//! reported is rounded, towards what is accepted.

mod grams;
mod length;
mod number;
mod quantity;
mod seconds;
mod speed;
mod temperature;
mod temperature_delta;

pub use grams::Grams;
pub use length::Length;
pub use number::{NumberProblem, Quantity, parse_number, parse_whole};
pub use seconds::Seconds;
pub use speed::BeltSpeed;
pub use temperature::Temperature;
pub use temperature_delta::TemperatureDelta;

use serde::{Deserialize, Serialize};

/// The units a device shows, and reads where none is typed. A setting of the device, never of the data.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Units {
    /// Of lengths, belt speeds and mesh counts.
    pub length: LengthUnit,
    /// Of temperatures.
    pub temperature: TemperatureUnit,
    /// Of ink.
    pub weight: WeightUnit,
}

/// Units of length, and with them of belt speed and mesh count.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum LengthUnit {
    /// Inches, feet per minute, threads per inch.
    #[default]
    Inches,
    /// Centimetres, centimetres per minute, threads per centimetre.
    Centimetres,
}

/// Units of temperature.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TemperatureUnit {
    /// Degrees Fahrenheit.
    Fahrenheit,
    /// Degrees Celsius.
    Celsius,
}

/// Units of weight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WeightUnit {
    /// Grams, and kilograms from 1,000 g: what scales for ink read in every country.
    Grams,
    /// Ounces, and pounds from 2 lb.
    Ounces,
}

impl Units {
    /// Of a shop in the United States: inches, °F, grams.
    pub const US: Self =
        Self { length: LengthUnit::Inches, temperature: TemperatureUnit::Fahrenheit, weight: WeightUnit::Grams };
    /// Centimetres, °C, grams.
    pub const METRIC: Self =
        Self { length: LengthUnit::Centimetres, temperature: TemperatureUnit::Celsius, weight: WeightUnit::Grams };

    /// These units, with ink in ounces.
    #[must_use]
    pub const fn with_ounces(self) -> Self {
        Self { weight: WeightUnit::Ounces, ..self }
    }
}
