//! Whether the time of a settling is unlike the dryer, so that it is asked about before it is recorded.

use super::settling::{MIN_TIME, SettlingBasis, plausible_times, settling_time};
use super::status::ActiveSettling;
use crate::heat::Transition;
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::{Seconds, TemperatureDelta};
use std::ops::RangeInclusive;

/// A time four times as fast or as slow as the dryer's own logs is asked about. Our own.
const USUAL_FACTOR: f64 = 4.0;

/// A time that is unlike this dryer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SettlingDoubt {
    /// The time so far.
    pub took: Seconds,
    /// The time that was expected for the whole change.
    pub expected: Seconds,
    /// Whether it is shorter than expected, else longer.
    pub too_soon: bool,
    /// Whether it may still be counted, since it is possible at all.
    pub can_count: bool,
}

/// Whether the time of a settling, were it ended now, is unlike this dryer: ten times as fast or as slow as the
/// cautious figure, four times as fast or as slow as the dryer's own logs, or within ten seconds of its start. `None`
/// if it is not, or the settling is unknown. The factors are our own.
pub fn settling_doubt(shop: &Shop, settling: ActiveSettling, now: WallTime) -> Option<SettlingDoubt> {
    let (_, known) = shop.heat.settlings().find(|(id, _)| *id == settling.id)?;
    let Transition { dryer, from, to } = known.transition?;
    let change = TemperatureDelta::between(from, to);
    let (expected, basis) = settling_time(shop, Some(dryer), change)?;
    let took = settling.at(now).elapsed;
    let possible = plausible_times(change);
    let can_count = possible.as_ref().is_some_and(|times| times.contains(&took.seconds()));
    let learned = possible.is_some() && matches!(basis, SettlingBasis::Logged(_));
    let (mut least, mut most) = possible.map_or((MIN_TIME, f64::INFINITY), RangeInclusive::into_inner);
    if learned {
        least = least.max(expected.seconds() / USUAL_FACTOR);
        most = most.min(expected.seconds() * USUAL_FACTOR);
    }
    let too_soon = took.seconds() < least;
    (too_soon || took.seconds() > most).then_some(SettlingDoubt { took, expected, too_soon, can_count })
}
