//! Has a screen lain too long?

use crate::facts::{AgeLimits, ScreenState};
use crate::screen::Screen;

/// A screen is past its limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AgeWarning {
    /// Coated for longer than the shop wants: it may need more light, or not hold.
    Coated {
        /// Days since it was coated.
        days: u32,
        /// The limit.
        limit: u16,
    },
    /// With a stencil in it for longer than the shop wants: it comes out harder.
    Exposed {
        /// Days since it was exposed.
        days: u32,
        /// The limit.
        limit: u16,
    },
}

const DAY: u64 = 24 * 60 * 60 * 1000;

/// Whether a screen has lain too long as of wall time `now`. A screen on the press is in use, and is
/// not warned of.
pub fn age_warning(screen: &Screen, limits: AgeLimits, now: u64) -> Option<AgeWarning> {
    let days_since = |at: u64| (now.saturating_sub(at) / DAY) as u32;
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
