//! A recipe's parts by weight and in percent.

use super::apportion::apportion;
use crate::facts::{Part, Share};
use crate::ids::Subject;

/// The weight of each component relative to the others, parts of the ink and parts on top together, each component
/// once, in the order of the recipe.
pub(crate) fn weights(parts: &[Part]) -> Vec<(Subject, i64)> {
    let mut weights: Vec<(Subject, i64)> = Vec::new();
    for part in parts {
        let weight = i64::from(part.share.billionths());
        match weights.iter_mut().find(|(component, _)| *component == part.component) {
            Some((_, sum)) => *sum += weight,
            None => weights.push((part.component, weight)),
        }
    }
    weights
}

/// Each component's percent of the whole pot, on-top parts included, each component once. The percentages add up to
/// 100.
///
/// ```
/// # use lastpull_core::ink::{Part, Share, percentages};
/// # use uuid::Uuid;
/// let part = |id, percent, on_top| {
///     Part { component: Uuid::from_u128(id), share: Share::from_percent(percent), on_top }
/// };
/// // 500 g of ink with 50 g and 15 g on top weigh 565 g.
/// let recipe = [part(1, 100.0, false), part(2, 10.0, true), part(3, 3.0, true)];
/// let ink = percentages(&recipe)[0].1;
/// assert!((ink - 500.0 / 565.0 * 100.0).abs() < 1e-9);
/// ```
pub fn percentages(parts: &[Part]) -> Vec<(Subject, f64)> {
    percent_of(&weights(parts))
}

/// Weights as percent of their sum; empty if that is zero.
pub(crate) fn percent_of(weights: &[(Subject, i64)]) -> Vec<(Subject, f64)> {
    let sum: i64 = weights.iter().map(|(_, weight)| weight).sum();
    if sum <= 0 {
        return Vec::new();
    }
    weights.iter().map(|(component, weight)| (*component, *weight as f64 * 100.0 / sum as f64)).collect()
}

/// Weights as a recipe of parts of the whole, to the billionth; smaller ones are left out.
pub(crate) fn parts_of(weights: &[(Subject, i64)]) -> Vec<Part> {
    let only: Vec<i64> = weights.iter().map(|(_, weight)| *weight).collect();
    let shares = apportion(&only, i64::from(Share::WHOLE.billionths()));
    let parts = weights.iter().zip(shares).map(|((component, _), share)| Part {
        component: *component,
        share: Share::from_billionths(share as u32),
        on_top: false,
    });
    parts.filter(|part| part.share > Share::default()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::is_complete_recipe;
    use proptest::prelude::*;
    use uuid::Uuid;

    fn part(component: u128, percent: f64, on_top: bool) -> Part {
        Part { component: Uuid::from_u128(component), share: Share::from_percent(percent), on_top }
    }

    #[test]
    fn on_top_parts_make_the_whole_weigh_more_than_the_ink() {
        let parts = [part(1, 100.0, false), part(2, 10.0, true), part(3, 3.0, true), part(2, 12.0, true)];
        assert!(is_complete_recipe(&parts));
        let percent: Vec<f64> = percentages(&parts).iter().map(|(_, percent)| *percent).collect();
        assert_eq!(percent.len(), 3);
        assert!((percent[0] - 80.0).abs() < 1e-9 && (percent[1] - 17.6).abs() < 1e-9);
        assert_eq!(percentages(&[]), []);
    }

    #[test]
    fn parts_that_are_not_the_whole_ink_are_no_recipe() {
        assert!(!is_complete_recipe(&[part(1, 99.0, false), part(2, 1.0, true)]));
        assert!(!is_complete_recipe(&[part(1, 100.0, false), part(2, 0.0, false)]));
        assert!(!is_complete_recipe(&[part(1, 100.0, false), part(2, 401.0, true)]));
        assert!(!is_complete_recipe(&[]));
    }

    proptest! {
        #[test]
        fn recipe_percentages_always_sum_to_a_hundred(
            weights in prop::collection::vec((0..5u128, 0..900_000_000i64), 1..12),
            top in prop::collection::vec(1..4_000_000_000u32, 0..4),
        ) {
            let weights: Vec<(Subject, i64)> = weights.iter().map(|(id, weight)| (Uuid::from_u128(*id), *weight)).collect();
            prop_assume!(weights.iter().any(|(_, weight)| *weight > 0));
            let mut parts = parts_of(&weights);
            prop_assert!(is_complete_recipe(&parts));
            let sum = |parts: &[Part]| percentages(parts).iter().map(|(_, percent)| percent).sum::<f64>();
            prop_assert!((sum(&parts) - 100.0).abs() <= 1e-9);
            let on_top = |(at, share): (usize, &u32)| Part {
                component: Uuid::from_u128(at as u128),
                share: Share::from_billionths(*share),
                on_top: true,
            };
            parts.extend(top.iter().enumerate().map(on_top));
            prop_assert!(is_complete_recipe(&parts));
            prop_assert!((sum(&parts) - 100.0).abs() <= 1e-9);
        }
    }
}
