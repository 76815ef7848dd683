//! When the shop closes.

use crate::codec::Encode;
use crate::time::{DAY_TURN, Day};
use std::collections::BTreeMap;

/// Closing times by weekday, and for single days that differ.
#[derive(Clone, Debug, PartialEq, Encode)]
pub struct Closings {
    /// Minutes after midnight by weekday, Monday first; `None` on a day off. Before four in the morning they are those
    /// of the night after that day.
    pub week: [Option<u16>; 7],
    /// Minutes after midnight on days that differ from their weekday.
    pub days: BTreeMap<Day, u16>,
}

/// Default closing time: five in the afternoon, Monday to Friday. Common practice, no source.
const DEFAULT_CLOSING: Option<u16> = Some(17 * 60);

impl Default for Closings {
    fn default() -> Self {
        Self {
            week: [DEFAULT_CLOSING, DEFAULT_CLOSING, DEFAULT_CLOSING, DEFAULT_CLOSING, DEFAULT_CLOSING, None, None],
            days: BTreeMap::new(),
        }
    }
}

impl Closings {
    /// Due time, in minutes after midnight, of a job without a time of its own: closing, or 23:59 if the shop closes after
    /// midnight; `None` on a day off.
    pub fn due_on(&self, day: Day) -> Option<u16> {
        self.on(day).map(|minutes| if minutes < DAY_TURN { 24 * 60 - 1 } else { minutes })
    }

    /// Minutes after midnight at which the shop closes on a day; `None` on a day off.
    pub fn on(&self, day: Day) -> Option<u16> {
        self.days.get(&day).copied().or(self.week[day.weekday()])
    }
}
