//! How sure a forecast may sound.

/// A chance in words, the best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Likelihood {
    /// At least 95 %.
    Sure,
    /// At least 60 %.
    Likely,
    /// Between the others.
    Even,
    /// At most 40 %.
    Unlikely,
    /// At most 5 %.
    No,
}

/// Probability from which something may sound certain; its complement for the contrary.
pub(crate) const SURE: f64 = 0.95;
/// From which it is likely.
const LIKELY: f64 = 0.6;

/// A probability as it may be said.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chance {
    /// The probability, 0 to 1.
    pub probability: f64,
    /// In words.
    pub likelihood: Likelihood,
    /// In percent, 1 to 99: a forecast is never certain. `None` as long as it rests on a guess alone.
    pub percent: Option<u8>,
}

impl Chance {
    /// How a probability may be said. Nothing is certain that rests on a guess alone.
    pub fn of(probability: f64, is_only_guess: bool) -> Self {
        let is_known = !is_only_guess;
        let likelihood = match probability {
            p if p >= SURE && is_known => Likelihood::Sure,
            p if p >= LIKELY => Likelihood::Likely,
            p if p > 1.0 - LIKELY => Likelihood::Even,
            p if p > 1.0 - SURE || !is_known => Likelihood::Unlikely,
            _ => Likelihood::No,
        };
        let percent = is_known.then(|| (probability * 100.0).round().clamp(1.0, 99.0) as u8);
        Self { probability, likelihood, percent }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_sounds_certain_below_95_percent() {
        let said = |probability: f64| Chance::of(probability, false).likelihood;
        for percent in 6..95 {
            let said = said(f64::from(percent) / 100.0);
            assert!(!matches!(said, Likelihood::Sure | Likelihood::No), "{percent} %: {said:?}");
        }
        assert_eq!([said(0.95), said(0.94), said(0.5), said(0.05)], {
            [Likelihood::Sure, Likelihood::Likely, Likelihood::Even, Likelihood::No]
        });
        assert_eq!(Chance::of(1.0, false).percent, Some(99));
    }

    #[test]
    fn a_guess_alone_gives_no_percentage_and_no_certainty() {
        let said = [0.99, 0.01].map(|probability| Chance::of(probability, true));
        assert_eq!(said.map(|chance| chance.likelihood), [Likelihood::Likely, Likelihood::Unlikely]);
        assert_eq!(said.map(|chance| chance.percent), [None, None]);
    }
}
