//! A recipe in grams, for a batch of any size.

use super::apportion::apportion;
use super::percentages::weights;
use crate::facts::{BatchSize, Part};
use crate::ids::Subject;
use crate::units::Grams;

/// A component of a batch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ScaledPart {
    /// Id of the component.
    pub component: Subject,
    /// Weight that the recipe asks for, to the milligram.
    pub exact: Grams,
    /// Weight that can be weighed: at least one step of the scale.
    pub grams: Grams,
}

impl ScaledPart {
    /// Relative rounding error: above zero if more is weighed than the recipe asks for.
    pub fn error(&self) -> f64 {
        let off = self.grams.saturating_sub(self.exact).milligrams() as f64;
        if self.exact.is_positive() { off / self.exact.milligrams() as f64 } else { 0.0 }
    }
}

/// A recipe in grams.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Scaled {
    /// Its components, in the order of the recipe.
    pub parts: Vec<ScaledPart>,
    /// Weight of all of them, as rounded.
    pub total: Grams,
    /// Largest relative rounding error of any component, as an absolute value.
    pub worst: f64,
    /// The smallest batch in which no component is rounded by more than a hundredth of itself.
    pub accurate_batch: Grams,
}

/// Weight to weigh out: rounded to the steps of the scale, but to one step instead of zero, since every part of the
/// recipe goes into the pot. Our own.
pub(crate) fn to_weigh(exact: Grams, step: Grams) -> Grams {
    let rounded = exact.rounded_to(step);
    if exact.is_positive() { rounded.max(step) } else { rounded }
}

/// The grams of each component for a batch, exact and rounded to the steps of the scale, with the rounding error. The
/// exact ones add up to the batch, to the milligram.
///
/// Source: proportion; `ink_recipe_by_weight.csv`. The hundredth is our own.
pub fn scaled(parts: &[Part], size: BatchSize, step: Grams) -> Scaled {
    let weights = weights(parts);
    let only: Vec<i64> = weights.iter().map(|(_, weight)| *weight).collect();
    let exact = apportion(&only, size.whole(parts).milligrams());
    let rows: Vec<ScaledPart> = weights
        .iter()
        .zip(exact)
        .map(|((component, _), exact)| {
            let exact = Grams::from_milligrams(exact);
            ScaledPart { component: *component, exact, grams: to_weigh(exact, step) }
        })
        .collect();
    let all: i64 = only.iter().sum();
    let least = only.iter().copied().filter(|weight| *weight > 0).min().unwrap_or(0);
    Scaled {
        total: rows.iter().map(|row| row.grams).sum(),
        worst: rows.iter().map(|row| row.error().abs()).fold(0.0, f64::max),
        accurate_batch: accurate_batch(step, least as f64 / all.max(1) as f64),
        parts: rows,
    }
}

/// The smallest batch in which rounding to the scale changes a component with this share, 0 to 1, by no more than a
/// hundredth of itself; zero for a share of zero. The hundredth is our own.
pub(crate) fn accurate_batch(step: Grams, part: f64) -> Grams {
    let half = step.milligrams() as f64 / 2.0;
    if part > 0.0 { Grams::from_milligrams((half * 100.0 / part).ceil() as i64) } else { Grams::ZERO }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::Share;
    use std::collections::BTreeMap;
    use uuid::Uuid;

    /// Source: `ink_recipe_by_weight.csv`: by case, its rows of percent, total or base, and grams.
    fn published() -> BTreeMap<&'static str, Vec<[f64; 3]>> {
        let mut cases = BTreeMap::<_, Vec<[f64; 3]>>::new();
        for row in include_str!("../../../tests/data/ink_recipe_by_weight.csv").lines().skip(1) {
            let cells: Vec<&str> = row.split(',').collect();
            cases.entry(cells[0]).or_default().push([3, 4, 5].map(|at: usize| cells[at].parse().unwrap()));
        }
        cases
    }

    fn parts(rows: &[[f64; 3]], on_top: bool) -> Vec<Part> {
        let part = |(at, row): (usize, &[f64; 3])| Part {
            component: Uuid::from_u128(at as u128 + 1),
            share: Share::from_percent(row[0]),
            on_top,
        };
        rows.iter().enumerate().map(part).collect()
    }

    const TENTH: Grams = Grams::from_milligrams(100);

    #[test]
    fn parts_of_the_whole_give_the_published_grams() {
        let cases = published();
        for case in ["published_500g", "computed_730g"] {
            let rows = &cases[case];
            let parts = parts(rows, false);
            let scaled = scaled(&parts, BatchSize::Whole(Grams::from_grams(rows[0][1])), TENTH);
            assert_eq!(scaled.parts.len(), rows.len());
            for (part, row) in scaled.parts.iter().zip(rows) {
                assert!((part.exact.grams() - row[2]).abs() < 0.0051, "{case}: {part:?} {row:?}");
                assert!((part.grams.grams() - row[2]).abs() <= 0.0501, "{case}: {part:?} {row:?}");
            }
            let exact: Grams = scaled.parts.iter().map(|part| part.exact).sum();
            assert_eq!(exact, Grams::from_grams(rows[0][1]));
        }
    }

    #[test]
    fn percent_on_top_of_the_ink_gives_the_published_grams_and_weight() {
        let cases = published();
        let rows = &cases["published_500g_additives"];
        let base = Grams::from_grams(rows[0][1]);
        let mut parts = parts(rows, true);
        parts.insert(0, Part { component: Uuid::from_u128(9), share: Share::WHOLE, on_top: false });
        let scaled = scaled(&parts, BatchSize::Ink(base), TENTH);
        // The weight of the whole is in the source column of the same file.
        assert_eq!(scaled.total, Grams::from_grams(565.0));
        assert_eq!(scaled.parts[0].grams, base);
        for (part, row) in scaled.parts[1..].iter().zip(rows) {
            assert_eq!(part.grams, Grams::from_grams(row[2]));
        }
        assert!(scaled.worst.abs() < 1e-12);
    }

    /// By hand: 3.65 g on a scale of half grams reads 3.5, which is 4.1 % too little.
    #[test]
    fn a_coarse_scale_reports_its_error_and_the_batch_it_needs() {
        let cases = published();
        let half = Grams::from_grams(0.5);
        let parts = parts(&cases["computed_730g"], false);
        let scaled = scaled(&parts, BatchSize::Whole(Grams::from_grams(730.0)), half);
        assert_eq!(scaled.parts[3].grams, Grams::from_grams(3.5));
        assert!((scaled.worst - 0.15 / 3.65).abs() < 1e-9);
        // Half a step is a hundredth of 25 g, and 25 g are half a percent of 5 kg.
        assert_eq!(scaled.accurate_batch, Grams::from_grams(5_000.0));
    }
}
