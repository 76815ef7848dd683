//! Lengths: placement, off-contact, flash distance, heated length.

use super::{NumberProblem, Units, parse_fraction};
use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// A length, stored in micrometres.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, Encode)]
#[serde(transparent)]
pub struct Length {
    micrometres: i32,
}

/// Micrometres per inch: 25.4 mm by definition.
const UM_PER_INCH: f64 = 25_400.0;

impl Length {
    /// From inches.
    pub fn from_inches(inches: f64) -> Self {
        Self { micrometres: (inches * UM_PER_INCH).round() as i32 }
    }

    /// From millimetres.
    pub fn from_millimetres(millimetres: f64) -> Self {
        Self { micrometres: (millimetres * 1000.0).round() as i32 }
    }

    /// In inches.
    pub fn inches(self) -> f64 {
        f64::from(self.micrometres) / UM_PER_INCH
    }

    /// In millimetres.
    pub fn millimetres(self) -> f64 {
        f64::from(self.micrometres) / 1000.0
    }

    /// In micrometres.
    pub fn micrometres(self) -> i32 {
        self.micrometres
    }

    /// From micrometres.
    pub fn from_micrometres(micrometres: i32) -> Self {
        Self { micrometres }
    }

    /// In inches or centimetres.
    pub fn in_units(self, units: Units) -> f64 {
        match units {
            Units::UsCustomary => self.inches(),
            Units::Metric => self.millimetres() / 10.0,
        }
    }

    /// From inches or centimetres.
    pub fn from_units(value: f64, units: Units) -> Self {
        match units {
            Units::UsCustomary => Self::from_inches(value),
            Units::Metric => Self::from_millimetres(value * 10.0),
        }
    }

    /// As form text, in inches or centimetres to four decimals, without trailing zeros: what was typed in these units,
    /// sixteenths of an inch included, reads back unchanged.
    pub fn text(self, units: Units) -> String {
        to_text(self.in_units(units))
    }

    /// As [`text`](Self::text), in inches or millimetres, in which small gaps are measured.
    pub fn small_text(self, units: Units) -> String {
        to_text(match units {
            Units::UsCustomary => self.inches(),
            Units::Metric => self.millimetres(),
        })
    }

    /// Parses a length between 0 and `most`, in inches or centimetres by `units`. Fractions such as `1 1/2` are accepted.
    ///
    /// # Errors
    /// [`NumberProblem`] if it is not a number or out of bounds.
    pub fn parse(text: &str, most: Self, units: Units) -> Result<Self, NumberProblem> {
        let most = (most.in_units(units) * 10.0).round() / 10.0;
        parse_fraction(text, 0.0, most).map(|value| Self::from_units(value, units))
    }
}

fn to_text(value: f64) -> String {
    let text = format!("{value:.4}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_inch_is_twenty_five_point_four_millimetres() {
        assert!((Length::from_inches(3.0).millimetres() - 76.2).abs() < 1e-9);
        assert!((Length::from_units(7.5, Units::Metric).inches() - 7.5 / 2.54).abs() < 1e-4);
    }

    #[test]
    fn a_length_reads_back_as_it_was_typed() {
        let most = Length::from_inches(40.0);
        for sixteenths in 0..640 {
            let typed = format!("{sixteenths}/16");
            let length = Length::parse(&typed, most, Units::UsCustomary).unwrap();
            let exact = f64::from(sixteenths) / 16.0;
            assert_eq!(length.text(Units::UsCustomary), exact.to_string(), "{typed}");
            assert_eq!(length.small_text(Units::UsCustomary), exact.to_string(), "{typed}");
        }
        for tenths in 0..1000 {
            let typed = f64::from(tenths) / 10.0;
            let length = Length::parse(&typed.to_string(), most, Units::Metric).unwrap();
            assert_eq!(length.text(Units::Metric), typed.to_string());
        }
        assert_eq!(Length::from_millimetres(1.5).small_text(Units::Metric), "1.5");
    }

    #[test]
    fn a_length_out_of_bounds_is_refused() {
        let most = Length::from_inches(20.0);
        assert_eq!(Length::parse("21", most, Units::UsCustomary), Err(NumberProblem::TooHigh { most: 20.0 }));
        assert_eq!(Length::parse("-1", most, Units::UsCustomary), Err(NumberProblem::TooLow { least: 0.0 }));
    }
}
