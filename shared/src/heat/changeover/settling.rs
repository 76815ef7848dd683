//! How long a dryer takes to settle at another temperature, learned from the shop's own logs.

use crate::heat::Transition;
use crate::ids::Subject;
use crate::shop::Shop;
use crate::time::WallTime;
use crate::units::{Seconds, TemperatureDelta};

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
    /// This many logs of the same dryer and direction.
    Logged(u32),
    /// No log yet: a cautious guess, our own.
    OurOwn,
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

/// How fast a dryer heats up or cools down: the median of its latest 15 logs in that direction, in seconds
/// per degree. Of an even number the slower middle one is taken. The median, since a log that somebody forgot
/// to end must not move it. Without a log, a cautious figure of our own.
pub fn settling_pace(shop: &Shop, dryer: Subject, direction: Direction) -> SettlingPace {
    let mut logs: Vec<(WallTime, f64)> = shop
        .heat
        .settlings()
        .filter(|(_, settling)| !settling.deleted)
        .filter_map(|(_, settling)| {
            let Transition { dryer: of, from, to } = settling.transition?;
            let change = TemperatureDelta::between(from, to);
            let counts = of == dryer
                && Direction::of(change) == Some(direction)
                && change.magnitude().milli_celsius() >= MIN_CHANGE;
            let took = settling.took.filter(|took| counts && took.milliseconds() > 0)?;
            Some((settling.at, took.seconds() / change.magnitude().celsius()))
        })
        .collect();
    logs.sort_by(|a, b| b.0.cmp(&a.0).then(b.1.total_cmp(&a.1)));
    logs.truncate(MAX_LOGS);
    let mut rates: Vec<f64> = logs.into_iter().map(|(_, rate)| rate).collect();
    rates.sort_by(f64::total_cmp);
    match rates.get(rates.len() / 2) {
        Some(rate) => SettlingPace { seconds_per_degree: *rate, basis: SettlingBasis::Logged(rates.len() as u32) },
        None => {
            let rate = if direction == Direction::Up { DEFAULT_HEATING } else { DEFAULT_COOLING };
            SettlingPace { seconds_per_degree: rate, basis: SettlingBasis::OurOwn }
        }
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
