//! What was deleted and can be restored, and how long its photos are kept.

use super::Shop;
use crate::collections::sort_by_key;
use crate::facts::Location;
use crate::ids::{JobId, PhotoId, Subject};
use crate::time::{Millis, WallTime};
use std::collections::BTreeSet;

/// What kind of thing was deleted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum DeletedKind {
    Job,
    Lot,
    Run(Location),
    Screen,
    Failure,
    Lamp,
    Emulsion,
    Exposure,
    BathCharge,
    BathBatch,
    Heater,
    InkSheet,
    CureTest,
    Trial,
    Settling,
    ClimateReading,
    Component,
    Recipe,
    Revision(u16),
    Pot,
}

/// A deleted thing.
#[derive(Clone, Debug, PartialEq)]
pub struct DeletedThing {
    /// The thing.
    pub id: Subject,
    /// What it is.
    pub kind: DeletedKind,
    /// Its name; empty if it has none.
    pub name: String,
    /// The thing it belongs to, by name; empty if it stands alone.
    pub of: String,
    /// When it was deleted.
    pub at: WallTime,
    /// What must be restored for it to be seen again: what it belongs to, if that is deleted too, and then itself.
    pub restores: Vec<Subject>,
}

/// A thing by its id.
struct Thing {
    kind: DeletedKind,
    name: String,
    parent: Option<Subject>,
}

impl Shop {
    /// How long after its deletion the photos of a thing are kept: thirty days, our own. Restored later, it comes back
    /// without them, unless another device or a backup has them.
    pub const KEEP_PHOTOS: Millis = Millis::from_days(30);

    /// Most things listed by [`recently_deleted`](Self::recently_deleted).
    pub const MOST_DELETED: usize = 300;

    /// The deleted things that can be restored, the latest first: at most [`Self::MOST_DELETED`].
    ///
    /// Entries of a pot's ledger are not among them: they are struck out where they stand, and restored there.
    pub fn recently_deleted(&self) -> Vec<DeletedThing> {
        let mut deleted: Vec<(Subject, WallTime)> = self.deleted_at.iter().map(|(id, at)| (*id, *at)).collect();
        sort_by_key(&mut deleted, |(id, at)| (std::cmp::Reverse(*at), *id));
        deleted
            .into_iter()
            .filter_map(|(id, at)| {
                let Thing { kind, name, .. } = self.thing(id)?;
                let parents = self.parents(id);
                let of = parents.last().and_then(|parent| self.thing(*parent)).map(|parent| parent.name);
                let gone = parents.iter().rev().filter(|parent| self.deleted_at.contains_key(parent)).copied();
                Some(DeletedThing {
                    id,
                    kind,
                    name,
                    of: of.unwrap_or_default(),
                    at,
                    restores: gone.chain([id]).collect(),
                })
            })
            .take(Self::MOST_DELETED)
            .collect()
    }

    /// Whether there is such a thing and it is not deleted.
    pub fn is_here(&self, id: Subject) -> bool {
        !self.deleted_at.contains_key(&id) && self.thing(id).is_some()
    }

    /// The job that this is, or that this lot or run belongs to.
    pub fn job_with(&self, id: Subject) -> Option<JobId> {
        let top = self.parents(id).last().copied().unwrap_or(id);
        self.jobs.contains_key(&top).then_some(top)
    }

    /// The photos that are in use at wall time `now`: not those of things deleted more than [`Self::KEEP_PHOTOS`] ago.
    pub fn photos_in_use(&self, now: WallTime) -> BTreeSet<PhotoId> {
        self.photos.ids_except(|subject| self.is_long_gone(subject, now))
    }

    /// The stored photos that can be deleted at wall time `now`.
    pub fn photos_to_delete(&self, stored: &BTreeSet<PhotoId>, now: WallTime) -> Vec<PhotoId> {
        self.photos.to_delete(stored, now, |subject| self.is_long_gone(subject, now))
    }

