//! Has a screen been coated, or carried its stencil, for too long?

use super::{Screen, ScreenState};
use crate::pack::Pack;
use serde::{Deserialize, Serialize};

/// Number of days after which the shop wants a warning. **Frozen**: a fact holds it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, Pack)]
#[serde(deny_unknown_fields)]
pub struct AgeLimits {
    /// Days a coated screen may wait for its exposure.
    pub coated: u16,
    /// Days a stencil may stay in the mesh after it was exposed.
    pub exposed: u16,
}

/// Four weeks coated, sixty days with a stencil: our own figures, until the shop enters those of its
/// emulsion's data sheet.
impl Default for AgeLimits {
    fn default() -> Self {
        Self { coated: 28, exposed: 60 }
    }
}

impl AgeLimits {
    /// The longest limit that can be entered, in days.
    pub(crate) const MOST: u16 = 2_000;

    /// As [`crate::journal::Fact::in_bounds`].
    pub(crate) fn in_bounds(self) -> bool {
        (1..=Self::MOST).contains(&self.coated) && (1..=Self::MOST).contains(&self.exposed)
    }
}

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

const DAY: u64 = 24 * 60 * 60 * 1000;

/// The age warning of a screen; `None` if it is within its limits. `now` is in milliseconds since
/// 1970-01-01 UTC, and only whole days count. A screen on the press is in use, so it gets no warning.
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
