//! Temperature of a dryer, a flash unit, a print or the air.

use super::number::{bounded, parse_mixed, spelled_out};
use super::quantity::split_unit;
use super::{NumberProblem, Quantity, TemperatureUnit, Units};
use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// A temperature, stored in thousandths of a degree Celsius.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(transparent)]
pub struct Temperature {
    milli_celsius: i32,
}

impl Temperature {
    /// The lowest dryer setting accepted: 40 °C (104 °F). Anything below is a typing error.
    pub const COOLEST_DRYER: Self = Self { milli_celsius: 40_000 };
    /// The highest dryer setting accepted: 260 °C (500 °F), above the scorch temperature of any garment.
    pub const HOTTEST_DRYER: Self = Self { milli_celsius: 260_000 };

    /// From degrees Celsius, rounded to a thousandth.
    pub fn from_celsius(degrees: f64) -> Self {
        Self { milli_celsius: (degrees * 1000.0).round() as i32 }
    }

    /// From degrees Fahrenheit: °C = (°F − 32) · 5/9, the definition of the scale.
    pub fn from_fahrenheit(degrees: f64) -> Self {
        Self::from_celsius((degrees - 32.0) * 5.0 / 9.0)
    }

    /// In degrees Celsius.
    pub fn celsius(self) -> f64 {
        f64::from(self.milli_celsius) / 1000.0
    }

    /// In degrees Fahrenheit.
    pub fn fahrenheit(self) -> f64 {
        self.celsius() * 9.0 / 5.0 + 32.0
    }

    /// In degrees Fahrenheit or Celsius.
    pub fn in_units(self, units: Units) -> f64 {
        match units.temperature {
            TemperatureUnit::Fahrenheit => self.fahrenheit(),
            TemperatureUnit::Celsius => self.celsius(),
        }
    }

    /// From degrees Fahrenheit or Celsius.
    pub fn from_units(degrees: f64, units: Units) -> Self {
        match units.temperature {
            TemperatureUnit::Fahrenheit => Self::from_fahrenheit(degrees),
            TemperatureUnit::Celsius => Self::from_celsius(degrees),
        }
    }

    /// In thousandths of a degree Celsius.
    pub fn milli_celsius(self) -> i32 {
        self.milli_celsius
    }

    /// From thousandths of a degree Celsius.
    pub fn from_milli_celsius(milli_celsius: i32) -> Self {
        Self { milli_celsius }
    }

    /// Parses a temperature between `least` and `most`, which are in the device's unit: a number of degrees Fahrenheit or
    /// Celsius by `units`, or with its unit.
    ///
    /// # Errors
    /// [`NumberProblem`] if it is not a number, has another unit or is out of bounds.
    pub fn parse(text: &str, least: f64, most: f64, units: Units) -> Result<Self, NumberProblem> {
        let text = spelled_out(text);
        let (number, unit, rest) = split_unit(&text);
        let degrees = parse_mixed(number)?;
        let typed = match (unit.as_str(), rest) {
            ("f" | "°f" | "ºf", "") => Self::from_fahrenheit(degrees),
            ("c" | "°c" | "ºc", "") => Self::from_celsius(degrees),
            ("" | "°" | "º", "") => return bounded(degrees, least, most).map(|_| Self::from_units(degrees, units)),
            _ => return Err(NumberProblem::WrongUnit { takes: Quantity::Temperature }),
        };
        // Thousandths of a degree are lost in the conversion.
        bounded((typed.in_units(units) * 100.0).round() / 100.0, least, most).map(|_| typed)
    }

    /// Parses a dryer setting in degrees Fahrenheit or Celsius by `units`, or with its unit.
    ///
    /// # Errors
    /// [`NumberProblem`] if it is not a number or no dryer can be set to it.
    pub fn parse_dryer(text: &str, units: Units) -> Result<Self, NumberProblem> {
        let least = Self::COOLEST_DRYER.in_units(units).round();
        let most = Self::HOTTEST_DRYER.in_units(units).round();
        Self::parse(text, least, most, units)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: `shared/tests/data/temperature_conversions.csv`.
    #[test]
    fn conversions_agree_with_the_published_rows() {
        let rows = include_str!("../../tests/data/temperature_conversions.csv");
        let mut read = 0;
        for row in rows.lines().skip(1) {
            let cells: Vec<&str> = row.split(',').collect();
            let (f, c): (f64, f64) = (cells[0].parse().unwrap(), cells[1].parse().unwrap());
            assert!((Temperature::from_fahrenheit(f).celsius() - c).abs() < 0.051, "{row}");
            read += 1;
        }
        assert!(read > 5);
    }

    #[test]
    fn every_typed_whole_degree_reads_back() {
        for degrees in 104..=500 {
            let kept = Temperature::parse_dryer(&degrees.to_string(), Units::US).unwrap();
            assert_eq!(kept.fahrenheit().round() as i32, degrees);
        }
    }

    #[test]
    fn an_impossible_dryer_temperature_is_refused_with_its_bound() {
        assert_eq!(Temperature::parse_dryer("900", Units::US), Err(NumberProblem::TooHigh { most: 500.0 }));
        assert_eq!(Temperature::parse_dryer("20", Units::METRIC), Err(NumberProblem::TooLow { least: 40.0 }));
    }
}
