//! Divides a whole number into parts that add up to it.

use crate::collections::sort_by_key;
use std::cmp::Reverse;

/// Divides `total` in proportion to `weights`, in whole numbers that add up to it exactly; all zero if no weight is
/// positive. No part is off its proportion by one or more, and none is larger than its weight while `total` is no
/// larger than all of them.
///
/// Source: the largest-remainder method (Hamilton's); equal remainders go to the first.
pub(crate) fn apportion(weights: &[i64], total: i64) -> Vec<i64> {
    let sum: i128 = weights.iter().map(|weight| i128::from((*weight).max(0))).sum();
    if sum == 0 || total <= 0 {
        return vec![0; weights.len()];
    }
    let product = |weight: i64| i128::from(weight.max(0)) * i128::from(total);
    let mut parts: Vec<i64> = weights.iter().map(|weight| (product(*weight) / sum) as i64).collect();
    let left = total - parts.iter().sum::<i64>();
    let mut rests: Vec<(i128, usize)> =
        weights.iter().enumerate().map(|(at, weight)| (product(*weight) % sum, at)).collect();
    sort_by_key(&mut rests, |(rest, at)| (Reverse(*rest), *at));
    for (_, at) in rests.into_iter().take(left as usize) {
        parts[at] += 1;
    }
    parts
}

/// Percentages as they are written on a label: with one decimal, or two if a part is below ten percent, and together
/// exactly 100. Unchanged if they do not add up to 100.
///
/// Which parts need two decimals is our own choice: a tenth of a percent is a thirtieth of a part of 3 %.
pub fn written_percents(percents: &[f64]) -> Vec<f64> {
    if (percents.iter().sum::<f64>() - 100.0).abs() > 1e-6 {
        return percents.to_vec();
    }
    let steps = if percents.iter().any(|percent| *percent > 0.0 && *percent < 10.0) { 100.0 } else { 10.0 };
    let weights: Vec<i64> = percents.iter().map(|percent| (percent * 1e9).round() as i64).collect();
    apportion(&weights, (100.0 * steps) as i64).into_iter().map(|part| part as f64 / steps).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_percents_on_a_label_add_up_to_a_hundred() {
        // 469.0, 16.1 and 16.6 g: with one decimal each they would add up to 99.9.
        let total = 469.0 + 16.1 + 16.6;
        let percents: Vec<f64> = [469.0, 16.1, 16.6].iter().map(|grams| grams / total * 100.0).collect();
        let written = written_percents(&percents);
        assert_eq!(written, [93.48, 3.21, 3.31]);
        assert_eq!(written_percents(&[200.0 / 3.0, 100.0 / 3.0]), [66.7, 33.3]);
        assert_eq!(written_percents(&[100.0 / 3.0; 3]), [33.4, 33.3, 33.3]);
        assert_eq!(written_percents(&[50.0, 25.0]), [50.0, 25.0], "an ink with parts on top adds up to more or less");
    }

    #[test]
    fn thirds_of_a_hundred_add_up_to_a_hundred() {
        assert_eq!(apportion(&[1, 1, 1], 100), [34, 33, 33]);
        assert_eq!(apportion(&[0, 0], 100), [0, 0]);
        assert_eq!(apportion(&[3, 1], 0), [0, 0]);
        assert_eq!(apportion(&[], 5), Vec::<i64>::new());
    }

    proptest! {
        #[test]
        fn parts_add_up_and_are_off_by_less_than_one(
            weights in prop::collection::vec(0..2_000_000_000i64, 1..12),
            total in 1..2_000_000_000i64,
        ) {
            let parts = apportion(&weights, total);
            let sum: i64 = weights.iter().sum();
            prop_assert_eq!(parts.iter().sum::<i64>(), if sum == 0 { 0 } else { total });
            for (weight, part) in weights.iter().zip(&parts) {
                let off = i128::from(*part) * i128::from(sum) - i128::from(*weight) * i128::from(total);
                prop_assert!(sum == 0 || off.abs() < i128::from(sum));
                prop_assert!(total > sum || part <= weight);
            }
        }
    }
}
