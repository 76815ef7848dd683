//! An emulsion.

use crate::codec::Encode;
use crate::facts::{EmulsionField, Family};
use crate::time::WallTime;

/// An emulsion.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Emulsion {
    /// The shop's name for it.
    pub name: String,
    /// What hardens it.
    pub family: Family,
    /// Solids content in percent.
    pub solids: Option<u8>,
    /// Wall time of its first fact.
    pub created: WallTime,
    /// Whether it was deleted.
    pub deleted: bool,
}

impl Emulsion {
    pub(crate) fn set(&mut self, field: &EmulsionField) {
        match field {
            EmulsionField::Name(name) => self.name.clone_from(name),
            EmulsionField::Family(family) => self.family = *family,
            EmulsionField::Solids(solids) => self.solids = *solids,
        }
    }

    pub(crate) fn fields(&self) -> Vec<EmulsionField> {
        vec![
            EmulsionField::Name(self.name.clone()),
            EmulsionField::Family(self.family),
            EmulsionField::Solids(self.solids),
        ]
    }
}
