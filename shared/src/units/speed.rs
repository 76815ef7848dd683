//! Belt speed of a dryer.

use super::{NumberProblem, Units, parse_number};
use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// A belt speed, stored in micrometres per second.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(transparent)]
pub struct BeltSpeed {
    micrometres_per_second: u32,
}

/// One inch per minute in micrometres per second.
const INCH_PER_MINUTE: f64 = 25_400.0 / 60.0;
/// One centimetre per minute in micrometres per second.
const CENTIMETRE_PER_MINUTE: f64 = 10_000.0 / 60.0;

impl BeltSpeed {
    fn scale(units: Units) -> f64 {
        match units {
            Units::UsCustomary => INCH_PER_MINUTE,
            Units::Metric => CENTIMETRE_PER_MINUTE,
        }
    }

    /// In inches or centimetres per minute.
    pub fn in_units(self, units: Units) -> f64 {
        f64::from(self.micrometres_per_second) / Self::scale(units)
    }

    /// From inches or centimetres per minute.
    pub fn from_units(value: f64, units: Units) -> Self {
        Self { micrometres_per_second: (value * Self::scale(units)).round() as u32 }
    }

    /// In micrometres per second.
    pub fn micrometres_per_second(self) -> u32 {
        self.micrometres_per_second
    }

    /// From micrometres per second.
    pub fn from_micrometres_per_second(micrometres_per_second: u32) -> Self {
        Self { micrometres_per_second }
    }

    /// Parses a belt speed of 1 to 400 inches per minute, or 2 to 1,000 centimetres per minute.
    ///
    /// # Errors
    /// [`NumberProblem`] if it is not a number or out of bounds.
    pub fn parse(text: &str, units: Units) -> Result<Self, NumberProblem> {
        let (least, most) = match units {
            Units::UsCustomary => (1.0, 400.0),
            Units::Metric => (2.0, 1000.0),
        };
        parse_number(text, least, most).map(|value| Self::from_units(value, units))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_tenth_of_an_inch_a_minute_reads_back() {
        for tenths in 10..400 {
            let typed = f64::from(tenths) / 10.0;
            let kept = BeltSpeed::from_units(typed, Units::UsCustomary).in_units(Units::UsCustomary);
            assert!((kept - typed).abs() < 0.005);
        }
    }
}
