//! Is the bath slowing down, and for how many more screens is it good?

use super::theil_sen::{median, theil_sen};

/// Number of batches that describe the fresh bath, and number of batches that describe it now. Our own.
pub const FRESH_BATCHES: usize = 3;
/// Least number of batches for a trend. Our own.
pub const MIN_BATCHES: usize = 2 * FRESH_BATCHES;
/// Number of latest batches the trend is computed from.
const TREND_BATCHES: usize = 40;
/// A recharge that is further away than this many times the screens done so far is not predicted. Our own.
const MAX_PREDICTION_RATIO: f64 = 3.0;

/// A finished batch of one charge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BathPoint {
    /// Screens done since the bath was charged, including this batch.
    pub screens: u32,
    /// Screens in this batch.
    pub count: u16,
    /// Minutes per screen.
    pub minutes: f64,
}

/// The bath's speed now and when it was fresh.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BathPace {
    /// Minutes per screen when it was fresh: the median of the first batches.
    pub fresh: f64,
    /// Minutes per screen now: the median of the last batches.
    pub now: f64,
    /// Whether the last batches differ in size from the first by more than a factor of 1.5: the minutes per
    /// screen are then not quite comparable.
    pub sizes_differ: bool,
}

impl BathPace {
    /// Minutes per screen now, as a multiple of those of the fresh bath.
    pub fn ratio(&self) -> f64 {
        self.now / self.fresh
    }
}

/// What the batches of a charge say about the bath.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BathTrend {
    /// Too few batches for a trend.
    TooFew {
        /// How many more are needed.
        more: usize,
    },
    /// No slowing that could not be chance.
    Steady,
    /// The bath is slowing down.
    Slowing(ScreensLeft),
    /// A screen takes as long as the shop allows: the bath must be recharged.
    Recharge,
}

/// Number of screens until the bath is as slow as the shop allows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScreensLeft {
    /// Too many to predict.
    FarOff,
    /// About this many.
    About {
        /// Lower bound.
        least: u32,
        /// Best estimate.
        likely: u32,
        /// Upper bound; `None` if there is none.
        most: Option<u32>,
    },
}

/// The speed of a charge; `None` if there are fewer than `MIN_BATCHES` batches.
pub fn bath_pace(points: &[BathPoint]) -> Option<BathPace> {
    if points.len() < MIN_BATCHES {
        return None;
    }
    let (first, last) = (points.get(..FRESH_BATCHES)?, points.get(points.len() - FRESH_BATCHES..)?);
    let minutes = |part: &[BathPoint]| median(&part.iter().map(|point| point.minutes).collect::<Vec<_>>());
    let size = |part: &[BathPoint]| median(&part.iter().map(|point| f64::from(point.count)).collect::<Vec<_>>());
    let sizes = size(last)? / size(first)?;
    Some(BathPace { fresh: minutes(first)?, now: minutes(last)?, sizes_differ: !(1.0 / 1.5..=1.5).contains(&sizes) })
}

