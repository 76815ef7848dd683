//! The state of a screen and since when, and how a change moves it.

use crate::codec::Encode;
use crate::facts::ScreenState;
use crate::time::WallTime;

/// The kind of a change.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub enum ScreenEvent {
    /// It moved to this state.
    To(ScreenState),
    /// It was found dry, or was wrongly recorded as dry.
    Dry(bool),
}

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
