//! Trials: a new ink on a fabric, with how it was printed and what came of it.

use super::ink_key;
use crate::codec::Encode;
use crate::collections::sort_by;
use crate::facts::{Fabric, Flash, TrialField, TrialVerdict};
use crate::ids::{RunId, Subject};
use crate::shop::Shop;
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
    pub(super) fn set(&mut self, field: &TrialField) {
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

/// How well a trial fits a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum TrialFit {
    /// The same ink on the same fabric.
    InkAndFabric,
    /// The same ink on another fabric: its heat may be wrong here.
    Ink,
}

/// The trials that tell something for a run: the same ink on its fabric first, then the same ink on
/// another; the newest first within each.
pub fn trials_for(shop: &Shop, run: RunId) -> Vec<(Subject, &Trial, TrialFit)> {
    let Some(run) = shop.run(run) else { return Vec::new() };
    let key = ink_key(&run.ink);
    if key.is_empty() {
        return Vec::new();
    }
    let fabric = run.lot.and_then(|lot| shop.lot(lot)).map(|lot| lot.fabric);
    let mut found: Vec<_> = trial_log(shop)
        .into_iter()
        .filter(|(_, trial)| ink_key(&trial.ink) == key)
        .map(|(id, trial)| {
            let fit = if fabric == Some(trial.fabric) { TrialFit::InkAndFabric } else { TrialFit::Ink };
            (id, trial, fit)
        })
        .collect();
    sort_by(&mut found, |one, other| one.2.cmp(&other.2));
    found
}

/// Every trial that was not deleted, the newest first.
pub fn trial_log(shop: &Shop) -> Vec<(Subject, &Trial)> {
    let mut trials: Vec<_> = shop.heat.trials().filter(|(_, trial)| !trial.deleted).collect();
    sort_by(&mut trials, |(a, one), (b, other)| (other.created, b).cmp(&(one.created, a)));
    trials
}
