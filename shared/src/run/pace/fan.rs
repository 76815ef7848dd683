//! The run as a line of pieces over time, opening into the fan of its likely finishes.

use super::finish::TimeLeft;
use super::forecast::{EIGHT_IN_TEN, Forecast};
use crate::run::Progress;

/// A point of the line: so many pieces at this moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FanPoint {
    /// Wall time in milliseconds.
    pub at: u64,
    /// Pieces pulled by then.
    pub pieces: u32,
}

/// The line of what was pulled, and the fan of what is to come.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Fan {
    /// What was pulled.
    pub line: Vec<FanPoint>,
    /// The early edge: by then with nine chances in ten against.
    pub early: Vec<FanPoint>,
    /// The middle.
    pub expected: Vec<FanPoint>,
    /// The late edge.
    pub late: Vec<FanPoint>,
}

/// Most points in each line: enough for the eye on a phone.
const POINTS: usize = 24;

/// The line and fan of a run as of `now`. The fan stops at the press; the dryer comes after it.
pub fn fan(progress: &Progress, forecast: Option<&Forecast>, now: u64) -> Fan {
    let mut line = Vec::new();
    let pulls = progress.pulls();
    let good = progress.good();
    // What was let go is under the line, what was spoiled is off it: it ends at the count.
    let mut pulled = i64::from(good) - pulls.iter().map(|pull| i64::from(pull.pieces)).sum::<i64>();
    let step = pulls.len().div_ceil(POINTS).max(1);
    for (index, pull) in pulls.iter().enumerate() {
        pulled += i64::from(pull.pieces);
        if index % step == 0 || index + 1 == pulls.len() {
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
            edge.push(FanPoint { at: now + (forecast.wait * 1000.0) as u64, pieces });
        }
    }
    let reach = TimeLeft::reach(&forecast.spread, EIGHT_IN_TEN);
    let steps = POINTS.min(forecast.left as usize);
    for index in 1..=steps {
        let more = (forecast.left as usize * index / steps) as u32;
        let bare = TimeLeft::within(&forecast.spread, more, reach);
        let at = |seconds: f64| {
            let work = (seconds - forecast.spent).max(0.0) * (1.0 + forecast.stop_rate);
            FanPoint { at: now + ((forecast.wait + work) * 1000.0) as u64, pieces: pieces + more }
        };
        fan.early.push(at(bare.low));
        fan.expected.push(at(bare.expected));
        fan.late.push(at(bare.high));
    }
    fan
}
