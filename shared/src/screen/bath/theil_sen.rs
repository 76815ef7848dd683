//! A line fitted to points with outliers: a batch forgotten overnight must not make a bath look spent.

use crate::collections::sort_by;

/// A robust line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Median of the slopes between all pairs of points.
    pub slope: f64,
    /// Median of `y − slope × x` over all points.
    pub intercept: f64,
    /// Lower end of the 80 % interval of the slope.
    pub least: f64,
    /// Upper end of the 80 % interval of the slope.
    pub most: f64,
}

/// Quantile of the normal distribution for a two-sided 80 % interval.
const Z: f64 = 1.281_551_565_544_600_4;

/// The median of a list; the mean of the two middle values if its length is even; `None` if it is empty.
pub fn median(values: &[f64]) -> Option<f64> {
    let mut sorted = values.to_vec();
    sort_by(&mut sorted, f64::total_cmp);
    let half = sorted.len() / 2;
    let upper = *sorted.get(half)?;
    if sorted.len() % 2 == 1 { Some(upper) } else { Some(f64::midpoint(*sorted.get(half - 1)?, upper)) }
}

/// The line through points (x, y), with the 80 % interval of its slope; `None` if no two points differ in
/// x. The points must be in order of x. The cost grows with the square of their number: meant for some
/// dozens.
///
/// Source: P. K. Sen, "Estimates of the regression coefficient based on Kendall's tau", Journal of the
/// American Statistical Association 63, 1968, including its treatment of equal values of y.
pub fn theil_sen(points: &[(f64, f64)]) -> Option<Line> {
    let mut slopes = Vec::new();
    for (place, (x, y)) in points.iter().enumerate() {
        slopes.extend(points.iter().skip(place + 1).filter(|(to, _)| to > x).map(|(to, up)| (up - y) / (to - x)));
    }
    sort_by(&mut slopes, f64::total_cmp);
    let slope = median(&slopes)?;
    let rest: Vec<f64> = points.iter().map(|(x, y)| y - slope * x).collect();
    let n = points.len() as f64;
    let spread = (n * (n - 1.0) * (2.0 * n + 5.0) - ties(points)) / 18.0;
    let reach = Z * spread.max(0.0).sqrt();
    let pairs = slopes.len() as f64;
    let last = slopes.len() - 1;
    let lower = (((pairs - reach) / 2.0).round() - 1.0).max(0.0) as usize;
    let upper = (f64::midpoint(pairs, reach).round().max(0.0) as usize).min(last);
    let at = |place: usize| slopes.get(place).copied();
    Some(Line { slope, intercept: median(&rest)?, least: at(lower)?, most: at(upper)? })
}

/// What equal values of y subtract from the variance of their ranks.
fn ties(points: &[(f64, f64)]) -> f64 {
    let mut values: Vec<f64> = points.iter().map(|(_, y)| *y).collect();
    sort_by(&mut values, f64::total_cmp);
    let groups = values.chunk_by(|a, b| a.total_cmp(b).is_eq()).map(|group| group.len() as f64);
    groups.map(|k| k * (k - 1.0) * (2.0 * k + 5.0)).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: `theil_sen.csv`.
    #[test]
    fn the_line_agrees_with_an_independent_library() {
        let rows = include_str!("../../../tests/data/theil_sen.csv");
        let mut read = 0;
        for row in rows.lines().skip(1) {
            let cells: Vec<&str> = row.split(',').collect();
            let list = |text: &str| text.split(' ').map(|n| n.parse().unwrap()).collect::<Vec<f64>>();
            let points: Vec<(f64, f64)> = list(cells[1]).into_iter().zip(list(cells[2])).collect();
            let line = theil_sen(&points).unwrap();
            for (ours, theirs) in [line.slope, line.intercept, line.least, line.most].iter().zip(&cells[3..]) {
                assert!((ours - theirs.parse::<f64>().unwrap()).abs() < 1e-8, "{}: {line:?}", cells[0]);
            }
            read += 1;
        }
        assert_eq!(read, 8);
    }

    #[test]
    fn one_point_gives_no_line_and_an_empty_list_no_median() {
        assert_eq!(theil_sen(&[(1.0, 2.0)]), None);
        assert_eq!(theil_sen(&[(1.0, 2.0), (1.0, 3.0)]), None);
        assert_eq!(median(&[]), None);
        assert_eq!(median(&[4.0, 1.0]), Some(2.5));
    }
}
