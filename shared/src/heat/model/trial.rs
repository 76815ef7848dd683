//! A trial of a cure.

use crate::codec::Encode;
use crate::facts::{Fabric, Flash, TrialField, TrialVerdict};
use crate::time::WallTime;
use crate::units::{BeltSpeed, Seconds, Temperature};

/// A trial of an ink on a fabric.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Trial {
    /// The ink's name.
    pub ink: String,
    /// The fabric.
    pub fabric: Fabric,
    /// Mesh count in threads per inch.
    pub mesh: Option<u16>,
    /// Number of strokes that print ink.
    pub hits: u8,
    /// Flash settings; `None` if not flashed.
    pub flash: Option<Flash>,
    /// Dryer setting.
    pub dryer: Option<Temperature>,
    /// Belt speed.
    pub belt: Option<BeltSpeed>,
    /// Dwell: time in the heat for one pass.
    pub dwell: Option<Seconds>,
    /// Passes through the dryer.
    pub passes: u8,
    /// Outcome, in the shop's words.
    pub outcome: String,
    /// The shop's verdict.
    pub verdict: TrialVerdict,
    /// Free notes.
    pub notes: String,
    /// Name of the person who ran the trial, if entered.
    pub by: Option<String>,
    /// Wall time of its first fact.
    pub created: WallTime,
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
