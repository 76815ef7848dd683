//! The shop's exposure lamps.

use crate::codec::Encode;
use crate::facts::{LampField, LampKind};
use crate::time::WallTime;
use crate::units::Length;

/// A lamp.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Lamp {
    /// The shop's name for it.
    pub name: String,
    /// The kind of lamp.
    pub kind: LampKind,
    /// Distance from the lamp to the emulsion.
    pub distance: Option<Length>,
    /// Wall time of its first fact.
    pub created: WallTime,
    /// Whether it was deleted.
    pub deleted: bool,
}

impl Lamp {
    pub(crate) fn set(&mut self, field: &LampField) {
        match field {
            LampField::Name(name) => self.name.clone_from(name),
            LampField::Kind(kind) => self.kind = *kind,
            LampField::Distance(distance) => self.distance = *distance,
        }
    }

    pub(crate) fn fields(&self) -> Vec<LampField> {
        vec![LampField::Name(self.name.clone()), LampField::Kind(self.kind), LampField::Distance(self.distance)]
    }
}
