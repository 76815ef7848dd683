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

    /// As form text, in inches or centimetres, with as many decimals as the same length needs to read back: up to five
    /// in inches. Thirty-seconds of an inch are written as they were typed.
    pub fn text(self, units: Units) -> String {
        match units {
            Units::UsCustomary => self.inches_text(),
            Units::Metric => shortest(self, self.in_units(units), |value| Self::from_units(value, units)),
        }
    }

    /// As [`text`](Self::text), in inches or millimetres, in which small gaps are measured.
    pub fn small_text(self, units: Units) -> String {
        match units {
            Units::UsCustomary => self.inches_text(),
            Units::Metric => shortest(self, self.millimetres(), Self::from_millimetres),
        }
    }

    fn inches_text(self) -> String {
        let on_the_rule = (self.inches() * 32.0).round() / 32.0;
        let is_meant = Self::from_inches(on_the_rule) == self;
        shortest(self, if is_meant { on_the_rule } else { self.inches() }, Self::from_inches)
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

/// Most decimals: a hundred-thousandth of an inch is a quarter of a micrometre.
const MOST_DECIMALS: usize = 5;

/// A value with the fewest decimals with which `read` gives the length again.
fn shortest(length: Length, value: f64, read: impl Fn(f64) -> Length) -> String {
    let reads_back = |text: &String| text.parse().is_ok_and(|value| read(value) == length);
    let mut texts = (0..MOST_DECIMALS).map(|decimals| format!("{value:.decimals$}"));
    texts.find(reads_back).unwrap_or_else(|| format!("{value:.MOST_DECIMALS$}"))
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
    fn every_stored_length_reads_back_as_it_is() {
        let most = Length::from_inches(100.0);
        let stored = |micrometres| Length::from_micrometres(micrometres);
        for length in (0..26_000).chain(1_000_000..1_001_000).map(stored) {
            for units in [Units::UsCustomary, Units::Metric] {
                assert_eq!(Length::parse(&length.text(units), most, units), Ok(length), "{}", length.text(units));
            }
            let inches = length.small_text(Units::UsCustomary);
            assert_eq!(Length::parse(&inches, most, Units::UsCustomary), Ok(length), "{inches}");
            let millimetres = length.small_text(Units::Metric).parse().map(Length::from_millimetres);
            assert_eq!(millimetres, Ok(length));
        }
    }

    #[test]
    fn every_sixty_fourth_of_an_inch_reads_back_as_it_was_stored() {
        let most = Length::from_inches(40.0);
        for parts in 0..=40 * 64 {
            let length = Length::parse(&format!("{parts}/64"), most, Units::UsCustomary).unwrap();
            let text = length.text(Units::UsCustomary);
            assert_eq!(Length::parse(&text, most, Units::UsCustomary), Ok(length), "{parts}/64 as {text}");
            if parts % 2 == 0 {
                assert_eq!(text, (f64::from(parts) / 64.0).to_string(), "{parts}/64");
            }
        }
    }

    #[test]
    fn a_length_out_of_bounds_is_refused() {
        let most = Length::from_inches(20.0);
        assert_eq!(Length::parse("21", most, Units::UsCustomary), Err(NumberProblem::TooHigh { most: 20.0 }));
        assert_eq!(Length::parse("-1", most, Units::UsCustomary), Err(NumberProblem::TooLow { least: 0.0 }));
    }
}
