//! The shop's failures, folded from the facts.

use crate::bounds::{pieces, total};
use crate::codec::Encode;
use crate::collections::{Groups, Table, sort_by_key};
use crate::deletion::{DeleteById, Deletion, deletable};
use crate::facts::{FailureFact, FailureField, FailureKind, Mark, Remedy, Size, Suspects, Verdict};
use crate::ids::{RunId, Subject};
use crate::time::{Newest, WallTime};
use std::collections::BTreeMap;

/// A failure.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Failure {
    /// The run in which it happened; `None` until that fact has arrived.
    pub run: Option<RunId>,
    /// The screen that failed, if known.
    pub screen: Option<Subject>,
    /// What failed.
    pub kind: Option<FailureKind>,
    /// Where on the print it is.
    pub mark: Option<Mark>,
    /// Number of pieces printed since the last one known to be good.
    pub since: Option<u32>,
    /// Number of pieces it made suspect, by size.
    pub suspects: BTreeMap<Option<Size>, u32>,
    /// Number of pieces inspected, by size and verdict: sums of signed facts.
    pub(crate) judged: BTreeMap<(Option<Size>, Verdict), i64>,
    /// The remedy that was chosen.
    pub remedy: Option<Remedy>,
    /// The screen that replaces the failed one.
    pub replacement: Option<Subject>,
    /// Who found it.
    pub by: Option<String>,
    /// Free notes.
    pub notes: String,
    /// Wall time of its first fact.
    pub at: WallTime,
    /// Whether it was deleted.
    pub deleted: bool,
}

deletable!(Failure);

impl Failure {
    fn set(&mut self, field: &FailureField) {
        match field {
            FailureField::Run(run) => self.run = Some(*run),
            FailureField::Notes(notes) => self.notes.clone_from(notes),
            FailureField::Screen(screen) => self.screen = *screen,
            FailureField::Kind(kind) => self.kind = Some(*kind),
            FailureField::Mark(mark) => self.mark = *mark,
            FailureField::Since(since) => self.since = *since,
            FailureField::Suspects(rows) => {
                let mut suspects = BTreeMap::new();
                for Suspects { size, pieces } in rows.iter().filter(|row| row.pieces > 0) {
                    let sum: &mut u32 = suspects.entry(*size).or_default();
                    *sum = sum.saturating_add(*pieces);
                }
                self.suspects = suspects;
            }
            FailureField::Remedy(remedy) => self.remedy = *remedy,
            FailureField::Replacement(screen) => self.replacement = *screen,
            FailureField::By(by) => self.by.clone_from(by),
        }
    }

    /// Number of pieces of a size with this verdict.
    pub fn judged_of(&self, size: Option<Size>, verdict: Verdict) -> u32 {
        pieces(self.judged.get(&(size, verdict)).copied().unwrap_or(0))
    }

    /// Number of suspect pieces of a size that nobody has inspected.
    pub fn uninspected_of(&self, size: Option<Size>) -> u32 {
        let judged = |verdict| self.judged_of(size, verdict);
        let suspect = self.suspects.get(&size).copied().unwrap_or(0);
        suspect.saturating_sub(judged(Verdict::Good)).saturating_sub(judged(Verdict::Spoiled))
    }

    /// The sizes of its suspect and inspected pieces.
    pub fn sizes(&self) -> Vec<Option<Size>> {
        let mut sizes: Vec<Option<Size>> = self.suspects.keys().copied().collect();
        sizes.extend(self.judged.keys().map(|(size, _)| *size));
        sort_by_key(&mut sizes, |size| *size);
        sizes.dedup();
        sizes
    }

    /// Number of pieces inspected and good, of all sizes.
    pub fn good(&self) -> u32 {
        total(self.sizes().into_iter().map(|size| self.judged_of(size, Verdict::Good)))
    }

    /// Number of pieces inspected and spoiled, of all sizes.
    pub fn spoiled(&self) -> u32 {
        total(self.sizes().into_iter().map(|size| self.judged_of(size, Verdict::Spoiled)))
    }
}

/// The failures of the shop.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Failures {
    all: Table<Failure>,
    /// Those of each run, with deleted ones.
    of_run: Groups,
    /// Those of each screen, with deleted ones.
    of_screen: Groups,
    /// Those found last, with deleted ones.
    newest: Newest,
}

impl DeleteById for Failures {
    fn delete(&mut self, id: Subject, deletion: Deletion) -> bool {
        self.all.delete(id, deletion)
    }
}

impl Failures {
    /// A failure, also if it was deleted.
    pub fn get(&self, id: Subject) -> Option<&Failure> {
        self.all.get(&id)
    }

    /// A failure that was not deleted.
    pub fn live(&self, id: Subject) -> Option<&Failure> {
        self.all.get(&id).filter(|failure| !failure.deleted)
    }

    /// The failures that were not deleted.
    pub fn iter(&self) -> impl Iterator<Item = (Subject, &Failure)> {
        self.all.iter().filter(|(_, failure)| !failure.deleted).map(|(id, failure)| (*id, failure))
    }

    /// The failures of a run that were not deleted, oldest first.
    pub fn of_run(&self, run: RunId) -> Vec<(Subject, &Failure)> {
        self.live_of(self.of_run.of(run))
    }

    /// The failures of a screen that were not deleted, oldest first.
    pub fn of_screen(&self, screen: Subject) -> Vec<(Subject, &Failure)> {
        self.live_of(self.of_screen.of(screen))
    }

    fn live_of(&self, ids: &[Subject]) -> Vec<(Subject, &Failure)> {
        let mut rows: Vec<_> = ids.iter().filter_map(|id| Some((*id, self.live(*id)?))).collect();
        sort_by_key(&mut rows, |(id, failure)| (failure.at, *id));
        rows
    }

    /// The failures that were not deleted and are not of the time before, in no particular order.
    pub(crate) fn since(&self, is_before: impl Fn(WallTime) -> bool) -> Vec<(Subject, &Failure)> {
        match self.newest.since(&is_before) {
            Some(since) => since.filter_map(|id| Some((id, self.live(id)?))).collect(),
            None => self.iter().filter(|(_, failure)| !is_before(failure.at)).collect(),
        }
    }

    /// Number of rows that were decoded or changed. Tests count them.
    pub(crate) fn rows_in_memory(&self) -> usize {
        self.all.rows_in_memory() + self.of_run.rows_in_memory() + self.of_screen.rows_in_memory()
    }

    /// Folds a fact in.
    pub(crate) fn apply(&mut self, subject: Subject, at: WallTime, fact: &FailureFact) {
        let is_new = !self.all.contains_key(&subject);
        self.newest.replace(subject, None, Some(at).filter(|_| is_new));
        let failure = self.all.get_or_insert_with(subject, || Failure { at, ..Failure::default() });
        let (run, screen) = (failure.run, failure.screen);
        match fact {
            FailureFact::Set(fields) => fields.iter().for_each(|field| failure.set(field)),
            FailureFact::Judged { pieces, size, verdict, .. } => {
                *failure.judged.entry((*size, *verdict)).or_default() += i64::from(*pieces);
            }
        }
        self.of_run.replace(subject, run, failure.run);
        self.of_screen.replace(subject, screen, failure.screen);
    }
}
