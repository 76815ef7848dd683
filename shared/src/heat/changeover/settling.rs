//! How long a dryer takes to settle at another temperature, learned from the shop's own logs.

use crate::ids::Subject;
use crate::shop::Shop;
use crate::units::{Seconds, TemperatureDelta};

/// Which way a dryer goes. A tunnel cools more slowly than it heats, so each is learned apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// To a higher temperature.
    Up,
    /// To a lower temperature.
    Down,
}

impl Direction {
    /// The way from one temperature to another; none where both are the same.
    pub fn of(change: TemperatureDelta) -> Option<Self> {
        match change.milli_celsius() {
            0 => None,
            up if up > 0 => Some(Self::Up),
            _ => Some(Self::Down),
        }
    }
}

/// What a waiting time rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SettlingBasis {
    /// So many of the shop's own logs of this dryer, this way.
    Logged(u32),
    /// No log yet: a cautious guess, our own.
    OurOwn,
}

/// How fast a dryer settles one way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SettlingPace {
    /// Seconds for each degree Celsius.
    pub seconds_a_degree: f64,
    /// What that rests on.
    pub basis: SettlingBasis,
}

/// Logs that are taken into the estimate: the latest of a dryer, one way.
const LOGS: usize = 15;
/// Shorter ways than this say more of the thermostat than of the tunnel: 5 °C. Our own.
const SHORTEST_WAY: i32 = 5_000;
/// Seconds for each degree Celsius while nothing is logged. Our own, on the slow side.
const UP: f64 = 6.0;
/// The same for a tunnel that cools. Our own, on the slow side.
const DOWN: f64 = 20.0;

/// How fast a dryer settles at a higher or at a lower temperature: the median of its latest logs that
/// way, each as seconds for a degree; of an even number the slower of the two in the middle, so that
/// of two logs the slower one counts. The median, since a log that somebody forgot to end must not
/// move it. While there is no log, a cautious figure of our own.
pub fn settling_pace(shop: &Shop, dryer: Subject, direction: Direction) -> SettlingPace {
    let mut logs: Vec<(u64, f64)> = shop
        .heat
        .settlings()
        .filter(|(_, settling)| !settling.deleted)
        .filter_map(|(_, settling)| {
            let (of, from, to) = settling.way?;
            let change = TemperatureDelta::between(from, to);
            let counts = of == dryer
                && Direction::of(change) == Some(direction)
                && change.size().milli_celsius() >= SHORTEST_WAY;
            let took = settling.took.filter(|took| counts && took.milliseconds() > 0)?;
            Some((settling.at, took.seconds() / change.size().celsius()))
        })
        .collect();
    logs.sort_by(|a, b| b.0.cmp(&a.0).then(b.1.total_cmp(&a.1)));
    logs.truncate(LOGS);
    let mut rates: Vec<f64> = logs.into_iter().map(|(_, rate)| rate).collect();
    rates.sort_by(f64::total_cmp);
    match rates.get(rates.len() / 2) {
        Some(rate) => SettlingPace { seconds_a_degree: *rate, basis: SettlingBasis::Logged(rates.len() as u32) },
        None => {
            let rate = if direction == Direction::Up { UP } else { DOWN };
            SettlingPace { seconds_a_degree: rate, basis: SettlingBasis::OurOwn }
        }
    }
}

/// How long a dryer needs to settle on the way of a change, and what that rests on. None where nothing
/// changes. A shop that keeps no dryer gets the cautious figures.
pub fn settling_time(
    shop: &Shop,
    dryer: Option<Subject>,
    change: TemperatureDelta,
) -> Option<(Seconds, SettlingBasis)> {
    let direction = Direction::of(change)?;
    let pace = settling_pace(shop, dryer.unwrap_or_default(), direction);
    let seconds = (pace.seconds_a_degree * change.size().celsius()).min(4.0 * 3_600.0);
    Some((Seconds::new(seconds), pace.basis))
}
