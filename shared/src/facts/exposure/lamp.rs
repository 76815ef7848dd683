//! The stored fields of a lamp. **Frozen** as [`crate::facts::Fact`] is.

use crate::bounds::is_name;
use crate::codec::Encode;
use crate::units::Length;
use serde::{Deserialize, Serialize};

/// What kind of lamp. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case")]
pub enum LampKind {
    /// One small bulb at a distance.
    #[default]
    Point,
    /// A row of tubes.
    Tubes,
    /// A panel of light-emitting diodes.
    Panel,
    /// A table on whose glass the screen lies.
    Contact,
}

impl LampKind {
    /// All, in the order they are offered.
    pub const ALL: [Self; 4] = [Self::Point, Self::Tubes, Self::Panel, Self::Contact];
}

/// A field of a lamp. **Frozen** as [`crate::facts::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum LampField {
    /// What the shop calls it.
    Name(String),
    /// What kind.
    Kind(LampKind),
    /// From the light to the emulsion.
    Distance(Option<Length>),
}

impl LampField {
    /// As [`crate::facts::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Name(name) => is_name(name),
            Self::Kind(_) => true,
            Self::Distance(distance) => distance.is_none_or(is_lamp_distance),
        }
    }
}

/// Furthest a lamp hangs from its screen, in inches.
pub(crate) const FURTHEST: f64 = 120.0;

/// Whether a length can be from a lamp to its screen.
pub(crate) fn is_lamp_distance(distance: Length) -> bool {
    (1..=Length::from_inches(FURTHEST).micrometres()).contains(&distance.micrometres())
}
