//! Folding facts into the shop.
//!
//! Facts are applied in the order of (stamp, device, number). Fields are last-writer-wins by being
//! written in that order; pieces are signed sums. A fact about something that has not arrived yet
//! makes an empty shell of it, so that no order of files loses anything.

use super::Shop;
use crate::collections::sort_by_key;
use crate::facts::{Entry, Fact, Journal};

impl Shop {
    /// The shop these facts add up to.
    pub fn fold(journal: &Journal) -> Self {
        let mut shop = Self::default();
        for entry in journal.in_order() {
            shop.apply(entry);
        }
        shop
    }

    /// Folds entries in, in whatever order they are given.
    ///
    /// False when one of them comes before what was folded already, or was folded already: the
    /// shop is then not changed, and must be folded anew from the journal.
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

    /// Folds one fact in. It must come after every fact folded before.
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
                job.deleted |= self.gone.remove(&id).is_some();
            }
            Fact::LotSet(fields) => {
                let lot = self.lots.or_default(id);
                lot.created = if lot.created == 0 { at } else { lot.created };
                lot.rank = if lot.rank == 0 { self.facts } else { lot.rank };
                fields.iter().for_each(|field| lot.set(field));
                lot.deleted |= self.gone.remove(&id).is_some();
            }
            Fact::RunSet(fields) => {
                let run = self.runs.or_default(id);
                run.created = if run.created == 0 { at } else { run.created };
                run.rank = if run.rank == 0 { self.facts } else { run.rank };
                fields.iter().for_each(|field| run.set(field));
                run.deleted |= self.gone.remove(&id).is_some();
            }
            Fact::Deleted => self.set_deleted(entry, true),
            Fact::Restored => self.set_deleted(entry, false),
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
            Fact::Screen(fact) => self.screens.take(id, at, fact, || self.gone.remove(&id).is_some()),
            Fact::Stencil(fact) => {
                if self.stencils.take(id, at, fact) && self.gone.remove(&id).is_some() {
                    self.stencils.set_deleted(id, true);
                }
            }
            Fact::Failure(fact) => self.failures.take(id, at, fact, || self.gone.remove(&id).is_some()),
            Fact::Heat(fact) => {
                self.heat.take(id, at, fact);
                if self.gone.contains_key(&id) && self.heat.set_deleted(id, true) {
                    self.gone.remove(&id);
                }
            }
            Fact::Photo(fact) => self.photos.take(id, at, fact),
            Fact::Ink(fact) => {
                if self.ink.take(id, at, self.facts, fact) && self.gone.remove(&id).is_some() {
                    self.ink.set_deleted(id, true, self.facts);
                }
            }
            Fact::Unknown { kind, .. } => *self.unknown.entry(kind.clone()).or_insert(0) += 1,
        }
    }

    fn set_deleted(&mut self, entry: &Entry, deleted: bool) {
        let id = entry.subject;
        if let Some(job) = self.jobs.get_mut(&id) {
            job.deleted = deleted;
        } else if let Some(lot) = self.lots.get_mut(&id) {
            lot.deleted = deleted;
        } else if let Some(run) = self.runs.get_mut(&id) {
            run.deleted = deleted;
        } else if let Some(screen) = self.screens.get_mut(id) {
            screen.deleted = deleted;
        } else if let Some(failure) = self.failures.get_mut(id) {
            failure.deleted = deleted;
        } else if self.stencils.set_deleted(id, deleted)
            || self.heat.set_deleted(id, deleted)
            || self.ink.set_deleted(id, deleted, self.facts)
        {
            // They keep it themselves.
        } else if deleted {
            self.gone.insert(id, ());
        } else {
            self.gone.remove(&id);
        }
    }
}
