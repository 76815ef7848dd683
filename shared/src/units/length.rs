//! Lengths: placement, off-contact, flash distance, heated length.

use super::quantity::{Spelling, parse_quantity};
use super::{LengthUnit, NumberProblem, Quantity, Units};
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

/// Units of length as they may be typed, in micrometres. The quotes are those of keyboards that curl them, and the
/// signs for feet and inches.
const SPELLINGS: [Spelling; 5] = [
    (&["in", "inch", "inches", "\"", "\u{201d}", "\u{2033}", "''", "pulg", "pulgada", "pulgadas"], UM_PER_INCH),
    (&["cm"], 1e4),
    (&["mm"], 1e3),
    (&["ft", "foot", "feet", "'", "\u{2019}", "\u{2032}", "pie", "pies"], UM_PER_INCH * 12.0),
    (&["m"], 1e6),
];

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
        match units.length {
            LengthUnit::Inches => self.inches(),
            LengthUnit::Centimetres => self.millimetres() / 10.0,
        }
    }

    /// From inches or centimetres.
    pub fn from_units(value: f64, units: Units) -> Self {
        match units.length {
            LengthUnit::Inches => Self::from_inches(value),
            LengthUnit::Centimetres => Self::from_millimetres(value * 10.0),
        }
    }

    /// As form text, in inches or centimetres: a [`fraction`](Self::fraction), or as many decimals as the same length
    /// needs to read back, up to five in inches. Thirty-seconds of an inch are written as they were typed.
    pub fn text(self, units: Units) -> String {
        match units.length {
            LengthUnit::Inches => self.inches_text(),
            LengthUnit::Centimetres => shortest(self.in_units(units), |value| Self::from_units(value, units) == self),
        }
    }

    /// As [`text`](Self::text), in inches or millimetres, in which small gaps are measured.
    pub fn small_text(self, units: Units) -> String {
        match units.length {
            LengthUnit::Inches => self.inches_text(),
            LengthUnit::Centimetres => shortest(self.millimetres(), |value| Self::from_millimetres(value) == self),
        }
    }

    /// As on an inch rule, such as `3 1/2`; `None` if it is no whole number of sixteenths of an inch.
    ///
    /// ```
    /// use lastpull_core::units::Length;
    ///
    /// assert_eq!(Length::from_inches(3.5).fraction().as_deref(), Some("3 1/2"));
    /// assert_eq!(Length::from_inches(0.125).fraction().as_deref(), Some("1/8"));
    /// assert_eq!(Length::from_millimetres(3.0).fraction(), None);
    /// ```
    pub fn fraction(self) -> Option<String> {
        let parts = (self.inches() * 16.0).round() as i32;
        (parts >= 0 && Self::from_inches(f64::from(parts) / 16.0) == self).then(|| fraction_text(parts, 16))
    }

    /// The longest fraction of an inch, in thirty-seconds, that is not above it: a limit in the notation of a
    /// [`fraction`](Self::fraction), where what is within the fraction is within the limit. `None` below a thirty-second.
    ///
    /// ```
    /// use lastpull_core::units::Length;
    ///
    /// assert_eq!(Length::from_millimetres(1.0).fraction_within().as_deref(), Some("1/32"));
    /// ```
    pub fn fraction_within(self) -> Option<String> {
        let parts = (self.inches() * 32.0).floor() as i32;
        (parts > 0).then(|| fraction_text(parts, 32))
    }

    fn inches_text(self) -> String {
        if let Some(fraction) = self.fraction() {
            return fraction;
        }
        let on_the_rule = (self.inches() * 32.0).round() / 32.0;
        let is_meant = Self::from_inches(on_the_rule) == self;
        let value = if is_meant { on_the_rule } else { self.inches() };
        shortest(value, |value| Self::from_inches(value) == self)
    }

    /// Parses a length between 0 and `most`: a number in inches or centimetres by `units`, or with its unit. Fractions
    /// such as `1 1/2` are accepted.
    ///
    /// # Errors
    /// [`NumberProblem`] if it is not a number, has another unit or is out of bounds.
    pub fn parse(text: &str, most: Self, units: Units) -> Result<Self, NumberProblem> {
        match units.length {
            LengthUnit::Inches => Self::parse_in(text, UM_PER_INCH, most),
            LengthUnit::Centimetres => Self::parse_in(text, 1e4, most),
        }
    }

    /// As [`parse`](Self::parse), with a bare number in inches or millimetres, in which small gaps are measured.
    ///
    /// # Errors
    /// As [`parse`](Self::parse).
    pub fn parse_small(text: &str, most: Self, units: Units) -> Result<Self, NumberProblem> {
        match units.length {
            LengthUnit::Inches => Self::parse_in(text, UM_PER_INCH, most),
            LengthUnit::Centimetres => Self::parse_in(text, 1e3, most),
        }
    }

    fn parse_in(text: &str, own: f64, most: Self) -> Result<Self, NumberProblem> {
        let bounds = [0.0, f64::from(most.micrometres)];
        let micrometres = parse_quantity(text, Quantity::Length, &SPELLINGS, own, bounds)?;
        Ok(Self { micrometres: micrometres.round() as i32 })
    }
}

/// So many parts of an inch, as on a rule.
fn fraction_text(parts: i32, mut below: i32) -> String {
    let (whole, mut above) = (parts / below, parts % below);
    while above > 0 && above % 2 == 0 {
        (above, below) = (above / 2, below / 2);
    }
    match (whole, above) {
        (whole, 0) => whole.to_string(),
        (0, above) => format!("{above}/{below}"),
        (whole, above) => format!("{whole} {above}/{below}"),
    }
}

