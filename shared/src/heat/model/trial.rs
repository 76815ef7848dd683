//! A trial of a cure.

use crate::codec::Encode;
use crate::facts::{Fabric, Flash, TrialField, TrialVerdict};
use crate::units::{BeltSpeed, Seconds, Temperature};
use serde::{Deserialize, Serialize};

/// A trial of an ink on a fabric.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize, Encode)]
pub struct Trial {
    /// The ink's name.
    pub ink: String,
    /// The fabric.
    pub fabric: Fabric,
    /// Threads an inch.
    pub mesh: Option<u16>,
    /// Strokes that lay ink.
    pub hits: u8,
    /// Flash, or none.
    pub flash: Option<Flash>,
    /// What the dryer was set to.
    pub dryer: Option<Temperature>,
    /// How fast its belt ran.
    pub belt: Option<BeltSpeed>,
    /// Time in the heat, one pass.
    pub dwell: Option<Seconds>,
    /// Passes.
    pub passes: u8,
    /// What came of it.
    pub outcome: String,
    /// What the shop makes of it.
    pub verdict: TrialVerdict,
    /// Anything else to know.
    pub notes: String,
    /// Who tried it.
    pub by: Option<String>,
    /// Wall time of its first fact.
    pub created: u64,
    /// Whether it was deleted.
    pub deleted: bool,
}

impl Trial {
    pub(crate) fn set(&mut self, field: &TrialField) {
        match field {
            TrialField::Ink(ink) => self.ink.clone_from(ink),
            TrialField::Fabric(fabric) => self.fabric = *fabric,
            TrialField::Mesh(mesh) => self.mesh = *mesh,
            TrialField::Hits(hits) => self.hits = *hits,
            TrialField::Flash(flash) => self.flash = *flash,
            TrialField::Dryer(temperature) => self.dryer = *temperature,
            TrialField::Belt(speed) => self.belt = *speed,
            TrialField::Dwell(time) => self.dwell = *time,
            TrialField::Passes(passes) => self.passes = *passes,
            TrialField::Outcome(outcome) => self.outcome.clone_from(outcome),
            TrialField::Verdict(verdict) => self.verdict = *verdict,
            TrialField::Notes(notes) => self.notes.clone_from(notes),
            TrialField::By(by) => self.by.clone_from(by),
        }
    }
}
