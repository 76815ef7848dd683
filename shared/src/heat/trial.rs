//! Ink trials: a new ink on a fabric, how it was printed and with what result.

use super::fact::{is_belt, is_met, is_set};
use super::ink_key;
use crate::job::{Fabric, RunId};
use crate::journal::Subject;
use crate::journal::fact::{is_name, is_note};
use crate::pack::Pack;
use crate::quantity::{BeltSpeed, Seconds, Temperature};
use crate::run::Flash;
use crate::shop::Shop;
use crate::sorted::sort_by;
use serde::{Deserialize, Serialize};

/// The shop's verdict on a trial. **Frozen**: names and order are stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case")]
pub enum TrialVerdict {
    /// Not decided yet.
    #[default]
    Open,
    /// Print it this way.
    Keep,
    /// Nearly right: change something and try again.
    Adjust,
    /// Not this way.
    Reject,
}

/// A field of a trial. **Frozen**: stored.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, Pack)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum TrialField {
    /// The ink's name.
    Ink(String),
    /// The fabric.
    Fabric(Fabric),
    /// Mesh count in threads per inch.
    Mesh(Option<u16>),
    /// Number of strokes that print ink.
    Hits(u8),
    /// Flash settings; `None` if not flashed.
    Flash(Option<Flash>),
    /// Dryer setting.
    Dryer(Option<Temperature>),
    /// Belt speed.
    Belt(Option<BeltSpeed>),
    /// Dwell: time in the heat for one pass.
    Dwell(Option<Seconds>),
    /// Passes through the dryer.
    Passes(u8),
    /// Outcome, in the shop's words.
    Outcome(String),
    /// The shop's verdict.
    Verdict(TrialVerdict),
    /// Free notes.
    Notes(String),
    /// Name of the person who ran the trial, if entered.
    By(Option<String>),
}

impl TrialField {
    pub(super) fn in_bounds(&self) -> bool {
        match self {
            Self::Ink(text) => is_name(text),
            Self::By(by) => by.iter().all(|text| is_name(text)),
            Self::Outcome(text) | Self::Notes(text) => is_note(text),
            Self::Flash(flash) => flash.is_none_or(|flash| is_set(flash.seconds)),
            Self::Dryer(temperature) => temperature.is_none_or(is_met),
            Self::Belt(speed) => speed.is_none_or(is_belt),
            Self::Dwell(time) => time.is_none_or(is_set),
            Self::Fabric(_) | Self::Mesh(_) | Self::Hits(_) | Self::Passes(_) | Self::Verdict(_) => true,
        }
    }
}

/// A trial of an ink on a fabric.
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize, Pack)]
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
    /// Unix time in milliseconds of its first fact.
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

/// How well a trial matches a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum TrialFit {
    /// The same ink on the same fabric.
    InkAndFabric,
    /// The same ink on another fabric: its heat may be wrong here.
    Ink,
}

/// Trials with a run's ink: those on its fabric first, then on other fabrics; the newest first within each.
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

/// All trials that are not deleted, the newest first.
pub fn trial_log(shop: &Shop) -> Vec<(Subject, &Trial)> {
    let mut trials: Vec<_> = shop.heat.trials().filter(|(_, trial)| !trial.deleted).collect();
    sort_by(&mut trials, |(a, one), (b, other)| (other.created, b).cmp(&(one.created, a)));
    trials
}