/// Most decimals: a hundred-thousandth of an inch is a quarter of a micrometre.
const MOST_DECIMALS: usize = 5;

/// A value with the fewest decimals with which it still reads back.
pub(super) fn shortest(value: f64, is_same: impl Fn(f64) -> bool) -> String {
    let reads_back = |text: &String| text.parse().is_ok_and(&is_same);
    let mut texts = (0..MOST_DECIMALS).map(|decimals| format!("{value:.decimals$}"));
    texts.find(reads_back).unwrap_or_else(|| format!("{value:.MOST_DECIMALS$}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_inch_is_twenty_five_point_four_millimetres() {
        assert!((Length::from_inches(3.0).millimetres() - 76.2).abs() < 1e-9);
        assert!((Length::from_units(7.5, Units::METRIC).inches() - 7.5 / 2.54).abs() < 1e-4);
    }

    #[test]
    fn a_length_reads_back_as_it_was_typed() {
        let most = Length::from_inches(40.0);
        for sixteenths in 0..640 {
            let typed = format!("{sixteenths}/16");
            let length = Length::parse(&typed, most, Units::US).unwrap();
            assert_eq!(length, Length::from_inches(f64::from(sixteenths) / 16.0));
            let text = length.text(Units::US);
            assert_eq!(Length::parse(&text, most, Units::US), Ok(length), "{typed}");
            assert_eq!(length.small_text(Units::US), text, "{typed}");
        }
        for tenths in 0..1000 {
            let typed = f64::from(tenths) / 10.0;
            let length = Length::parse(&typed.to_string(), most, Units::METRIC).unwrap();
            assert_eq!(length.text(Units::METRIC), typed.to_string());
        }
        assert_eq!(Length::from_millimetres(1.5).small_text(Units::METRIC), "1.5");
    }

    #[test]
    fn every_stored_length_reads_back_as_it_is() {
        let most = Length::from_inches(100.0);
        let stored = |micrometres| Length::from_micrometres(micrometres);
        for length in (0..26_000).chain(1_000_000..1_001_000).map(stored) {
            for units in [Units::US, Units::METRIC] {
                assert_eq!(Length::parse(&length.text(units), most, units), Ok(length), "{}", length.text(units));
            }
            let inches = length.small_text(Units::US);
            assert_eq!(Length::parse(&inches, most, Units::US), Ok(length), "{inches}");
            let millimetres = length.small_text(Units::METRIC).parse().map(Length::from_millimetres);
            assert_eq!(millimetres, Ok(length));
        }
    }

    #[test]
    fn every_sixty_fourth_of_an_inch_reads_back_as_it_was_stored() {
        let most = Length::from_inches(40.0);
        for parts in 0..=40 * 64 {
            let length = Length::parse(&format!("{parts}/64"), most, Units::US).unwrap();
            let text = length.text(Units::US);
            assert_eq!(Length::parse(&text, most, Units::US), Ok(length), "{parts}/64 as {text}");
            // Thirty-seconds that are no sixteenths.
            if parts % 4 == 2 {
                assert_eq!(text, (f64::from(parts) / 64.0).to_string(), "{parts}/64");
            }
        }
    }

    #[test]
    fn a_length_out_of_bounds_is_refused() {
        let most = Length::from_inches(20.0);
        assert_eq!(Length::parse("21", most, Units::US), Err(NumberProblem::TooHigh { most: 20.0 }));
        assert_eq!(Length::parse("-1", most, Units::US), Err(NumberProblem::TooLow { least: 0.0 }));
    }

    #[test]
    fn the_longest_length_reads_back_in_both_units_and_a_reported_bound_is_accepted() {
        let inch = Length::from_inches(1.0);
        for units in [Units::US, Units::METRIC] {
            assert_eq!(Length::parse_small(&inch.small_text(units), inch, units), Ok(inch));
            for millimetres in 1..500 {
                let most = Length::from_millimetres(f64::from(millimetres));
                assert_eq!(Length::parse(&most.text(units), most, units), Ok(most));
                let Err(NumberProblem::TooHigh { most: bound }) = Length::parse("900", most, units) else { panic!() };
                assert!(Length::parse(&bound.to_string(), most, units).is_ok(), "{bound}");
            }
        }
        assert_eq!(Length::parse_small("26", inch, Units::METRIC), Err(NumberProblem::TooHigh { most: 25.4 }));
        let refused = Length::parse_small("4", Length::from_millimetres(100.0), Units::US);
        assert_eq!(refused, Err(NumberProblem::TooHigh { most: 3.93 }));
    }

    #[test]
    fn sixteenths_of_an_inch_are_written_as_on_a_rule() {
        for (inches, text) in [
            (0.0, "0"),
            (0.0625, "1/16"),
            (0.125, "1/8"),
            (0.75, "3/4"),
            (3.0, "3"),
            (3.5, "3 1/2"),
            (12.9375, "12 15/16"),
            (0.03125, "0.03125"),
            (18.33, "18.33"),
        ] {
            assert_eq!(Length::from_inches(inches).text(Units::US), text);
        }
        assert_eq!(Length::from_micrometres(-25_400).fraction(), None);
    }

    #[test]
    fn a_limit_is_written_as_a_fraction_that_is_within_it() {
        for (micrometres, text) in [(1_000, "1/32"), (6_350, "1/4"), (6_349, "7/32"), (25_400, "1"), (40_000, "1 9/16")]
        {
            assert_eq!(Length::from_micrometres(micrometres).fraction_within().as_deref(), Some(text));
        }
        for micrometres in [793, 0, -1_000] {
            assert_eq!(Length::from_micrometres(micrometres).fraction_within(), None);
        }
    }
}
