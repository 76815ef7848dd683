//! The states of a screen, from clean to reclaimed.

use crate::codec::Encode;
use serde::{Deserialize, Serialize};

/// The state of a screen. **Frozen** names and order: they are stored. The order is that of the work, and
/// the order in which states are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum ScreenState {
    /// No emulsion on it; degreased, or about to be.
    #[default]
    Clean,
    /// Emulsion on it, drying or dry.
    Coated,
    /// Exposed and washed out, drying or dry.
    Exposed,
    /// Dry and taped.
    Ready,
    /// On the press.
    OnPress,
    /// No longer needed: its stencil may be removed.
    ToReclaim,
    /// In the reclaim bath.
    InBath,
    /// It failed, on the press or before.
    Failed,
}

impl ScreenState {
    /// All states, in the order in which they are shown.
    pub const ALL: [Self; 8] = [
        Self::Clean,
        Self::Coated,
        Self::Exposed,
        Self::Ready,
        Self::OnPress,
        Self::ToReclaim,
        Self::InBath,
        Self::Failed,
    ];

    /// The states a screen can move to from here, the usual one first.
    pub fn next(self) -> &'static [Self] {
        match self {
            Self::Clean => &[Self::Coated, Self::Failed],
            Self::Coated => &[Self::Exposed, Self::ToReclaim, Self::Failed],
            Self::Exposed => &[Self::Ready, Self::ToReclaim, Self::Failed],
            Self::Ready => &[Self::OnPress, Self::ToReclaim, Self::Failed],
            Self::OnPress => &[Self::ToReclaim, Self::Ready, Self::Failed],
            Self::ToReclaim => &[Self::InBath, Self::Clean, Self::Ready],
            Self::InBath => &[Self::Clean, Self::ToReclaim],
            Self::Failed => &[Self::ToReclaim, Self::Clean, Self::Ready],
        }
    }

    /// Whether it can print as it is.
    pub fn can_print(self) -> bool {
        match self {
            Self::Ready | Self::OnPress => true,
            Self::Clean | Self::Coated | Self::Exposed | Self::ToReclaim | Self::InBath | Self::Failed => false,
        }
    }

    /// Whether an image is on it.
    pub fn has_image(self) -> bool {
        match self {
            Self::Exposed | Self::Ready | Self::OnPress | Self::ToReclaim => true,
            Self::Clean | Self::Coated | Self::InBath | Self::Failed => false,
        }
    }
}
