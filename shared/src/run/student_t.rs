//! Student's t distribution, through the regularised incomplete beta function.
//!
//! P(T ≤ t) = 1 − ½ I(ν/(ν+t²); ν/2, ½) for t ≥ 0. Source: NIST Digital Library of Mathematical
//! Functions, 8.17; the incomplete beta itself is the `puruspe` crate's.

/// The chance that a t of `freedom` degrees lies below `t`.
pub fn chance_below(t: f64, freedom: f64) -> f64 {
    let x = freedom / (freedom + t * t);
    let tail = 0.5 * puruspe::betai(freedom / 2.0, 0.5, x);
    if t >= 0.0 { 1.0 - tail } else { tail }
}

/// The t that a t of `freedom` degrees lies below with this `chance`, for a chance strictly between
/// 0 and 1. Bisection on [`chance_below`]: slow and sure, a few microseconds.
pub fn quantile(chance: f64, freedom: f64) -> f64 {
    let (mut low, mut high) = (-1.0_f64, 1.0_f64);
    while chance_below(low, freedom) > chance && low > -1e9 {
        low *= 2.0;
    }
    while chance_below(high, freedom) < chance && high < 1e9 {
        high *= 2.0;
    }
    for _ in 0..100 {
        let middle = f64::midpoint(low, high);
        if chance_below(middle, freedom) < chance {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: column `t_quantile` of `tests/data/pace_prediction_intervals.csv` (11 degrees).
    #[test]
    fn quantiles_agree_with_the_computed_column() {
        for row in include_str!("../../tests/data/pace_prediction_intervals.csv").lines().skip(1) {
            let cells: Vec<f64> = row.split(',').map(|cell| cell.parse().unwrap()).collect();
            let t = quantile(0.5 + cells[1] / 2.0, 11.0);
            assert!((t - cells[2]).abs() < 1e-7, "{t} {row}");
        }
    }

    #[test]
    fn chance_and_quantile_undo_each_other() {
        for freedom in [1.0, 4.0, 30.0] {
            for chance in [0.01, 0.1, 0.5, 0.9, 0.999] {
                assert!((chance_below(quantile(chance, freedom), freedom) - chance).abs() < 1e-9);
            }
        }
    }
}
