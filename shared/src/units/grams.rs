//! Weight of ink: poured, in a pot, or in stock.

use super::{NumberProblem, Units, parse_number};
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
        match units {
            Units::UsCustomary => self.milligrams as f64 / MG_PER_OUNCE,
            Units::Metric => self.grams(),
        }
    }

    /// From ounces or grams, rounded to a milligram.
    pub fn from_units(value: f64, units: Units) -> Self {
        match units {
            Units::UsCustomary => Self { milligrams: (value * MG_PER_OUNCE).round() as i64 },
            Units::Metric => Self::from_grams(value),
        }
    }

    /// As form text: ounces to four decimals or grams to three, without trailing zeros.
    pub fn text(self, units: Units) -> String {
        let text = match units {
            Units::UsCustomary => format!("{:.4}", self.in_units(units)),
            Units::Metric => format!("{:.3}", self.grams()),
        };
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    }

    /// Parses a weight between `least` and `most`, in ounces or grams by `units`.
    ///
    /// # Errors
    /// [`NumberProblem`] if it is not a number or out of bounds.
    pub fn parse(text: &str, least: Self, most: Self, units: Units) -> Result<Self, NumberProblem> {
        // Round the bounds to readable numbers; the difference is below the step of any shop's scale.
        let round = |bound: Self| (bound.in_units(units) * 10_000.0).round() / 10_000.0;
        parse_number(text, round(least), round(most)).map(|value| Self::from_units(value, units))
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

impl std::iter::Sum for Grams {
    fn sum<I: Iterator<Item = Self>>(all: I) -> Self {
        all.fold(Self::ZERO, Self::saturating_add)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: the international yard and pound agreement, 1959: a pound of 16 ounces is 453.59237 g.
    #[test]
    fn sixteen_ounces_are_a_pound() {
        assert_eq!(Grams::from_units(16.0, Units::UsCustomary), Grams::from_grams(453.592));
        assert!((Grams::from_milligrams(453_592_370).in_units(Units::UsCustomary) - 16_000.0).abs() < 1e-9);
    }

    #[test]
    fn typed_tenths_of_grams_and_hundredths_of_ounces_read_back() {
        for tenths in 0..9_000 {
            for (units, typed) in
                [(Units::Metric, f64::from(tenths) / 10.0), (Units::UsCustomary, f64::from(tenths) / 100.0)]
            {
                let text = typed.to_string();
                let kept = Grams::parse(&text, Grams::ZERO, Grams::MOST, units).unwrap();
                assert_eq!(kept.text(units), text);
            }
        }
        assert_eq!(Grams::from_milligrams(100).text(Units::Metric), "0.1");
        assert_eq!(Grams::from_milligrams(100_000).text(Units::Metric), "100");
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
            Grams::parse("1001", Grams::ZERO, most, Units::Metric),
            Err(NumberProblem::TooHigh { most: 1000.0 })
        );
        assert_eq!(
            Grams::parse("36", Grams::ZERO, most, Units::UsCustomary),
            Err(NumberProblem::TooHigh { most: 35.274 })
        );
        assert_eq!(
            Grams::parse("-1", Grams::ZERO, most, Units::UsCustomary),
            Err(NumberProblem::TooLow { least: 0.0 })
        );
        assert_eq!(Grams::parse("12,5", Grams::ZERO, most, Units::Metric), Ok(Grams::from_grams(12.5)));
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
