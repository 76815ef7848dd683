//! The stored fields of a lamp. **Frozen** as [`crate::facts::Fact`] is.

use crate::bounds::is_name;
use crate::codec::Encode;
use crate::units::Length;
use serde::{Deserialize, Serialize};

/// The kind of a lamp. **Frozen** names and order: they are stored.
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
    /// A contact table: the screen lies on its glass.
    Contact,
}

impl LampKind {
    /// All, in the order in which they are offered.
    pub const ALL: [Self; 4] = [Self::Point, Self::Tubes, Self::Panel, Self::Contact];
}

/// A field of a lamp. **Frozen** as [`crate::facts::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Encode)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum LampField {
    /// The shop's name for it.
    Name(String),
    /// The kind of lamp.
    Kind(LampKind),
    /// Distance from the lamp to the emulsion.
    Distance(Option<Length>),
}

impl LampField {
    /// Whether every value is within its limits; see [`crate::journal::JournalFact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Name(name) => is_name(name),
            Self::Kind(_) => true,
            Self::Distance(distance) => distance.is_none_or(is_lamp_distance),
        }
    }
}

/// Longest distance from a lamp to a screen, in inches.
pub(crate) const MAX_LAMP_DISTANCE_IN: f64 = 120.0;

/// Whether a length is possible as the distance from a lamp to a screen.
pub(crate) fn is_lamp_distance(distance: Length) -> bool {
    (1..=Length::from_inches(MAX_LAMP_DISTANCE_IN).micrometres()).contains(&distance.micrometres())
}
