//! Weight of ink: poured, in a pot, or in stock.

use super::quantity::{Spelling, parse_quantity};
use super::{NumberProblem, Quantity, Units, WeightUnit};
use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// A signed weight, stored in milligrams.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
#[serde(transparent)]
pub struct Grams {
    milligrams: i64,
}

/// Milligrams per ounce: 28.349523125 g by definition (international avoirdupois).
const MG_PER_OUNCE: f64 = 28_349.523_125;

/// Units of weight as they may be typed, in milligrams.
const SPELLINGS: [Spelling; 5] = [
    (&["g", "gr", "gram", "grams", "gramo", "gramos"], 1000.0),
    (&["kg", "kilo", "kilos"], 1e6),
    (&["oz", "ounce", "ounces", "onza", "onzas"], MG_PER_OUNCE),
    (&["lb", "lbs", "pound", "pounds", "libra", "libras"], MG_PER_OUNCE * 16.0),
    (&["mg"], 1.0),
];

impl Grams {
    /// Zero.
    pub const ZERO: Self = Self { milligrams: 0 };
    /// More than any shop pours or stores of one thing: a tonne.
    pub const MOST: Self = Self { milligrams: 1_000_000_000 };

    /// From grams, rounded to a milligram.
    pub fn from_grams(grams: f64) -> Self {
        Self { milligrams: (grams * 1000.0).round() as i64 }
    }

    /// In grams.
    pub fn grams(self) -> f64 {
        self.milligrams as f64 / 1000.0
    }

    /// From milligrams.
    pub const fn from_milligrams(milligrams: i64) -> Self {
        Self { milligrams }
    }

    /// In milligrams.
    pub fn milligrams(self) -> i64 {
        self.milligrams
    }

    /// In ounces or grams.
    pub fn in_units(self, units: Units) -> f64 {
        self.milligrams as f64 / scale(units)
    }

    /// From ounces or grams, rounded to a milligram.
    pub fn from_units(value: f64, units: Units) -> Self {
        Self { milligrams: (value * scale(units)).round() as i64 }
    }

    /// As form text: ounces to four decimals or grams to three, without trailing zeros.
    pub fn text(self, units: Units) -> String {
        let text = match units.weight {
            WeightUnit::Ounces => format!("{:.4}", self.in_units(units)),
            WeightUnit::Grams => format!("{:.3}", self.grams()),
        };
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    }

    /// Parses a weight between `least` and `most`: a number in ounces or grams by `units`, or with its unit.
    ///
    /// # Errors
    /// [`NumberProblem`] if it is not a number, has another unit or is out of bounds.
    pub fn parse(text: &str, least: Self, most: Self, units: Units) -> Result<Self, NumberProblem> {
        // The bounds as [`text`](Self::text) writes them; the difference is below the step of any shop's scale.
        let round = |bound: Self| (bound.in_units(units) * 10_000.0).round() / 10_000.0;
        let bounds = [least, most].map(|bound| Self::from_units(round(bound), units).milligrams as f64);
        let milligrams = parse_quantity(text, Quantity::Weight, &SPELLINGS, scale(units), bounds)?;
        Ok(Self { milligrams: milligrams.round() as i64 })
    }

    /// The nearest weight that a scale with steps of `step` can show, half a step rounded away from zero;
    /// unchanged if the step is zero.
    ///
    /// ```
    /// use lastpull_core::units::Grams;
    ///
    /// let step = Grams::from_grams(0.1);
    /// assert_eq!(Grams::from_grams(3.65).rounded_to(step), Grams::from_grams(3.7));
    /// assert_eq!(Grams::from_grams(-3.65).rounded_to(step), Grams::from_grams(-3.7));
    /// ```
    pub fn rounded_to(self, step: Self) -> Self {
        let step = step.milligrams;
        if step <= 1 {
            return self;
        }
        let half = if self.milligrams < 0 { -(step / 2) } else { step / 2 };
        Self { milligrams: self.milligrams.saturating_add(half) / step * step }
    }

