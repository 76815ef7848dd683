//! Folding facts into the shop.
//!
//! Facts are applied in the order of (stamp, device, sequence number), and happened at the wall time of their entry. Fields are last-writer-wins because
//! they are written in that order; pieces are signed sums. A fact about something that has not arrived yet
//! creates it with default values, so that nothing is lost whatever the order of the files.

use super::Shop;
use crate::collections::sort_by_key;
use crate::deletion::{DeleteById, Deletion};
use crate::facts::{Entry, Fact, Journal};
use crate::ids::Subject;

impl Shop {
    /// Folds a whole journal.
    pub fn fold(journal: &Journal) -> Self {
        let mut shop = Self::default();
        for entry in journal.in_order() {
            shop.apply(entry);
        }
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
        let (at, id) = (entry.at, entry.subject);
        self.last = Some(entry.key());
        self.fact_count += 1;
        match &entry.fact {
            Fact::ShopNamed(name) => self.name.clone_from(name),
            Fact::CrewNamed(names) => self.crew.clone_from(names),
            Fact::WeekClosing(week) => self.closings.week = *week,
            Fact::DayClosing { day, minutes } => {
                self.closings.days.insert(*day, *minutes);
            }
            Fact::SetUpAllowance(seconds) => self.set_up_allowance = Some(*seconds),
            Fact::DeviceNamed(name) => {
                self.devices.insert(id, name.clone());
            }
            Fact::RunsOrdered(runs) => self.order.clone_from(runs),
            Fact::JobSet(fields) => {
                let job = self.jobs.get_or_insert_default(id);
                job.created.set_once(at);
                fields.iter().for_each(|field| job.set(field));
                self.deleted_early.claim(id, self.fact_count, &mut self.jobs);
            }
            Fact::LotSet(fields) => {
                let lot = self.lots.get_or_insert_default(id);
                lot.created.set_once(at);
                lot.rank = if lot.rank == 0 { self.fact_count } else { lot.rank };
                fields.iter().for_each(|field| lot.set(field));
                self.deleted_early.claim(id, self.fact_count, &mut self.lots);
            }
            Fact::RunSet(fields) => {
                let run = self.runs.get_or_insert_default(id);
                run.created.set_once(at);
                run.rank = if run.rank == 0 { self.fact_count } else { run.rank };
                fields.iter().for_each(|field| run.set(field));
                self.deleted_early.claim(id, self.fact_count, &mut self.runs);
            }
            Fact::Deleted => self.delete(id, true),
            Fact::Restored => self.delete(id, false),
            Fact::JobFinished => {
                self.jobs.get_or_insert_default(id).finished = Some(at);
                for (_, run) in self.runs.iter_mut().filter(|(_, run)| {
                    run.lot.and_then(|lot| self.lots.get(&lot)).is_some_and(|lot| lot.job == Some(id))
                }) {
                    if run.progress.is_on_press() {
                        run.progress.end(at);
                    }
                    run.progress.archive_pulls();
                }
            }
            Fact::JobReopened => self.jobs.get_or_insert_default(id).finished = None,
            Fact::CheckMade { .. } | Fact::RunStarted | Fact::Stopped(_) | Fact::Resumed | Fact::RunEnded => {
                self.runs.get_or_insert_default(id).apply(entry.device, at, &entry.fact);
            }
            Fact::Pulled { pieces, .. } => {
                let worked = self.runs.get_or_insert_default(id).apply(entry.device, at, &entry.fact);
                let row = self.tally.row_mut(at);
                row.pieces += i64::from(*pieces);
                row.active += worked;
            }
            Fact::Misprinted { pieces, was_counted, .. } => {
                let worked = self.runs.get_or_insert_default(id).apply(entry.device, at, &entry.fact);
                let row = self.tally.row_mut(at);
                row.misprints += i64::from(*pieces);
                row.pieces -= if *was_counted { i64::from(*pieces) } else { 0 };
                row.active += worked;
            }
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

    /// Deletes or restores the thing of this id: the first that has it. An id is of one thing only, but for hostile
    /// files, and for those the order is fixed.
    fn delete(&mut self, id: Subject, deleted: bool) {
        let deletion = Deletion { deleted, rank: self.fact_count };
        let known = self.jobs.delete(id, deletion)
            || self.lots.delete(id, deletion)
            || self.runs.delete(id, deletion)
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
