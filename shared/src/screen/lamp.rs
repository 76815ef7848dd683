//! The shop's exposure lamps.

use crate::journal::fact::is_name;
use crate::pack::Pack;
use crate::quantity::Length;
use serde::{Deserialize, Serialize};

/// The kind of a lamp. **Frozen** names and order: they are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Default, Serialize, Deserialize, Pack)]
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

/// A lamp.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize, Pack)]
pub struct Lamp {
    /// The shop's name for it.
    pub name: String,
    /// The kind of lamp.
    pub kind: LampKind,
    /// Distance from the lamp to the emulsion.
    pub distance: Option<Length>,
    /// Wall time of its first fact.
    pub created: u64,
    /// Whether it was deleted.
    pub deleted: bool,
}

/// A field of a lamp. **Frozen** as [`crate::journal::Fact`] is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum LampField {
    /// The shop's name for it.
    Name(String),
    /// The kind of lamp.
    Kind(LampKind),
    /// Distance from the lamp to the emulsion.
    Distance(Option<Length>),
}

impl Lamp {
    pub(super) fn set(&mut self, field: &LampField) {
        match field {
            LampField::Name(name) => self.name.clone_from(name),
            LampField::Kind(kind) => self.kind = *kind,
            LampField::Distance(distance) => self.distance = *distance,
        }
    }

    pub(super) fn fields(&self) -> Vec<LampField> {
        vec![LampField::Name(self.name.clone()), LampField::Kind(self.kind), LampField::Distance(self.distance)]
    }
}

impl LampField {
    /// As [`crate::journal::Fact::in_bounds`].
    pub(crate) fn in_bounds(&self) -> bool {
        match self {
            Self::Name(name) => is_name(name),
            Self::Kind(_) => true,
            Self::Distance(distance) => distance.is_none_or(is_lamp_distance),
        }
    }
}

/// Longest distance from a lamp to a screen, in inches.
pub(super) const FURTHEST: f64 = 120.0;

/// Whether a length is possible as the distance from a lamp to a screen.
pub(super) fn is_lamp_distance(distance: Length) -> bool {
    (1..=Length::from_inches(FURTHEST).micrometres()).contains(&distance.micrometres())
}
