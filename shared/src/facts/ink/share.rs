//! A share of a whole, as recipes use it.

use crate::codec::Encode;
use crate::units::{NumberProblem, parse_number};
use serde::{Deserialize, Serialize};

/// A share of a whole, stored in billionths: fine enough that a recipe computed from a pot gives its grams back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
#[serde(transparent)]
pub struct Share {
    billionths: u32,
}

/// Billionths in a percent.
const PERCENT: f64 = 1e7;

impl Share {
    /// 100 %.
    pub const WHOLE: Self = Self { billionths: 1_000_000_000 };
    /// Largest share that is stored: parts on top may weigh up to four times the ink.
    pub const MOST: Self = Self { billionths: 4_000_000_000 };

    /// From the billionths that are stored.
    pub const fn from_billionths(billionths: u32) -> Self {
        Self { billionths }
    }

    /// The billionths that are stored.
    pub fn billionths(self) -> u32 {
        self.billionths
    }

    /// From percent.
    pub fn from_percent(percent: f64) -> Self {
        Self { billionths: (percent * PERCENT).round() as u32 }
    }

    /// In percent.
    pub fn percent(self) -> f64 {
        f64::from(self.billionths) / PERCENT
    }

    /// Percent as a form shows it: every stored decimal, without trailing zeros.
    pub fn text(self) -> String {
        let text = format!("{:.7}", self.percent());
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    }

    /// Parses percent between `least` and `most`.
    ///
    /// # Errors
    /// [`NumberProblem`] if it is not a number or out of bounds.
    pub fn parse(text: &str, least: f64, most: f64) -> Result<Self, NumberProblem> {
        parse_number(text, least, most).map(Self::from_percent)
    }

    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(self) -> bool {
        self <= Self::MOST
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_hundredth_of_a_percent_reads_back_as_it_was_typed() {
        for hundredths in 0..=40_000 {
            let typed = (f64::from(hundredths) / 100.0).to_string();
            assert_eq!(Share::parse(&typed, 0.0, 400.0).unwrap().text(), typed);
        }
        assert_eq!(Share::parse("100", 0.0, 400.0), Ok(Share::WHOLE));
        assert_eq!(Share::parse("401", 0.0, 400.0), Err(NumberProblem::TooHigh { most: 400.0 }));
    }
}
