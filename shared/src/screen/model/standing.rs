//! The state of a screen and since when, and how a change moves it.

use super::{Screen, ScreenEvent};
use crate::facts::ScreenState;
use crate::time::WallTime;

/// The state of a screen, with its times.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub(crate) struct TimedState {
    pub(crate) state: ScreenState,
    pub(crate) since: WallTime,
    pub(crate) dry: Option<WallTime>,
    pub(crate) exposed: Option<WallTime>,
}

impl TimedState {
    /// The state after a change at wall time `at`.
    pub(crate) fn after(self, at: WallTime, what: ScreenEvent) -> Self {
        match what {
            ScreenEvent::Dry(dry) => Self { dry: dry.then_some(at), ..self },
            ScreenEvent::To(to) if to == self.state => self,
            ScreenEvent::To(to) => {
                let exposed = match to {
                    ScreenState::Exposed => Some(at),
                    state if state.has_image() => self.exposed.or(Some(at)),
                    ScreenState::Clean | ScreenState::Coated => None,
                    ScreenState::Ready
                    | ScreenState::OnPress
                    | ScreenState::ToReclaim
                    | ScreenState::InBath
                    | ScreenState::Failed => self.exposed,
                };
                Self { state: to, since: at, dry: None, exposed }
            }
        }
    }
}

impl Screen {
    pub(crate) fn timed_state(&self) -> TimedState {
        TimedState { state: self.state, since: self.since, dry: self.dry, exposed: self.exposed }
    }

    pub(crate) fn restore(&mut self, standing: TimedState) {
        (self.state, self.since, self.dry, self.exposed) =
            (standing.state, standing.since, standing.dry, standing.exposed);
    }

    /// The state before the latest change; `None` if there are no changes.
    pub(crate) fn before_latest(&self) -> Option<TimedState> {
        let (_, earlier) = self.log.split_last()?;
        Some(earlier.iter().fold(self.initial_state(), |standing, change| standing.after(change.at, change.what)))
    }

    pub(crate) fn initial_state(&self) -> TimedState {
        TimedState { since: self.created.unwrap_or(self.since), ..TimedState::default() }
    }
}
