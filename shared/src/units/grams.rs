//! Weight of ink: what is poured, what a pot holds, what is left on the shelf.

use super::{NumberProblem, Units, parse_number};
use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// A weight, kept in milligrams. Signed, so that a difference is one too.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
#[serde(transparent)]
pub struct Grams {
    milligrams: i64,
}

/// Milligrams in an ounce: 28.349523125 g by definition (international avoirdupois).
const OUNCE: f64 = 28_349.523_125;

impl Grams {
    /// Nothing.
    pub const ZERO: Self = Self { milligrams: 0 };
    /// More than any shop pours or keeps of one thing: a tonne.
    pub const MOST: Self = Self { milligrams: 1_000_000_000 };

    /// From grams, rounded to a milligram.
    pub fn from_grams(grams: f64) -> Self {
        Self { milligrams: (grams * 1000.0).round() as i64 }
    }

    /// In grams.
    pub fn grams(self) -> f64 {
        self.milligrams as f64 / 1000.0
    }

    /// From the milligrams that are stored.
    pub const fn from_milligrams(milligrams: i64) -> Self {
        Self { milligrams }
    }

    /// The milligrams that are stored.
    pub fn milligrams(self) -> i64 {
        self.milligrams
    }

    /// In ounces, or in grams.
    pub fn in_units(self, units: Units) -> f64 {
        match units {
            Units::UsCustomary => self.milligrams as f64 / OUNCE,
            Units::Metric => self.grams(),
        }
    }

    /// From ounces, or from grams.
    pub fn from_units(value: f64, units: Units) -> Self {
        match units {
            Units::UsCustomary => Self { milligrams: (value * OUNCE).round() as i64 },
            Units::Metric => Self::from_grams(value),
        }
    }

    /// As a form shows it: grams to the milligram, ounces to the ten-thousandth, no trailing noughts.
    pub fn text(self, units: Units) -> String {
        let text = match units {
            Units::UsCustomary => format!("{:.4}", self.in_units(units)),
            Units::Metric => format!("{:.3}", self.grams()),
        };
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    }

    /// Reads a weight between `least` and `most`, in ounces or grams as the device is set.
    ///
    /// # Errors
    /// [`NumberProblem`] when it is no number or out of bounds.
    pub fn parse(text: &str, least: Self, most: Self, units: Units) -> Result<Self, NumberProblem> {
        // Bounds as a person would read them; what they cut off or let in is below any shop's scale.
        let round = |bound: Self| (bound.in_units(units) * 10_000.0).round() / 10_000.0;
        parse_number(text, round(least), round(most)).map(|value| Self::from_units(value, units))
    }

    /// The nearest weight that a scale reading in steps of `step` can show; itself where there is no step.
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
    fn every_tenth_of_a_gram_and_hundredth_of_an_ounce_reads_back_as_it_was_typed() {
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
    fn a_scale_rounds_to_its_own_step_the_nearest_way() {
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
    fn a_weight_past_the_bound_is_refused_in_the_units_typed() {
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
    fn the_ends_of_the_number_do_not_overflow() {
        let (low, high) = (Grams::from_milligrams(i64::MIN), Grams::from_milligrams(i64::MAX));
        assert_eq!(high.saturating_add(Grams::MOST), high);
        assert_eq!(low.saturating_sub(Grams::MOST), low);
        assert_eq!(low.max_zero(), Grams::ZERO);
        assert!(high.rounded_to(Grams::from_milligrams(100)) > Grams::MOST);
        assert!(low.rounded_to(Grams::from_milligrams(100)) < Grams::ZERO);
    }
}
