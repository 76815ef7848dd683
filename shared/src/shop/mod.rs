//! The shop's state: what it holds, the fold of the journal into it, and the settings of the shop as a whole.
//!
//! What belongs to a subject is folded by the subject's own log; what is one value for the whole shop is a field here.
//!
//! # Decisions
//!
//! - Facts are applied in the order of (stamp, device, sequence number). Fields are last-writer-wins because they are
//!   written in that order; pieces are signed sums.
//! - A fact about something that has not arrived yet creates it with default values, so that nothing is lost whatever
//!   the order of the files.
//! - Nothing is removed from the journal, except the entries of an import that is taken back: deleting is a fact, and undo
//!   is another one.

mod changes;
pub mod checkpoint;
mod deleted;
mod links;
mod queries;
mod settings_form;

pub use deleted::{DeletedKind, DeletedThing};
pub use settings_form::{ShopForm, WEEK_FIELDS};

use crate::codec::Encode;
use crate::collections::{Table, sort_by_key};
use crate::deletion::{DeleteById, Deletion, Tombstones};
use crate::facts::{Entry, Fact, Journal};
use crate::failure::model::Failures;
use crate::heat::model::HeatLog;
use crate::ids::{DeviceId, RunId, Subject};
use crate::ink::model::InkLog;
use crate::job::model::{Job, Lot};
use crate::journal::OrderKey;
use crate::photo::model::Photos;
use crate::plan::model::{Closings, Tally};
use crate::run::model::{CheckRecord, DryerUse, Progress, Run};
use crate::screen::model::{ExposureLog, Screens};
use crate::time::WallTime;
use crate::units::Seconds;
use links::Links;
use std::borrow::Cow;
use std::collections::BTreeMap;

/// Number of facts of each kind that only a newer version understands.
pub type UnknownFacts = BTreeMap<String, u32>;

/// Everything the facts so far add up to. Equal journals fold to equal bytes.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Shop {
    /// The shop's name; empty until it has one.
    pub name: String,
    /// Names of the crew.
    pub crew: Vec<String>,
    /// Closing times.
    pub closings: Closings,
    /// Time between runs, as entered by the shop.
    pub set_up_allowance: Option<Seconds>,
    /// Names of devices.
    pub devices: Table<String>,
    /// Facts this version does not understand.
    pub unknown: UnknownFacts,
    pub(crate) jobs: Table<Job>,
    pub(crate) lots: Table<Lot>,
    pub(crate) runs: Table<Run>,
    pub(crate) order: Vec<RunId>,
    /// Ids that were deleted before the first fact about them.
    pub(crate) deleted_early: Tombstones,
    /// Dryers, flash units, ink sheets, fabric limits, cure tests, trials and climate readings.
    pub heat: HeatLog,
    /// The screens.
    pub screens: Screens,
    /// Exposures of stencils, and the reclaim bath.
    pub exposure_log: ExposureLog,
    /// Failures on the press.
    pub failures: Failures,
    /// Photos and their subjects.
    pub photos: Photos,
    /// Ink components, recipes and pots.
    pub ink: InkLog,
    /// When each thing that is deleted now was deleted, as wall time.
    pub(crate) deleted_at: Table<WallTime>,
    pub(crate) tally: Tally,
    pub(crate) last: Option<OrderKey>,
    pub(crate) fact_count: u64,
    pub(crate) links: Links,
}

/// A setting of the shop that every device of it shares.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Encode)]
pub enum ShopSetting {
    /// The names of the crew.
    Crew,
    /// The usual closing times, or that of a day.
    Closing,
    /// The time from one run's end to the next one's first pull.
    SetUp,
    /// The order in which open runs are printed.
    Order,
}

