//! Whether the time of a settling is unlike the dryer, so that it is asked about before it is recorded.

use super::settling::{MIN_TIME, plausible_times, settling_time};
use super::status::ActiveSettling;
use crate::heat::Transition;
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::{Seconds, TemperatureDelta};

/// A time four times as fast or as slow as expected is asked about. Our own.
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

/// Whether the time of a settling, were it ended now, is unlike this dryer: four times as fast or as slow as expected by
/// its logs or the cautious figure, ten times as fast or as slow as the cautious figure, or within ten seconds of its
/// start. `None` if it is not, or the settling is unknown. The factors are our own.
pub fn settling_doubt(shop: &Shop, settling: ActiveSettling, now: WallTime) -> Option<SettlingDoubt> {
    let (_, known) = shop.heat.settlings().find(|(id, _)| *id == settling.id)?;
    let Transition { dryer, from, to } = known.transition?;
    let change = TemperatureDelta::between(from, to);
    let (expected, _) = settling_time(shop, Some(dryer), change)?;
    let took = settling.at(now).elapsed;
    let possible = plausible_times(change);
    let can_count = possible.as_ref().is_some_and(|times| times.contains(&took.seconds()));
    let (least, most) = possible.map_or((MIN_TIME, f64::INFINITY), |times| {
        let usual = expected.seconds();
        (times.start().max(usual / USUAL_FACTOR), times.end().min(usual * USUAL_FACTOR))
    });
    let too_soon = took.seconds() < least;
    (too_soon || took.seconds() > most).then_some(SettlingDoubt { took, expected, too_soon, can_count })
}
