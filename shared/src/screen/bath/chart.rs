//! A small chart of the bath's minutes per screen.

use super::theil_sen::{median, theil_sen};
use super::trend::{BathPoint, bath_pace};

/// Most batches on the chart; the latest are kept.
const MAX_BATCHES: usize = 60;
/// A batch that took more than this many times the median is drawn at the upper edge: one batch forgotten
/// overnight must not flatten the others. Our own.
const OUTLIER_RATIO: f64 = 3.0;
/// Height of the chart as a multiple of its highest value.
const HEADROOM: f64 = 1.12;

/// A batch on the chart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChartBatch {
    /// From 0 for the oldest batch shown to 1 for the latest.
    pub x: f64,
    /// From 0 for no time to 1 at the upper edge.
    pub y: f64,
    /// Minutes per screen.
    pub minutes: f64,
    /// Whether its value is above the upper edge.
    pub beyond: bool,
}

/// The chart: all coordinates are between 0 and 1, to the right and up.
#[derive(Clone, Debug, PartialEq)]
pub struct BathChart {
    /// The batches, oldest first.
    pub batches: Vec<ChartBatch>,
    /// Height of the fresh bath's minutes per screen; `None` until that is known.
    pub fresh: Option<f64>,
    /// Height of the limit at which the bath is recharged.
    pub limit: Option<f64>,
    /// The robust line through the batches, its left and its right end; `None` until the speed is known.
    pub line: Option<[(f64, f64); 2]>,
    /// Minutes per screen at which the bath is recharged.
    pub limit_minutes: Option<f64>,
}

/// The chart of a charge's batches, oldest first; `None` for fewer than two. `recharge_at` is in percent of
/// the fresh bath's minutes per screen.
pub fn bath_chart(points: &[BathPoint], recharge_at: u16) -> Option<BathChart> {
    let pace = bath_pace(points);
    let limit_minutes = pace.map(|pace| pace.fresh * f64::from(recharge_at) / 100.0);
    let drawn = points.get(points.len().saturating_sub(MAX_BATCHES)..)?;
    let (first, last) = (drawn.first()?, drawn.last()?);
    let minutes: Vec<f64> = drawn.iter().map(|point| point.minutes).collect();
    let usual = median(&minutes)? * OUTLIER_RATIO;
    let highest = minutes.iter().copied().filter(|minutes| *minutes <= usual).fold(0.0, f64::max);
    let top = highest.max(limit_minutes.unwrap_or(0.0)) * HEADROOM;
    let width = f64::from(last.screens.saturating_sub(first.screens));
    if drawn.len() < 2 || top <= 0.0 || width <= 0.0 {
        return None;
    }
    let x = |screens: u32| f64::from(screens.saturating_sub(first.screens)) / width;
    let y = |minutes: f64| (minutes / top).clamp(0.0, 1.0);
    let spots: Vec<(f64, f64)> = drawn.iter().map(|point| (x(point.screens), point.minutes)).collect();
    let line = pace.and_then(|_| theil_sen(&spots));
    Some(BathChart {
        batches: drawn
            .iter()
            .map(|point| ChartBatch {
                x: x(point.screens),
                y: y(point.minutes),
                minutes: point.minutes,
                beyond: point.minutes > top,
            })
            .collect(),
        fresh: pace.map(|pace| y(pace.fresh)),
        limit: limit_minutes.map(y),
        line: line.map(|line| [(0.0, y(line.intercept)), (1.0, y(line.intercept + line.slope))]),
        limit_minutes,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn charge(minutes: &[f64]) -> Vec<BathPoint> {
        (1..).zip(minutes).map(|(n, &minutes)| BathPoint { screens: n * 4, count: 4, minutes }).collect()
    }

    #[test]
    fn one_batch_gives_no_chart_and_too_few_batches_no_line() {
        assert_eq!(bath_chart(&[], 150), None);
        assert_eq!(bath_chart(&charge(&[5.0]), 150), None);
        let chart = bath_chart(&charge(&[5.0, 6.0]), 150).unwrap();
        assert_eq!((chart.fresh, chart.limit, chart.line), (None, None, None));
        assert_eq!(chart.batches.iter().map(|batch| batch.x).collect::<Vec<_>>(), [0.0, 1.0]);
    }

    #[test]
    fn the_line_of_a_slowing_bath_rises_below_the_limit() {
        let chart = bath_chart(&charge(&[10.0, 10.0, 10.0, 11.0, 12.0, 12.0, 13.0]), 150).unwrap();
        let (fresh, limit, line) = (chart.fresh.unwrap(), chart.limit.unwrap(), chart.line.unwrap());
        assert!((limit / fresh - 1.5).abs() < 1e-9);
        assert_eq!(chart.limit_minutes, Some(15.0));
        assert!(line[0].1 < line[1].1 && line[1].1 < limit, "{line:?}");
        assert!(limit < 1.0);
    }

    #[test]
    fn a_batch_forgotten_overnight_does_not_flatten_the_others() {
        let chart = bath_chart(&charge(&[10.0, 10.0, 900.0, 10.0, 10.0, 10.0]), 150).unwrap();
        assert!((chart.batches[2].y - 1.0).abs() < 1e-12);
        assert!(chart.batches[2].beyond && !chart.batches[1].beyond);
        assert!(chart.batches[0].y > 0.5);
    }
}