impl Shop {
    /// The setting of a shop with data that this fact would give another value.
    pub(crate) fn setting_changed_by(&self, fact: &Fact) -> Option<ShopSetting> {
        let (setting, differs) = match fact {
            Fact::CrewNamed(names) => (ShopSetting::Crew, *names != self.crew),
            Fact::WeekClosing(week) => (ShopSetting::Closing, *week != self.closings.week),
            Fact::DayClosing { day, time } => (ShopSetting::Closing, self.closings.days.get(day) != Some(time)),
            Fact::SetUpAllowance(time) => (ShopSetting::SetUp, self.set_up_allowance != Some(*time)),
            Fact::RunsOrdered(runs) => (ShopSetting::Order, *runs != self.order()),
            Fact::ShopNamed(_)
            | Fact::DeviceNamed(_)
            | Fact::JobSet(_)
            | Fact::LotSet(_)
            | Fact::RunSet(_)
            | Fact::Deleted
            | Fact::Restored
            | Fact::JobFinished
            | Fact::JobReopened
            | Fact::CheckMade { .. }
            | Fact::RunStarted
            | Fact::Pulled { .. }
            | Fact::Misprinted { .. }
            | Fact::Stopped(_)
            | Fact::Resumed
            | Fact::RunEnded
            | Fact::Heat(_)
            | Fact::Screen(_)
            | Fact::Stencil(_)
            | Fact::Failure(_)
            | Fact::Photo(_)
            | Fact::Ink(_)
            | Fact::Unknown { .. } => return None,
        };
        (differs && !self.is_new()).then_some(setting)
    }

    /// Folds a whole journal.
    pub fn fold(journal: &Journal) -> Self {
        let mut shop = Self::default();
        for entry in journal.in_order() {
            shop.apply(entry);
        }
        shop
    }

    /// Folds entries that come in the order of the fold.
    pub fn fold_entries(entries: impl IntoIterator<Item = Entry>) -> Self {
        let mut shop = Self::default();
        entries.into_iter().for_each(|entry| shop.apply(&entry));
        shop
    }

    /// Folds entries in, given in any order.
    ///
    /// Returns `false` and changes nothing if one of them comes before the last folded fact or was folded
    /// already; the shop must then be folded again from the journal.
    pub fn apply_all(&mut self, entries: &[Entry]) -> bool {
        let mut sorted: Vec<&Entry> = entries.iter().collect();
        sort_by_key(&mut sorted, |entry| entry.key());
        sorted.dedup_by_key(|entry| entry.key());
        if sorted.first().is_some_and(|first| self.last >= Some(first.key())) {
            return false;
        }
        for entry in sorted {
            self.apply(entry);
        }
        true
    }

    /// Folds one fact in, which must come after every fact folded before.
    fn apply(&mut self, entry: &Entry) {
        self.last = Some(entry.key());
        self.apply_fact(entry.device, entry.at, entry.subject, &entry.fact);
    }

