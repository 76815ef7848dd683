//! Quantities that know their unit.
//!
//! Values are stored as whole numbers of a small unit, so that two devices fold the same facts to the same
//! bytes, and so that what a printer typed in either system of units reads back unchanged.

mod grams;
mod length;
mod number;
mod seconds;
mod speed;
mod temperature;
mod temperature_delta;

pub use grams::Grams;
pub use length::Length;
pub use number::{NumberProblem, parse_fraction, parse_number, parse_whole};
pub use seconds::Seconds;
pub use speed::BeltSpeed;
pub use temperature::Temperature;
pub use temperature_delta::TemperatureDelta;

use serde::{Deserialize, Serialize};

/// The system of units a device shows and reads. A setting of the device, never of the data.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Units {
    /// Inches, degrees Fahrenheit, threads per inch, ounces.
    #[default]
    UsCustomary,
    /// Centimetres, degrees Celsius, threads per centimetre, grams.
    Metric,
}