/// The trend of a charge. `points` are its finished batches, oldest first; `recharge_at` is the limit in
/// percent of the fresh bath's minutes per screen.
///
/// The bath is spent if the median of the last three batches has reached `recharge_at`. Before that, it is
/// slowing if the slope of a robust line through the latest 40 batches is positive over its whole 80 %
/// interval. The line is then extended to the limit, and the bounds of the slope give the bounds of the
/// number of screens. The uncertainty is that of the slope only. Our own rule, using the method of
/// `theil_sen`.
pub fn bath_trend(points: &[BathPoint], recharge_at: u16) -> BathTrend {
    let Some(pace) = bath_pace(points) else {
        return BathTrend::TooFew { more: MIN_BATCHES.saturating_sub(points.len()) };
    };
    let limit = pace.fresh * f64::from(recharge_at) / 100.0;
    if pace.now >= limit {
        return BathTrend::Recharge;
    }
    let looked_at = points.iter().skip(points.len().saturating_sub(TREND_BATCHES));
    let spots: Vec<(f64, f64)> = looked_at.map(|point| (f64::from(point.screens), point.minutes)).collect();
    let done = spots.last().map_or(0.0, |(screens, _)| *screens);
    let Some(line) = theil_sen(&spots).filter(|line| line.least > 0.0) else { return BathTrend::Steady };
    let to_go = (limit - (line.intercept + line.slope * done)).max(0.0);
    let screens = |slope: f64| Some((to_go / slope).round()).filter(|left| *left <= done * MAX_PREDICTION_RATIO);
    BathTrend::Slowing(match screens(line.slope) {
        None => ScreensLeft::FarOff,
        Some(likely) => ScreensLeft::About {
            least: screens(line.most).unwrap_or(likely) as u32,
            likely: likely as u32,
            most: screens(line.least).map(|most| most as u32),
        },
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn charge(minutes: &[f64]) -> Vec<BathPoint> {
        (1..).zip(minutes).map(|(n, &minutes)| BathPoint { screens: n * 4, count: 4, minutes }).collect()
    }

    proptest! {
        #[test]
        fn constant_minutes_give_no_trend(minutes in 0.1..200.0f64, batches in MIN_BATCHES..60) {
            prop_assert_eq!(bath_trend(&charge(&vec![minutes; batches]), RECHARGE), BathTrend::Steady);
        }

        #[test]
        fn a_doubling_is_detected_from_its_second_batch(
            minutes in 0.5..60.0f64, before in 4..40usize, slow in 2..10usize, noise in prop::collection::vec(-0.1..0.1f64, 50),
        ) {
            let mut all = vec![minutes; before];
            all.extend(vec![minutes * 2.0; slow]);
            let noisy: Vec<f64> = all.iter().zip(&noise).map(|(m, n)| m * (1.0 + n)).collect();
            prop_assert_eq!(bath_trend(&charge(&noisy), RECHARGE), BathTrend::Recharge);
        }

        #[test]
        fn one_batch_forgotten_overnight_changes_nothing(minutes in 0.5..60.0f64, at in 0..12usize) {
            let mut all = vec![minutes; 12];
            all[at] = 900.0;
            prop_assert_eq!(bath_trend(&charge(&all), RECHARGE), BathTrend::Steady);
        }

        #[test]
        fn the_end_of_an_even_slowing_is_predicted_to_the_screen(fresh in 4.0..20.0f64, rise in 1..4u32, batches in 8..12usize) {
            // Each batch of four screens takes `rise` percent of the fresh time longer than the one before.
            let step = fresh * f64::from(rise) / 100.0;
            let minutes: Vec<f64> = (0..batches).map(|n| fresh + step * n as f64).collect();
            let limit = (fresh + step) * 1.5;
            let exact = (limit - minutes[batches - 1]) / step * 4.0;
            match bath_trend(&charge(&minutes), RECHARGE) {
                BathTrend::Slowing(ScreensLeft::About { least, likely, most: Some(most) }) => {
                    prop_assert!((f64::from(likely) - exact).abs() < 1.0, "{} {}", likely, exact);
                    prop_assert!(least <= likely && likely <= most);
                }
                BathTrend::Slowing(ScreensLeft::FarOff) => prop_assert!(exact > f64::from(batches as u32 * 4) * 2.9),
                other @ (BathTrend::TooFew { .. } | BathTrend::Steady | BathTrend::Slowing(_) | BathTrend::Recharge) => {
                    prop_assert!(false, "{other:?}");
                }
            }
        }

        #[test]
        fn no_input_panics_and_the_bounds_enclose_the_estimate(
            minutes in prop::collection::vec(0.01..2_000.0f64, 0..60), percent in 101..1_000u16,
        ) {
            if let BathTrend::Slowing(ScreensLeft::About { least, likely, most }) = bath_trend(&charge(&minutes), percent) {
                prop_assert!(least <= likely && most.is_none_or(|most| likely <= most));
            }
        }
    }

    const RECHARGE: u16 = crate::screen::DEFAULT_RECHARGE_PERCENT;

    #[test]
    fn five_batches_are_too_few_for_a_trend() {
        assert_eq!(bath_trend(&charge(&[5.0; 5]), RECHARGE), BathTrend::TooFew { more: 1 });
        assert_eq!(bath_trend(&[], RECHARGE), BathTrend::TooFew { more: 6 });
    }

    #[test]
    fn a_bath_that_hardly_slows_is_far_from_its_end() {
        let minutes: Vec<f64> = (0..8).map(|n| 10.0 + 0.01 * f64::from(n)).collect();
        assert_eq!(bath_trend(&charge(&minutes), RECHARGE), BathTrend::Slowing(ScreensLeft::FarOff));
    }

    #[test]
    fn batches_of_a_different_size_are_reported() {
        let mut points = charge(&[5.0; 8]);
        assert!(!bath_pace(&points).unwrap().sizes_differ);
        points[5..].iter_mut().for_each(|point| point.count = 1);
        assert!(bath_pace(&points).unwrap().sizes_differ);
    }
}
