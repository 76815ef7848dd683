//! How long a dryer takes to settle at another temperature, learned from the shop's own logs.

use crate::collections::sort_by;
use crate::heat::{Settling, Transition};
use crate::ids::Subject;
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::{Seconds, TemperatureDelta};
use std::ops::RangeInclusive;

/// Direction of a temperature change. A dryer cools more slowly than it heats, so each is learned separately.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// To a higher temperature.
    Up,
    /// To a lower temperature.
    Down,
}

impl Direction {
    /// The direction of a change; `None` for no change.
    pub fn of(change: TemperatureDelta) -> Option<Self> {
        match change.milli_celsius() {
            0 => None,
            up if up > 0 => Some(Self::Up),
            _ => Some(Self::Down),
        }
    }
}

/// What an estimate of settling time is based on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SettlingBasis {
    /// This many logs of the same dryer and direction, two at least.
    Logged(u32),
    /// No log yet: a cautious guess, our own.
    OurOwn,
    /// One log, which may be a slip: the slower of it and the cautious guess.
    OneLog,
}

/// How fast a dryer settles in one direction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SettlingPace {
    /// Seconds for each degree Celsius.
    pub seconds_per_degree: f64,
    /// What the estimate is based on.
    pub basis: SettlingBasis,
}

/// Number of logs in the estimate: the latest of a dryer in one direction.
const MAX_LOGS: usize = 15;
/// Smaller changes, in milli-°C, say more about the thermostat than the dryer: 5 °C. Our own.
const MIN_CHANGE: i32 = 5_000;
/// Seconds per degree Celsius for heating without a log. Our own, on the slow side.
const DEFAULT_HEATING: f64 = 6.0;
/// Seconds per degree Celsius for cooling without a log. Our own, on the slow side.
const DEFAULT_COOLING: f64 = 20.0;
/// A log ten times as fast or as slow as the cautious figure is a slip or was forgotten. Our own.
const PLAUSIBLE_FACTOR: f64 = 10.0;
/// No dryer settles sooner after the timing was started, in seconds: it is a second touch. Our own.
pub(super) const MIN_TIME: f64 = 10.0;

/// Cautious seconds per degree Celsius without a log.
fn cautious_pace(direction: Direction) -> f64 {
    if direction == Direction::Up { DEFAULT_HEATING } else { DEFAULT_COOLING }
}

/// The times that a change can plausibly take, in seconds; shorter or longer ones teach nothing. `None` if the
/// change is too small to teach.
pub(crate) fn plausible_times(change: TemperatureDelta) -> Option<RangeInclusive<f64>> {
    let direction = Direction::of(change).filter(|_| change.magnitude().milli_celsius() >= MIN_CHANGE)?;
    let cautious = cautious_pace(direction) * change.magnitude().celsius();
    Some((cautious / PLAUSIBLE_FACTOR).max(MIN_TIME)..=cautious * PLAUSIBLE_FACTOR)
}

/// Whether the time of a settling is plausible; `None` if it is not known, or the change too small to say.
fn has_plausible_time(settling: &Settling) -> Option<bool> {
    let Transition { from, to, .. } = settling.transition?;
    let times = plausible_times(TemperatureDelta::between(from, to))?;
    Some(times.contains(&settling.took?.seconds()))
}

/// Whether the time of a settling is possible: not so short or long that it must be a slip; true if the change is too
/// small to say.
pub fn is_possible_time(settling: &Settling) -> bool {
    has_plausible_time(settling) != Some(false)
}

/// Whether a settling counts towards the pace of its dryer: its time is known and plausible, and the change large
/// enough.
pub fn teaches_pace(settling: &Settling) -> bool {
    !settling.deleted && has_plausible_time(settling) == Some(true)
}

/// How fast a dryer heats up or cools down: the median of its latest 15 logs in that direction, in seconds
/// per degree. Of an even number the slower middle one is taken. Times that cannot be right are left out. Without a
/// log, a cautious figure of our own, which also counts as a second log while there is only one: one touch on the wrong
/// button must not shorten every wait. Our own.
pub fn settling_pace(shop: &Shop, dryer: Subject, direction: Direction) -> SettlingPace {
    let mut logs: Vec<(WallTime, f64)> = shop
        .heat
        .settlings()
        .filter(|(_, settling)| teaches_pace(settling))
        .filter_map(|(_, settling)| {
            let Transition { dryer: of, from, to } = settling.transition?;
            let change = TemperatureDelta::between(from, to);
            let took = settling.took.filter(|_| of == dryer && Direction::of(change) == Some(direction))?;
            Some((settling.at, took.seconds() / change.magnitude().celsius()))
        })
        .collect();
    sort_by(&mut logs, |a, b| b.0.cmp(&a.0).then(b.1.total_cmp(&a.1)));
    logs.truncate(MAX_LOGS);
    let mut rates: Vec<f64> = logs.into_iter().map(|(_, rate)| rate).collect();
    sort_by(&mut rates, f64::total_cmp);
    let cautious = cautious_pace(direction);
    let pace = |seconds_per_degree, basis| SettlingPace { seconds_per_degree, basis };
    match rates[..] {
        [] => pace(cautious, SettlingBasis::OurOwn),
        [one] => pace(cautious.max(one), SettlingBasis::OneLog),
        _ => pace(rates[rates.len() / 2], SettlingBasis::Logged(rates.len() as u32)),
    }
}

/// How long a dryer needs for a temperature change, at most four hours, and what the estimate is based on.
/// `None` if there is no change. Without a dryer the cautious figures are used.
pub fn settling_time(
    shop: &Shop,
    dryer: Option<Subject>,
    change: TemperatureDelta,
) -> Option<(Seconds, SettlingBasis)> {
    let direction = Direction::of(change)?;
    let pace = settling_pace(shop, dryer.unwrap_or_default(), direction);
    let seconds = (pace.seconds_per_degree * change.magnitude().celsius()).min(4.0 * 3_600.0);
    Some((Seconds::new(seconds), pace.basis))
}