    /// Sum of both weights.
    pub fn saturating_add(self, other: Self) -> Self {
        Self { milligrams: self.milligrams.saturating_add(other.milligrams) }
    }

    /// This weight less the other one; negative if the other is more.
    pub fn saturating_sub(self, other: Self) -> Self {
        Self { milligrams: self.milligrams.saturating_sub(other.milligrams) }
    }

    /// This weight, or zero if it is negative.
    pub fn max_zero(self) -> Self {
        self.max(Self::ZERO)
    }

    /// Whether it is more than zero.
    pub fn is_positive(self) -> bool {
        self.milligrams > 0
    }
}

/// Milligrams of the device's unit.
fn scale(units: Units) -> f64 {
    match units.weight {
        WeightUnit::Ounces => MG_PER_OUNCE,
        WeightUnit::Grams => 1000.0,
    }
}

impl std::iter::Sum for Grams {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        all.fold(Self::ZERO, Self::saturating_add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const OUNCES: Units = Units::US.with_ounces();

    /// Source: the international yard and pound agreement, 1959: a pound of 16 ounces is 453.59237 g.
    #[test]
    fn sixteen_ounces_are_a_pound() {
        assert_eq!(Grams::from_units(16.0, OUNCES), Grams::from_grams(453.592));
        assert!((Grams::from_milligrams(453_592_370).in_units(OUNCES) - 16_000.0).abs() < 1e-9);
    }

    #[test]
    fn typed_tenths_of_grams_and_hundredths_of_ounces_read_back() {
        for tenths in 0..9_000 {
            for (units, typed) in [(Units::METRIC, f64::from(tenths) / 10.0), (OUNCES, f64::from(tenths) / 100.0)] {
                let text = typed.to_string();
                let kept = Grams::parse(&text, Grams::ZERO, Grams::MOST, units).unwrap();
                assert_eq!(kept.text(units), text);
            }
        }
        assert_eq!(Grams::from_milligrams(100).text(Units::METRIC), "0.1");
        assert_eq!(Grams::from_milligrams(100_000).text(Units::METRIC), "100");
    }

    #[test]
    fn a_scale_rounds_to_its_nearest_step() {
        let at =
            |milligrams, step| Grams::from_milligrams(milligrams).rounded_to(Grams::from_milligrams(step)).milligrams();
        assert_eq!(at(601_155, 100), 601_200);
        assert_eq!(at(3_649, 100), 3_600);
        assert_eq!(at(3_650, 100), 3_700);
        assert_eq!(at(-3_650, 100), -3_700);
        assert_eq!(at(43_435, 1_000), 43_000);
        assert_eq!(at(2_499, 5_000), 0);
        assert_eq!(at(43_435, 0), 43_435);
    }

    #[test]
    fn a_weight_out_of_bounds_is_refused_in_the_typed_unit() {
        let most = Grams::from_grams(1000.0);
        assert_eq!(
            Grams::parse("1001", Grams::ZERO, most, Units::METRIC),
            Err(NumberProblem::TooHigh { most: 1000.0 })
        );
        assert_eq!(Grams::parse("36", Grams::ZERO, most, OUNCES), Err(NumberProblem::TooHigh { most: 35.27 }));
        assert_eq!(Grams::parse("-1", Grams::ZERO, most, OUNCES), Err(NumberProblem::TooLow { least: 0.0 }));
        assert_eq!(Grams::parse("12,5", Grams::ZERO, most, Units::METRIC), Ok(Grams::from_grams(12.5)));
    }

    #[test]
    fn arithmetic_saturates_at_the_integer_limits() {
        let (low, high) = (Grams::from_milligrams(i64::MIN), Grams::from_milligrams(i64::MAX));
        assert_eq!(high.saturating_add(Grams::MOST), high);
        assert_eq!(low.saturating_sub(Grams::MOST), low);
        assert_eq!(low.max_zero(), Grams::ZERO);
        assert!(high.rounded_to(Grams::from_milligrams(100)) > Grams::MOST);
        assert!(low.rounded_to(Grams::from_milligrams(100)) < Grams::ZERO);
    }
}
