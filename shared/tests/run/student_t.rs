//! Student's t distribution, through the regularised incomplete beta function, for what the forecast is compared with.
//!
//! P(T ≤ t) = 1 − ½ I(ν/(ν+t²); ν/2, ½) for t ≥ 0. Source: NIST Digital Library of Mathematical
//! Functions, 8.17; the incomplete beta itself is the `puruspe` crate's.

/// Cumulative distribution: the probability that Student's t with `degrees_of_freedom` degrees is below `t`.
fn t_cdf(t: f64, degrees_of_freedom: f64) -> f64 {
    let x = degrees_of_freedom / (degrees_of_freedom + t * t);
    let tail = 0.5 * puruspe::betai(degrees_of_freedom / 2.0, 0.5, x);
    if t >= 0.0 { 1.0 - tail } else { tail }
}

/// The inverse of [`t_cdf`]: the t with this `chance` (strictly between 0 and 1) below it. Regula
/// falsi with the Illinois rule (M. Dowell, P. Jarratt, BIT 11, 1971) inside a bracket: a dozen evaluations
/// of [`t_cdf`], and it cannot diverge.
pub fn t_quantile(chance: f64, degrees_of_freedom: f64) -> f64 {
    let off = |t: f64| t_cdf(t, degrees_of_freedom) - chance;
    let (mut low, mut high) = (-1.0_f64, 1.0_f64);
    while off(low) > 0.0 && low > -1e9 {
        low *= 2.0;
    }
    while off(high) < 0.0 && high < 1e9 {
        high *= 2.0;
    }
    let (mut at_low, mut at_high) = (off(low), off(high));
    for _ in 0..200 {
        if high - low < 1e-11 * high.abs().max(1.0) {
            break;
        }
        let t = (low * at_high - high * at_low) / (at_high - at_low);
        let at = off(t);
        if at == 0.0 {
            return t;
        }
        if (at > 0.0) == (at_high > 0.0) {
            (high, at_high) = (t, at);
            at_low /= 2.0;
        } else {
            (low, at_low) = (t, at);
            at_high /= 2.0;
        }
    }
    f64::midpoint(low, high)
}

/// Source: column `t_quantile` of `tests/data/pace_prediction_intervals.csv` (11 degrees).
#[test]
fn quantiles_agree_with_the_computed_column() {
    for row in include_str!("../data/pace_prediction_intervals.csv").lines().skip(1) {
        let cells: Vec<f64> = row.split(',').map(|cell| cell.parse().unwrap()).collect();
        let t = t_quantile(0.5 + cells[1] / 2.0, 11.0);
        assert!((t - cells[2]).abs() < 1e-7, "{t} {row}");
    }
}
