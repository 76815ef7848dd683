//! Has a screen been coated, or carried its stencil, for too long?

use crate::facts::{AgeLimits, ScreenState};
use crate::screen::Screen;
use crate::time::WallTime;

/// Warning that a screen has passed its limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AgeWarning {
    /// Coated for longer than the limit: the emulsion may need more light, or may not hold.
    Coated {
        /// Days since it was coated.
        days: u32,
        /// The limit.
        limit: u16,
    },
    /// A stencil for longer than the limit: it becomes harder to remove.
    Exposed {
        /// Days since it was exposed.
        days: u32,
        /// The limit.
        limit: u16,
    },
}

/// The age warning of a screen; `None` if it is within its limits. Only whole days count. A screen on the press
/// is in use, so it gets no warning.
pub fn age_warning(screen: &Screen, limits: AgeLimits, now: WallTime) -> Option<AgeWarning> {
    let days_since = |at: WallTime| now.since(at).whole_days() as u32;
    match screen.state {
        ScreenState::Coated => {
            let days = days_since(screen.since);
            (days >= u32::from(limits.coated)).then_some(AgeWarning::Coated { days, limit: limits.coated })
        }
        ScreenState::Exposed | ScreenState::Ready | ScreenState::ToReclaim => {
            let days = days_since(screen.exposed?);
            (days >= u32::from(limits.exposed)).then_some(AgeWarning::Exposed { days, limit: limits.exposed })
        }
        ScreenState::Clean | ScreenState::OnPress | ScreenState::InBath | ScreenState::Failed => None,
    }
}
