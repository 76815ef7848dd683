//! Folding facts into the shop.
//!
//! Facts are applied in the order of (stamp, device, sequence number). Fields are last-writer-wins because
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
        let (at, id) = (entry.stamp.wall, entry.subject);
        self.last = Some(entry.key());
        self.facts += 1;
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
                let job = self.jobs.or_default(id);
                job.created = if job.created == 0 { at } else { job.created };
                fields.iter().for_each(|field| job.set(field));
                self.gone.claim(id, self.facts, &mut self.jobs);
            }
            Fact::LotSet(fields) => {
                let lot = self.lots.or_default(id);
                lot.created = if lot.created == 0 { at } else { lot.created };
                lot.rank = if lot.rank == 0 { self.facts } else { lot.rank };
                fields.iter().for_each(|field| lot.set(field));
                self.gone.claim(id, self.facts, &mut self.lots);
            }
            Fact::RunSet(fields) => {
                let run = self.runs.or_default(id);
                run.created = if run.created == 0 { at } else { run.created };
                run.rank = if run.rank == 0 { self.facts } else { run.rank };
                fields.iter().for_each(|field| run.set(field));
                self.gone.claim(id, self.facts, &mut self.runs);
            }
            Fact::Deleted => self.delete(id, true),
            Fact::Restored => self.delete(id, false),
            Fact::JobFinished => {
                self.jobs.or_default(id).finished = Some(at);
                for (_, run) in self.runs.iter_mut().filter(|(_, run)| {
                    run.lot.and_then(|lot| self.lots.get(&lot)).is_some_and(|lot| lot.job == Some(id))
                }) {
                    if run.progress.is_on_press() {
                        run.progress.end(at);
                    }
                    run.progress.condense();
                }
            }
            Fact::JobReopened => self.jobs.or_default(id).finished = None,
            Fact::CheckMade { .. } | Fact::RunStarted | Fact::Stopped(_) | Fact::Resumed | Fact::RunEnded => {
                self.runs.or_default(id).take(entry.device, at, &entry.fact);
            }
            Fact::Pulled { pieces, .. } => {
                let worked = self.runs.or_default(id).take(entry.device, at, &entry.fact);
                let row = self.tally.at(at);
                row.pieces += i64::from(*pieces);
                row.active += worked;
            }
            Fact::Misprinted { pieces, was_counted, .. } => {
                let worked = self.runs.or_default(id).take(entry.device, at, &entry.fact);
                let row = self.tally.at(at);
                row.misprints += i64::from(*pieces);
                row.pieces -= if *was_counted { i64::from(*pieces) } else { 0 };
                row.active += worked;
            }
            Fact::Screen(fact) => {
                self.screens.take(id, at, fact);
                self.gone.claim(id, self.facts, &mut self.screens);
            }
            Fact::Stencil(fact) => {
                self.stencils.take(id, at, fact);
                self.gone.claim(id, self.facts, &mut self.stencils);
            }
            Fact::Failure(fact) => {
                self.failures.take(id, at, fact);
                self.gone.claim(id, self.facts, &mut self.failures);
            }
            Fact::Heat(fact) => {
                self.heat.take(id, at, fact);
                self.gone.claim(id, self.facts, &mut self.heat);
            }
            Fact::Photo(fact) => self.photos.take(id, at, fact),
            Fact::Ink(fact) => {
                self.ink.take(id, at, self.facts, fact);
                self.gone.claim(id, self.facts, &mut self.ink);
            }
            Fact::Unknown { kind, .. } => *self.unknown.entry(kind.clone()).or_insert(0) += 1,
        }
    }

    /// Deletes or restores the thing of this id: the first that has it. An id is of one thing only, but for hostile
    /// files, and for those the order is fixed.
    fn delete(&mut self, id: Subject, deleted: bool) {
        let deletion = Deletion { deleted, rank: self.facts };
        let known = self.jobs.delete(id, deletion)
            || self.lots.delete(id, deletion)
            || self.runs.delete(id, deletion)
            || self.screens.delete(id, deletion)
            || self.failures.delete(id, deletion)
            || self.stencils.delete(id, deletion)
            || self.heat.delete(id, deletion)
            || self.ink.delete(id, deletion);
        if !known {
            self.gone.keep(id, deletion);
        }
    }
}