    fn apply_fact(&mut self, device: DeviceId, at: WallTime, id: Subject, fact: &Fact) {
        self.fact_count += 1;
        match fact {
            Fact::ShopNamed(name) => self.name.clone_from(name),
            Fact::CrewNamed(names) => self.crew.clone_from(names),
            Fact::WeekClosing(week) => self.closings.week = *week,
            Fact::DayClosing { day, time } => {
                self.closings.days.insert(*day, *time);
            }
            Fact::SetUpAllowance(seconds) => self.set_up_allowance = Some(*seconds),
            Fact::DeviceNamed(name) => {
                self.devices.insert(id, name.clone());
            }
            Fact::RunsOrdered(runs) => self.order.clone_from(runs),
            Fact::JobSet(fields) => {
                let gone = self.deleted_early.take(id);
                self.change_job(id, |job| {
                    job.created.set_once(at);
                    fields.iter().for_each(|field| job.set(field));
                    job.deleted |= gone;
                });
            }
            Fact::LotSet(fields) => {
                let (rank, gone) = (self.fact_count, self.deleted_early.take(id));
                self.change_lot(id, |lot| {
                    lot.created.set_once(at);
                    lot.rank = if lot.rank == 0 { rank } else { lot.rank };
                    fields.iter().for_each(|field| lot.set(field));
                    lot.deleted |= gone;
                });
            }
            Fact::RunSet(fields) => {
                let (rank, gone) = (self.fact_count, self.deleted_early.take(id));
                self.change_run(id, |run| {
                    run.created.set_once(at);
                    run.rank = if run.rank == 0 { rank } else { run.rank };
                    fields.iter().for_each(|field| run.set(field));
                    run.deleted |= gone;
                });
            }
            Fact::Deleted => {
                self.deleted_at.insert(id, at);
                self.delete(id, true);
            }
            Fact::Restored => {
                self.deleted_at.remove(&id);
                self.delete(id, false);
            }
            Fact::JobFinished => {
                self.change_job(id, |job| job.finished = Some(at));
                for run in self.links.runs_of_job(id).collect::<Vec<RunId>>() {
                    self.change_progress(run, |progress| {
                        if progress.is_on_press() {
                            progress.end(at);
                        }
                        progress.archive_pulls();
                    });
                }
            }
            Fact::JobReopened => self.change_job(id, |job| job.finished = None),
            Fact::CheckMade { item, expected, outcome, by } => {
                let dryer = self.heat.chosen_dryer(id);
                self.change_run(id, |run| {
                    let dryer = DryerUse { dryer, belt: run.set_up.belt };
                    let record = CheckRecord::new(expected.clone(), *outcome, by.clone(), at, dryer);
                    run.checks.insert(*item, record.after(run.checks.get(item), *item));
                });
            }
            Fact::RunStarted => self.change_progress(id, |progress| progress.start(at)),
            Fact::Pulled { pieces, size } => {
                let worked = self.change_progress(id, |progress| progress.pull(device, at, *pieces, *size));
                let row = self.tally.row_mut(at);
                row.pieces += i64::from(*pieces);
                row.active += worked;
            }
            Fact::Misprinted { pieces, size, cause, was_counted } => {
                let worked = self.change_progress(id, |progress| {
                    progress.misprint(device, at, *pieces, *size, *cause, *was_counted)
                });
                let row = self.tally.row_mut(at);
                row.misprints += i64::from(*pieces);
                row.pieces -= if *was_counted { i64::from(*pieces) } else { 0 };
                row.active += worked;
            }
            Fact::Stopped(cause) => self.change_progress(id, |progress| progress.stop(at, *cause)),
            Fact::Resumed => self.change_progress(id, |progress| progress.resume(at)),
            Fact::RunEnded => self.change_progress(id, |progress| progress.end(at)),
            Fact::Screen(fact) => {
                self.screens.apply(id, at, fact);
                self.deleted_early.claim(id, self.fact_count, &mut self.screens);
            }
            Fact::Stencil(fact) => {
                self.exposure_log.apply(id, at, fact);
                self.deleted_early.claim(id, self.fact_count, &mut self.exposure_log);
            }
            Fact::Failure(fact) => {
                self.failures.apply(id, at, fact);
                self.deleted_early.claim(id, self.fact_count, &mut self.failures);
            }
            Fact::Heat(fact) => {
                self.heat.apply(id, at, fact);
                self.deleted_early.claim(id, self.fact_count, &mut self.heat);
            }
            Fact::Photo(fact) => self.photos.apply(id, at, fact),
            Fact::Ink(fact) => {
                self.ink.apply(id, at, self.fact_count, fact);
                self.deleted_early.claim(id, self.fact_count, &mut self.ink);
            }
            Fact::Unknown { kind, .. } => *self.unknown.entry(kind.clone()).or_insert(0) += 1,
        }
    }

    /// A run with facts folded onto a copy of it that this device has not stored yet. `None` if the run is unknown.
    pub(crate) fn run_with<'a, 'f>(
        &'a self,
        id: RunId,
        device: DeviceId,
        unsaved: impl Iterator<Item = (WallTime, &'f Fact)>,
    ) -> Option<Cow<'a, Run>> {
        let run = self.runs.get(&id)?;
        let mut unsaved = unsaved.peekable();
        if unsaved.peek().is_none() {
            return Some(Cow::Borrowed(run));
        }
        let mut copy = Self::default();
        copy.runs.insert(id, run.clone());
        unsaved.for_each(|(at, fact)| copy.apply_fact(device, at, id, fact));
        copy.runs.remove(&id).map(Cow::Owned)
    }

    fn change_progress<R>(&mut self, run: RunId, change: impl FnOnce(&mut Progress) -> R) -> R {
        self.change_run(run, |run| change(&mut run.progress))
    }

    /// Deletes or restores the thing of this id: the first that has it. An id is of one thing only, but for hostile
    /// files, and for those the order is fixed.
    fn delete(&mut self, id: Subject, deleted: bool) {
        let deletion = Deletion { deleted, rank: self.fact_count };
        let known = self.delete_linked(id, deletion)
            || self.screens.delete(id, deletion)
            || self.failures.delete(id, deletion)
            || self.exposure_log.delete(id, deletion)
            || self.heat.delete(id, deletion)
            || self.ink.delete(id, deletion);
        if !known {
            self.deleted_early.keep(id, deletion);
        }
    }
}
