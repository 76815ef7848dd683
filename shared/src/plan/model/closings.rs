//! When the shop closes.

use crate::codec::Encode;
use crate::time::{DAY_TURN, Day, TimeOfDay};
use std::collections::BTreeMap;

/// Closing times by weekday, and for single days that differ.
#[derive(Clone, Debug, PartialEq, Encode)]
pub struct Closings {
    /// By weekday, Monday first; `None` on a day off. A time before four in the morning is in the night after that day.
    pub week: [Option<TimeOfDay>; 7],
    /// On days that differ from their weekday.
    pub days: BTreeMap<Day, TimeOfDay>,
}

/// Default closing time: five in the afternoon, Monday to Friday. Common practice, no source.
pub const DEFAULT_CLOSING: TimeOfDay = TimeOfDay::at(17, 0);

impl Default for Closings {
    fn default() -> Self {
        let open = Some(DEFAULT_CLOSING);
        Self { week: [open, open, open, open, open, None, None], days: BTreeMap::new() }
    }
}

impl Closings {
    /// Due time of a job without a time of its own: closing, or 23:59 if the shop closes after midnight; `None` on a day
    /// off.
    pub fn due_on(&self, day: Day) -> Option<TimeOfDay> {
        self.on(day).map(|closing| if closing < DAY_TURN { TimeOfDay::LAST } else { closing })
    }

    /// When the shop would close on a day off that it works: as on the latest such weekday that it worked, else as on
    /// the weekday before it that is not a day off, else at [`DEFAULT_CLOSING`].
    pub fn usual(&self, day: Day) -> TimeOfDay {
        let weekday = day.weekday();
        let last = self.days.iter().rfind(|(on, _)| **on < day && on.weekday() == weekday);
        last.map(|(_, time)| *time)
            .or_else(|| (1..7).rev().find_map(|ahead| self.week[(weekday + ahead) % 7]))
            .unwrap_or(DEFAULT_CLOSING)
    }

    /// When the shop closes on a day; `None` on a day off.
    pub fn on(&self, day: Day) -> Option<TimeOfDay> {
        self.days.get(&day).copied().or(self.week[day.weekday()])
    }
}
