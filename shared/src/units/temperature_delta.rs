//! Differences of temperature: a sensor's error, the change from one dryer setting to the next.

use super::{Temperature, TemperatureUnit, Units};
use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// A signed difference of temperature, stored in thousandths of a degree Celsius.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
#[serde(transparent)]
pub struct TemperatureDelta {
    milli_celsius: i32,
}

impl TemperatureDelta {
    /// The change from one temperature to another: positive if it rises. Saturates.
    ///
    /// ```
    /// use lastpull_core::units::{TemperatureDelta, Temperature};
    ///
    /// let cooling = TemperatureDelta::between(Temperature::from_fahrenheit(320.0), Temperature::from_fahrenheit(311.0));
    /// assert_eq!(cooling.milli_celsius(), -5_000);
    /// ```
    pub fn between(from: Temperature, to: Temperature) -> Self {
        Self { milli_celsius: to.milli_celsius().saturating_sub(from.milli_celsius()) }
    }

    /// From thousandths of a degree Celsius.
    pub const fn from_milli_celsius(milli_celsius: i32) -> Self {
        Self { milli_celsius }
    }

    /// In thousandths of a degree Celsius.
    pub fn milli_celsius(self) -> i32 {
        self.milli_celsius
    }

    /// In degrees Celsius.
    pub fn celsius(self) -> f64 {
        f64::from(self.milli_celsius) / 1000.0
    }

    /// In degrees Fahrenheit or Celsius. A difference has no offset of 32.
    pub fn in_units(self, units: Units) -> f64 {
        match units.temperature {
            TemperatureUnit::Fahrenheit => self.celsius() * 9.0 / 5.0,
            TemperatureUnit::Celsius => self.celsius(),
        }
    }

    /// The absolute value.
    pub fn magnitude(self) -> Self {
        Self { milli_celsius: self.milli_celsius.saturating_abs() }
    }
}

impl Temperature {
    /// The sum of this temperature and a change. Saturates.
    pub fn saturating_add(self, change: TemperatureDelta) -> Self {
        Self::from_milli_celsius(self.milli_celsius().saturating_add(change.milli_celsius))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_difference_of_nine_fahrenheit_is_five_celsius() {
        let change =
            TemperatureDelta::between(Temperature::from_fahrenheit(320.0), Temperature::from_fahrenheit(311.0));
        assert_eq!(change.milli_celsius(), -5_000);
        assert!((change.in_units(Units::US) + 9.0).abs() < 1e-9);
        assert_eq!(Temperature::from_fahrenheit(320.0).saturating_add(change), Temperature::from_fahrenheit(311.0));
    }

    #[test]
    fn arithmetic_saturates_at_the_integer_limits() {
        let (low, high) = (Temperature::from_milli_celsius(i32::MIN), Temperature::from_milli_celsius(i32::MAX));
        assert_eq!(TemperatureDelta::between(low, high).milli_celsius(), i32::MAX);
        assert_eq!(TemperatureDelta::between(high, low).magnitude().milli_celsius(), i32::MAX);
    }
}