    /// Whether it, or what it belongs to, was deleted more than [`Self::KEEP_PHOTOS`] before `now`.
    fn is_long_gone(&self, id: Subject, now: WallTime) -> bool {
        let long = |id: &Subject| self.deleted_at.get(id).is_some_and(|at| *at + Self::KEEP_PHOTOS < now);
        long(&id) || self.parents(id).iter().any(long)
    }

    /// What it belongs to: the nearest first.
    fn parents(&self, id: Subject) -> Vec<Subject> {
        let mut parents = Vec::new();
        let mut next = self.thing(id).and_then(|thing| thing.parent);
        // Three steps lead from a failure to its job; a file may hold a ring.
        while let Some(parent) = next.filter(|_| parents.len() < 4) {
            parents.push(parent);
            next = self.thing(parent).and_then(|thing| thing.parent);
        }
        parents
    }

    fn thing(&self, id: Subject) -> Option<Thing> {
        let named = |kind, name: &String| Thing { kind, name: name.clone(), parent: None };
        let unnamed = |kind| Thing { kind, name: String::new(), parent: None };
        let words = |parts: [&String; 2]| {
            parts.into_iter().filter(|part| !part.is_empty()).cloned().collect::<Vec<_>>().join(" · ")
        };
        if let Some(job) = self.jobs.get(&id) {
            return Some(Thing { kind: DeletedKind::Job, name: words([&job.client, &job.title]), parent: None });
        }
        if let Some(lot) = self.lots.get(&id) {
            let name = words([&lot.garment, &lot.colour_name]);
            return Some(Thing { kind: DeletedKind::Lot, name, parent: lot.job });
        }
        if let Some(run) = self.runs.get(&id) {
            return Some(Thing { kind: DeletedKind::Run(run.location), name: run.ink.clone(), parent: run.lot });
        }
        if let Some(failure) = self.failures.get(id) {
            return Some(Thing { kind: DeletedKind::Failure, name: failure.notes.clone(), parent: failure.run });
        }
        if let Some(revision) = self.ink.revision(id) {
            let kind = DeletedKind::Revision(revision.number);
            return Some(Thing { kind, name: revision.note.to_owned(), parent: Some(revision.recipe) });
        }
        let (log, heat, ink) = (&self.exposure_log, &self.heat, &self.ink);
        None.or_else(|| self.screens.get(id).map(|it| named(DeletedKind::Screen, &it.label)))
            .or_else(|| log.lamp(id).map(|it| named(DeletedKind::Lamp, &it.name)))
            .or_else(|| log.emulsion(id).map(|it| named(DeletedKind::Emulsion, &it.name)))
            .or_else(|| log.exposure(id).map(|_| unnamed(DeletedKind::Exposure)))
            .or_else(|| log.bath.charge_with(id).map(|it| named(DeletedKind::BathCharge, &it.chemistry)))
            .or_else(|| log.bath.batch(id).map(|_| unnamed(DeletedKind::BathBatch)))
            .or_else(|| heat.heater(id).map(|it| named(DeletedKind::Heater, &it.name)))
            .or_else(|| heat.sheet(id).map(|it| named(DeletedKind::InkSheet, &it.ink)))
            .or_else(|| heat.test(id).map(|it| named(DeletedKind::CureTest, &it.ink)))
            .or_else(|| heat.trial(id).map(|it| named(DeletedKind::Trial, &it.ink)))
            .or_else(|| heat.settlings().any(|(it, _)| it == id).then(|| unnamed(DeletedKind::Settling)))
            .or_else(|| heat.climate().iter().any(|it| it.id == id).then(|| unnamed(DeletedKind::ClimateReading)))
            .or_else(|| ink.component(id).map(|it| named(DeletedKind::Component, &it.name)))
            .or_else(|| ink.recipe(id).map(|it| named(DeletedKind::Recipe, &it.name)))
            .or_else(|| ink.pot(id).map(|it| named(DeletedKind::Pot, &it.name)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::facts::frozen::{history, rows, subject_of};
    use crate::facts::{Entry, Fact, JobField, Journal, LotField, PhotoFact, RunField};
    use crate::journal::Stamp;
    use crate::time::wall;
    use uuid::Uuid;

    const JOB: Uuid = Uuid::from_u128(10);
    const LOT: Uuid = Uuid::from_u128(11);
    const RUN: Uuid = Uuid::from_u128(12);
    const DAY: u64 = 24 * 3600 * 1000;

    /// A job with a lot and a run, and then these facts a day apart.
    fn shop(then: &[(Uuid, Fact)]) -> Shop {
        let made = [
            (JOB, Fact::JobSet(vec![JobField::Client("Choir".into()), JobField::Title("Tour".into())])),
            (LOT, Fact::LotSet(vec![LotField::Job(JOB), LotField::Garment("Tee".into())])),
            (RUN, Fact::RunSet(vec![RunField::Lot(LOT), RunField::Ink("Night".into())])),
        ];
        let entries = made.iter().chain(then).enumerate().map(|(at, (subject, fact))| {
            let (seq, stamp) = (at as u64 + 1, Stamp { wall: wall(at as u64 * DAY), counter: 0 });
            Entry { device: Uuid::from_u128(1), seq, stamp, at: stamp.wall, subject: *subject, fact: fact.clone() }
        });
        Shop::fold(&Journal::of(entries.collect()).unwrap())
    }

    fn ids(shop: &Shop) -> Vec<Uuid> {
        shop.recently_deleted().iter().map(|thing| thing.id).collect()
    }

    #[test]
    fn what_was_deleted_is_listed_with_its_name_the_latest_first() {
        let shop = shop(&[(RUN, Fact::Deleted), (JOB, Fact::Deleted)]);
        let listed = shop.recently_deleted();
        assert_eq!(ids(&shop), [JOB, RUN]);
        assert_eq!((listed[0].name.as_str(), listed[0].of.as_str(), listed[0].at), ("Choir · Tour", "", wall(4 * DAY)));
        assert_eq!((listed[1].name.as_str(), listed[1].of.as_str()), ("Night", "Choir · Tour"));
        assert!(!shop.is_here(JOB) && shop.is_here(LOT));
    }

    #[test]
    fn restoring_a_run_restores_the_deleted_job_around_it() {
        let shop = shop(&[(RUN, Fact::Deleted), (LOT, Fact::Deleted), (JOB, Fact::Deleted)]);
        let run = shop.recently_deleted().into_iter().find(|thing| thing.id == RUN).unwrap();
        assert_eq!(run.restores, [JOB, LOT, RUN]);
    }

    /// Of each kind in the made-up journal: what its things are called, and what they belong to.
    fn of_each_kind() -> Vec<(DeletedKind, &'static str, &'static str)> {
        let job = "Peña Running Club · Reunion tees";
        vec![
            (DeletedKind::Job, job, ""),
            (DeletedKind::Lot, "Heavy tee · Navy", job),
            (DeletedKind::Run(Location::Other), "Brick red", job),
            (DeletedKind::Screen, "A4", ""),
            (DeletedKind::Failure, "Lower left corner", job),
            (DeletedKind::Lamp, "Halide", ""),
            (DeletedKind::Emulsion, "Dual cure", ""),
            (DeletedKind::Exposure, "", ""),
            (DeletedKind::BathCharge, "Stripper 1:20", ""),
            (DeletedKind::BathBatch, "", ""),
            (DeletedKind::Heater, "Flash 1", ""),
            (DeletedKind::InkSheet, "Brick red", ""),
            (DeletedKind::CureTest, "Brick red", ""),
            (DeletedKind::Trial, "Brick red", ""),
            (DeletedKind::Settling, "", ""),
            (DeletedKind::ClimateReading, "", ""),
            (DeletedKind::Component, "Red shade", ""),
            (DeletedKind::Recipe, "Brick red", ""),
            (DeletedKind::Revision(1), "", "Brick red"),
            (DeletedKind::Pot, "B2", ""),
        ]
    }

    /// Does not compile with a kind more, which needs a row above.
    fn is_of_20_kinds(kind: DeletedKind) {
        match kind {
            DeletedKind::Job
            | DeletedKind::Lot
            | DeletedKind::Run(_)
            | DeletedKind::Screen
            | DeletedKind::Failure
            | DeletedKind::Lamp
            | DeletedKind::Emulsion
            | DeletedKind::Exposure
            | DeletedKind::BathCharge
            | DeletedKind::BathBatch
            | DeletedKind::Heater
            | DeletedKind::InkSheet
            | DeletedKind::CureTest
            | DeletedKind::Trial
            | DeletedKind::Settling
            | DeletedKind::ClimateReading
            | DeletedKind::Component
            | DeletedKind::Recipe
            | DeletedKind::Revision(_)
            | DeletedKind::Pot => {}
        }
    }

    #[test]
    fn things_of_every_kind_are_listed_with_their_names_and_restored() {
        let about: BTreeSet<Subject> = rows().iter().map(|row| subject_of(&row.fact)).collect();
        let mut entries = history();
        let record = |entries: &mut Vec<Entry>, subject: Subject, fact: Fact| {
            let at = entries[entries.len() - 1].stamp.wall + Millis::from_ms(1);
            let (seq, stamp) = (entries.len() as u64, Stamp { wall: at, counter: 0 });
            entries.push(Entry { device: Uuid::from_u128(3), seq, stamp, at, subject, fact });
        };
        about.iter().for_each(|subject| record(&mut entries, *subject, Fact::Deleted));
        let listed = |entries: &[Entry]| {
            let mut listed = Shop::fold(&Journal::of(entries.to_vec()).unwrap()).recently_deleted();
            listed.retain(|thing| about.contains(&thing.id));
            listed
        };
        let deleted = listed(&entries);
        for (kind, name, of) in of_each_kind() {
            is_of_20_kinds(kind);
            let thing = deleted.iter().find(|thing| thing.kind == kind);
            let named = thing.map(|thing| (thing.name.as_str(), thing.of.as_str()));
            assert_eq!(named, Some((name, of)), "{kind:?}");
        }
        assert!(deleted.iter().all(|thing| of_each_kind().iter().any(|(kind, ..)| thing.kind == *kind)), "no other");
        for thing in deleted {
            assert_eq!(thing.restores.last(), Some(&thing.id));
            let mut restored = entries.clone();
            thing.restores.iter().for_each(|id| record(&mut restored, *id, Fact::Restored));
            assert!(listed(&restored).iter().all(|left| !thing.restores.contains(&left.id)), "{:?}", thing.kind);
            assert!(Shop::fold(&Journal::of(restored).unwrap()).is_here(thing.id), "{:?}", thing.kind);
        }
    }

    #[test]
    fn what_was_restored_or_is_of_no_known_kind_is_not_listed() {
        let shop = shop(&[(RUN, Fact::Deleted), (RUN, Fact::Restored), (Uuid::from_u128(99), Fact::Deleted)]);
        assert!(ids(&shop).is_empty());
        assert_eq!((shop.job_with(RUN), shop.job_with(Uuid::from_u128(99))), (Some(JOB), None));
    }

    #[test]
    fn photos_of_a_deleted_job_are_kept_for_thirty_days() {
        let photo = PhotoId([7; 32]);
        let taken = Fact::Photo(PhotoFact::Taken { photo, width: 40, height: 30, bytes: 100 });
        let shop = shop(&[(RUN, taken), (JOB, Fact::Deleted)]);
        let stored = BTreeSet::from([photo]);
        let last = wall(4 * DAY) + Shop::KEEP_PHOTOS;
        assert_eq!((shop.photos_in_use(last), shop.photos_to_delete(&stored, last)), (stored.clone(), vec![]));
        let after = last + Millis::from_ms(1);
        assert_eq!((shop.photos_in_use(after), shop.photos_to_delete(&stored, after)), (BTreeSet::new(), vec![photo]));
    }
}
