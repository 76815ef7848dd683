//! Fan chart of a run: pieces over time so far, and the range of likely progress.

use super::forecast::Forecast;
use crate::run::{Progress, Pull};
use crate::time::{Millis, WallClock, WallTime};

/// A point of the chart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FanPoint {
    /// Wall time.
    pub at: WallTime,
    /// Pieces pulled by then.
    pub pieces: u32,
}

/// The line of pulled pieces and the fan of the forecast.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Fan {
    /// Pieces pulled on this working day.
    pub line: Vec<FanPoint>,
    /// Early edge of the 80 % interval.
    pub early: Vec<FanPoint>,
    /// The median.
    pub expected: Vec<FanPoint>,
    /// Late edge of the 80 % interval.
    pub late: Vec<FanPoint>,
}

/// Largest number of points of the line: enough for a phone.
const MAX_POINTS: usize = 24;
/// Largest number of points of an edge of the fan, which bends little.
const MAX_STEPS: usize = 6;

/// The fan chart of a run as of the clock: the line of its working day, and the work to come, as if nobody went home. It
/// ends at the press: time in the dryer is not included.
pub fn fan(progress: &Progress, forecast: Option<&Forecast>, clock: WallClock) -> Fan {
    let now = clock.now;
    let mut line = Vec::new();
    let pulls = progress.pulls();
    let is_today = |pull: &&Pull| clock.work_day_of(pull.at) == clock.work_day();
    let earlier = pulls.len() - pulls.iter().rev().take_while(is_today).count();
    let good = progress.good();
    // Start below archived pulls and above misprints, so that the line ends at the count.
    let mut pulled = i64::from(good) - pulls.iter().map(|pull| i64::from(pull.pieces)).sum::<i64>();
    let (earlier, today) = pulls.split_at(earlier);
    pulled += earlier.iter().map(|pull| i64::from(pull.pieces)).sum::<i64>();
    let step = today.len().div_ceil(MAX_POINTS).max(1);
    for (index, pull) in today.iter().enumerate() {
        pulled += i64::from(pull.pieces);
        if index % step == 0 || index + 1 == today.len() {
            line.push(FanPoint { at: pull.at, pieces: pulled.max(0) as u32 });
        }
    }
    let mut fan = Fan { line, ..Fan::default() };
    let Some(forecast) = forecast.filter(|forecast| forecast.left > 0) else { return fan };
    let pieces = good;
    let origin = FanPoint { at: now, pieces };
    for edge in [&mut fan.early, &mut fan.expected, &mut fan.late] {
        edge.push(origin);
        if forecast.wait > 0.0 {
            edge.push(FanPoint { at: now + Millis::from_seconds(forecast.wait), pieces });
        }
    }
    let steps = MAX_STEPS.min(forecast.left as usize);
    for index in 1..=steps {
        let more = (forecast.left as usize * index / steps) as u32;
        let time = if index == steps { forecast.press_time() } else { forecast.time_of(more) };
        let at = |seconds: f64| FanPoint { at: now + Millis::from_seconds(seconds), pieces: pieces + more };
        fan.early.push(at(time.low));
        fan.expected.push(at(time.expected));
        fan.late.push(at(time.high));
    }
    fan
}
