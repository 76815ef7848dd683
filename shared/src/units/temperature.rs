//! Temperature of a dryer, a flash unit or a print.

use super::{NumberProblem, Units, parse_number};
use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// A temperature, kept in thousandths of a degree Celsius.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(transparent)]
pub struct Temperature {
    milli_celsius: i32,
}

impl Temperature {
    /// The coolest setting a dryer is believed to have: 40 °C (104 °F). Below it, it is a typing slip.
    pub const COOLEST_DRYER: Self = Self { milli_celsius: 40_000 };
    /// The hottest: 260 °C (500 °F), past the scorch of any garment.
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

    /// In the degrees a device shows.
    pub fn in_units(self, units: Units) -> f64 {
        match units {
            Units::UsCustomary => self.fahrenheit(),
            Units::Metric => self.celsius(),
        }
    }

    /// From the degrees a device shows.
    pub fn from_units(degrees: f64, units: Units) -> Self {
        match units {
            Units::UsCustomary => Self::from_fahrenheit(degrees),
            Units::Metric => Self::from_celsius(degrees),
        }
    }

    /// The thousandths of a degree Celsius that are stored.
    pub fn milli_celsius(self) -> i32 {
        self.milli_celsius
    }

    /// From the thousandths of a degree Celsius that are stored.
    pub fn from_milli_celsius(milli_celsius: i32) -> Self {
        Self { milli_celsius }
    }

    /// Reads a dryer setting in the units of the device.
    ///
    /// # Errors
    /// [`NumberProblem`] when it is no number or nothing a dryer can be set to.
    pub fn parse_dryer(text: &str, units: Units) -> Result<Self, NumberProblem> {
        let least = Self::COOLEST_DRYER.in_units(units).round();
        let most = Self::HOTTEST_DRYER.in_units(units).round();
        parse_number(text, least, most).map(|degrees| Self::from_units(degrees, units))
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
    fn every_whole_degree_reads_back_as_it_was_typed() {
        for degrees in 104..=500 {
            let kept = Temperature::parse_dryer(&degrees.to_string(), Units::UsCustomary).unwrap();
            assert_eq!(kept.fahrenheit().round() as i32, degrees);
        }
    }

    #[test]
    fn an_impossible_dryer_is_refused_with_its_bound() {
        assert_eq!(Temperature::parse_dryer("900", Units::UsCustomary), Err(NumberProblem::TooHigh { most: 500.0 }));
        assert_eq!(Temperature::parse_dryer("20", Units::Metric), Err(NumberProblem::TooLow { least: 40.0 }));
    }
}
