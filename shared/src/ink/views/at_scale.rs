//! Checks a scale reading while it is typed: how much is in, and how much is still to pour.

use crate::ink::pot::weigh_in::tolerance;
use crate::ink::{WeighInView, WeighRow};
use crate::units::{Grams, NumberProblem, Units, WeightUnit};

/// What a typed reading means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ScaleEntry {
    /// Nothing was typed.
    Nothing,
    /// It is not a weight, or no more than the scale showed before.
    Wrong(NumberProblem),
    /// Less than is still to pour.
    Short {
        /// Weight that went in.
        poured: Grams,
        /// Weight still to pour.
        to_go: Grams,
    },
    /// What is still to pour, within the tolerance.
    On {
        /// Weight that went in.
        poured: Grams,
    },
    /// More than is still to pour.
    Over {
        /// Weight that went in.
        poured: Grams,
        /// Weight in excess.
        by: Grams,
    },
}

/// What a typed reading means for a component of a weigh-in. With `total` the text is everything the scale shows with
/// the pot on it, otherwise the weight poured alone.
pub fn check_scale_entry(view: &WeighInView, row: &WeighRow, text: &str, total: bool, units: Units) -> ScaleEntry {
    if text.trim().is_empty() {
        return ScaleEntry::Nothing;
    }
    let before = if total { view.on_scale } else { Grams::ZERO };
    let poured = match Grams::parse(text, Grams::ZERO, before.saturating_add(Grams::MOST), units) {
        Ok(weight) => weight.saturating_sub(before),
        Err(problem) => return ScaleEntry::Wrong(problem),
    };
    let least = Grams::from_milligrams(1);
    if poured < least {
        return ScaleEntry::Wrong(NumberProblem::TooLow { least: before.saturating_add(least).in_units(units) });
    }
    let (to_go, tolerance) = (row.step.to_go().saturating_sub(poured), tolerance(row.step.target, view.scale_step));
    if to_go > tolerance {
        ScaleEntry::Short { poured, to_go }
    } else if Grams::ZERO.saturating_sub(to_go) > tolerance {
        ScaleEntry::Over { poured, by: Grams::ZERO.saturating_sub(to_go) }
    } else {
        ScaleEntry::On { poured }
    }
}

/// Number of decimals for readings of a scale with steps of `step`, in grams or ounces.
pub fn scale_decimals(step: Grams, units: Units) -> usize {
    let step = step.milligrams().max(1);
    match units.weight {
        // Enough to distinguish every step from the next.
        WeightUnit::Grams => [1000, 100, 10].iter().position(|unit| step % unit == 0).unwrap_or(3),
        // Enough that no step is lost.
        WeightUnit::Ounces => [28_350, 2_835, 284, 29].iter().position(|unit| step >= *unit).unwrap_or(4),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// An ounce is 28,349.5 mg, the hundredth of it 283.5 and the thousandth 28.3: a tenth of a gram needs
    /// thousandths, a whole gram hundredths.
    #[test]
    fn a_weight_is_shown_as_finely_as_the_scale_reads() {
        let decimals = |milligrams, units| scale_decimals(Grams::from_milligrams(milligrams), units);
        for (step, metric, inch) in
            [(1, 3, 4), (10, 2, 4), (50, 2, 3), (100, 1, 3), (500, 1, 2), (1_000, 0, 2), (5_000, 0, 1)]
        {
            assert_eq!(
                [decimals(step, Units::METRIC), decimals(step, Units::US.with_ounces())],
                [metric, inch],
                "{step} mg"
            );
        }
    }
}
