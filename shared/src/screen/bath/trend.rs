//! Whether the bath slows down, and how many screens it is still good for.

use super::theil_sen::{median, theil_sen};

/// Batches that show the bath when it is fresh, and as many that show it now. Our own.
pub const FRESH: usize = 3;
/// Batches from which a trend is told. Our own.
pub const ENOUGH: usize = 2 * FRESH;
/// Latest batches the trend looks at.
const LOOKED_AT: usize = 40;
/// A recharge further off than this many times the screens done so far is not foretold. Our own.
const FORESIGHT: f64 = 3.0;

/// A batch that came out, of one charge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BathPoint {
    /// Screens done since the bath was charged, this batch's included.
    pub screens: u32,
    /// How many were in this batch.
    pub count: u16,
    /// Minutes a screen.
    pub minutes: f64,
}

/// How fast the bath is against itself when it was fresh.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BathPace {
    /// Minutes a screen when it was fresh: the middle of the first batches.
    pub fresh: f64,
    /// Minutes a screen now: the middle of the last ones.
    pub now: f64,
    /// Whether the last batches are of another size than the first: then minutes a screen are not
    /// quite like for like.
    pub sizes_differ: bool,
}

impl BathPace {
    /// How many times the fresh bath's minutes a screen takes now.
    pub fn ratio(&self) -> f64 {
        self.now / self.fresh
    }
}

/// What is told of the bath.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BathTrend {
    /// Too few batches to say.
    TooFew {
        /// How many more are needed.
        more: usize,
    },
    /// No slowing that could not be chance.
    Steady,
    /// It slows down.
    Slowing(ScreensLeft),
    /// A screen takes as long as the shop lets it: charge anew.
    Recharge,
}

/// How many screens until the bath is as slow as the shop lets it become.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScreensLeft {
    /// So far off that it is not foretold.
    FarOff,
    /// About so many.
    About {
        /// Probably not fewer.
        least: u32,
        /// As the trend goes.
        likely: u32,
        /// Probably not more; none where there is no telling.
        most: Option<u32>,
    },
}

/// The pace of a charge, once there are [`ENOUGH`] batches.
pub fn bath_pace(points: &[BathPoint]) -> Option<BathPace> {
    if points.len() < ENOUGH {
        return None;
    }
    let (first, last) = (points.get(..FRESH)?, points.get(points.len() - FRESH..)?);
    let minutes = |part: &[BathPoint]| median(&part.iter().map(|point| point.minutes).collect::<Vec<_>>());
    let size = |part: &[BathPoint]| median(&part.iter().map(|point| f64::from(point.count)).collect::<Vec<_>>());
    let sizes = size(last)? / size(first)?;
    Some(BathPace { fresh: minutes(first)?, now: minutes(last)?, sizes_differ: !(1.0 / 1.5..=1.5).contains(&sizes) })
}

/// What the batches of a charge, oldest first, say of the bath; `recharge_at` in percent of the fresh
/// bath's minutes a screen.
///
/// The bath is spent when the middle of the last three batches has come to `recharge_at`. Before
/// that, it slows when the slope of a robust line through all batches is above nought with its whole
/// 80 % interval; the line is then drawn on to the threshold, with the interval's slopes as bounds.
/// The uncertainty is the slope's only. Our own rule on the method of [`theil_sen`].
pub fn bath_trend(points: &[BathPoint], recharge_at: u16) -> BathTrend {
    let Some(pace) = bath_pace(points) else {
        return BathTrend::TooFew { more: ENOUGH.saturating_sub(points.len()) };
    };
    let limit = pace.fresh * f64::from(recharge_at) / 100.0;
    if pace.now >= limit {
        return BathTrend::Recharge;
    }
    let looked_at = points.iter().skip(points.len().saturating_sub(LOOKED_AT));
    let spots: Vec<(f64, f64)> = looked_at.map(|point| (f64::from(point.screens), point.minutes)).collect();
    let done = spots.last().map_or(0.0, |(screens, _)| *screens);
    let Some(line) = theil_sen(&spots).filter(|line| line.least > 0.0) else { return BathTrend::Steady };
    let to_go = (limit - (line.intercept + line.slope * done)).max(0.0);
    let screens = |slope: f64| Some((to_go / slope).round()).filter(|left| *left <= done * FORESIGHT);
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
        fn constant_minutes_give_no_trend(minutes in 0.1..200.0f64, batches in ENOUGH..60) {
            prop_assert_eq!(bath_trend(&charge(&vec![minutes; batches]), RECHARGE), BathTrend::Steady);
        }

        #[test]
        fn a_doubling_is_noticed_after_its_second_batch(
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
        fn an_even_slowing_is_foretold_to_the_screen(fresh in 4.0..20.0f64, rise in 1..4u32, batches in 8..12usize) {
            // Each batch of four screens takes a rise of percents of the fresh time longer.
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
        fn no_minutes_make_it_panic_and_bounds_hold_the_likely(
            minutes in prop::collection::vec(0.01..2_000.0f64, 0..60), percent in 101..1_000u16,
        ) {
            if let BathTrend::Slowing(ScreensLeft::About { least, likely, most }) = bath_trend(&charge(&minutes), percent) {
                prop_assert!(least <= likely && most.is_none_or(|most| likely <= most));
            }
        }
    }

    const RECHARGE: u16 = crate::screen::RECHARGE_AT;

    #[test]
    fn five_batches_are_too_few_to_say() {
        assert_eq!(bath_trend(&charge(&[5.0; 5]), RECHARGE), BathTrend::TooFew { more: 1 });
        assert_eq!(bath_trend(&[], RECHARGE), BathTrend::TooFew { more: 6 });
    }

    #[test]
    fn a_bath_that_hardly_slows_is_far_from_its_end() {
        let minutes: Vec<f64> = (0..8).map(|n| 10.0 + 0.01 * f64::from(n)).collect();
        assert_eq!(bath_trend(&charge(&minutes), RECHARGE), BathTrend::Slowing(ScreensLeft::FarOff));
    }

    #[test]
    fn batches_of_another_size_are_told_of() {
        let mut points = charge(&[5.0; 8]);
        assert!(!bath_pace(&points).unwrap().sizes_differ);
        points[5..].iter_mut().for_each(|point| point.count = 1);
        assert!(bath_pace(&points).unwrap().sizes_differ);
    }
}
