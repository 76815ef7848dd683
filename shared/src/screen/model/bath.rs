//! The reclaim bath: its charges, and the batches of screens that went through it.

use crate::codec::Encode;
use crate::collections::{Table, sort_by_key};
use crate::deletion::{DeleteById, Deletion, deletable};
use crate::facts::{BatchTime, BathField};
use crate::ids::Subject;
use crate::time::{Millis, WallTime};

/// Default for [`Bath::recharge_at`], in percent of the fresh bath's minutes per screen. Our own.
pub const DEFAULT_RECHARGE_PERCENT: u16 = 150;

/// A charge of the bath.
#[derive(Clone, Debug, PartialEq, Eq, Encode)]
pub struct Charge {
    /// When it was charged, as wall time.
    pub at: WallTime,
    /// The chemistry used.
    pub chemistry: String,
    /// Who did it.
    pub by: Option<String>,
    /// Whether it was deleted.
    pub deleted: bool,
}

/// Screens that went through the bath together.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Batch {
    /// Wall time at which they went in; `None` if only their coming out was recorded.
    pub went_in: Option<WallTime>,
    /// Wall time at which they came out; `None` while they are in the bath.
    pub came_out: Option<WallTime>,
    /// The screens, as far as they are in the shop's list.
    pub screens: Vec<Subject>,
    count_in: Option<u16>,
    count_out: Option<u16>,
    time: Option<BatchTime>,
    /// Whether it was deleted.
    pub deleted: bool,
}

impl Batch {
    /// Number of screens; at least 1.
    pub fn count(&self) -> u16 {
        self.count_out.or(self.count_in).unwrap_or(1).max(1)
    }

    /// Wall time at which it began, or at which it came out if the start was not recorded.
    pub fn started_at(&self) -> WallTime {
        self.went_in.or(self.came_out).unwrap_or_default()
    }

    /// Time in the bath; `None` while the batch is in the bath, and if its time was not recorded.
    pub fn duration(&self) -> Option<Millis> {
        let out = self.came_out?;
        let time = match self.time? {
            BatchTime::Elapsed => out.since(self.went_in?),
            BatchTime::Whole(time) => time.into(),
            BatchTime::EachScreen(time) => Millis::from(time) * u64::from(self.count()),
        };
        (time > Millis::ZERO).then_some(time)
    }

    /// Minutes per screen: the batch's time divided by its screens; `None` as for [`duration`](Self::duration).
    pub fn minutes_per_screen(&self) -> Option<f64> {
        self.duration().map(|time| time.minutes() / f64::from(self.count()))
    }
}

/// The reclaim bath, folded from the facts.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Bath {
    charges: Table<Charge>,
    batches: Table<Batch>,
    /// How many screens fit in at once.
    pub capacity: Option<u16>,
    recharge_at: Option<u16>,
    /// The shop's notes about it.
    pub note: String,
}

impl Bath {
    /// The limit at which the bath is recharged, in percent of the fresh bath's minutes per screen.
    pub fn recharge_at(&self) -> u16 {
        self.recharge_at.unwrap_or(DEFAULT_RECHARGE_PERCENT)
    }

    /// Whether the shop entered that limit itself.
    pub fn is_custom_recharge(&self) -> bool {
        self.recharge_at.is_some()
    }

    /// The charges that were not deleted, oldest first.
    pub fn charges(&self) -> Vec<(Subject, &Charge)> {
        let mut charges: Vec<_> =
            self.charges.iter().filter(|(_, charge)| !charge.deleted).map(|(id, charge)| (*id, charge)).collect();
        sort_by_key(&mut charges, |(id, charge)| (charge.at, *id));
        charges
    }

    /// The batches that were not deleted and began at or after `from` and before `before` (wall times),
    /// oldest first.
    pub fn batches(&self, from: WallTime, before: WallTime) -> Vec<(Subject, &Batch)> {
        let mut batches: Vec<_> = self
            .batches
            .iter()
            .filter(|(_, batch)| !batch.deleted && (from..before).contains(&batch.started_at()))
            .map(|(id, batch)| (*id, batch))
            .collect();
        sort_by_key(&mut batches, |(id, batch)| (batch.came_out.unwrap_or(WallTime::MAX), batch.started_at(), *id));
        batches
    }

    /// A charge, also if it was deleted.
    pub fn charge_with(&self, id: Subject) -> Option<&Charge> {
        self.charges.get(&id)
    }

    /// A batch, also if it was deleted.
    pub fn batch(&self, id: Subject) -> Option<&Batch> {
        self.batches.get(&id)
    }

    /// The batch with which a screen is in the bath now, and the wall time at which that batch began.
    pub fn batch_with(&self, screen: Subject) -> Option<(Subject, WallTime)> {
        let batch = self.batches.iter().find(|(_, batch)| batch.is_in() && batch.screens.contains(&screen));
        batch.map(|(id, batch)| (*id, batch.started_at()))
    }

    pub(crate) fn set(&mut self, field: &BathField) {
        match field {
            BathField::Capacity(count) => self.capacity = *count,
            BathField::RechargeAt(percent) => self.recharge_at = *percent,
            BathField::Note(text) => self.note.clone_from(text),
        }
    }

    pub(crate) fn fields(&self) -> Vec<BathField> {
        vec![
            BathField::Capacity(self.capacity),
            BathField::RechargeAt(self.recharge_at),
            BathField::Note(self.note.clone()),
        ]
    }

    pub(crate) fn charge(&mut self, id: Subject, at: WallTime, chemistry: &str, by: Option<&str>) {
        // A second fact with the same id is a correction: it keeps the time of the first.
        let before = self.charges.get(&id);
        let (at, deleted) = before.map_or((at, false), |charge| (charge.at, charge.deleted));
        let charge = Charge { at, chemistry: chemistry.to_owned(), by: by.map(str::to_owned), deleted };
        self.charges.insert(id, charge);
    }

    /// A batch that goes in again after coming out was not clean: its time continues from the first start.
    pub(crate) fn put_in(&mut self, id: Subject, at: WallTime, screens: &[Subject], count: u16) {
        let batch = self.batches.get_or_insert_default(id);
        batch.went_in = batch.went_in.or(batch.came_out).or(Some(at));
        (batch.came_out, batch.time, batch.count_out) = (None, None, None);
        batch.screens = screens.to_vec();
        batch.count_in = Some(count);
    }

    pub(crate) fn take_out(&mut self, id: Subject, at: WallTime, time: BatchTime, count: Option<u16>) {
        let batch = self.batches.get_or_insert_default(id);
        batch.came_out = Some(at);
        batch.time = Some(time);
        batch.count_out = count;
    }
}

deletable!(Charge, Batch);

impl DeleteById for Bath {
    fn delete(&mut self, id: Subject, deletion: Deletion) -> bool {
        self.charges.delete(id, deletion) || self.batches.delete(id, deletion)
    }
}

impl Batch {
    /// Whether its screens are in the bath now.
    pub fn is_in(&self) -> bool {
        !self.deleted && self.went_in.is_some() && self.came_out.is_none()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::time::wall;
    use crate::units::Seconds;
    use uuid::Uuid;

    fn batch_of(time: BatchTime, count: u16) -> Batch {
        let mut bath = Bath::default();
        let id = Uuid::from_u128(1);
        bath.put_in(id, wall(60_000), &[], count);
        bath.take_out(id, wall(780_000), time, None);
        bath.batch(id).unwrap().clone()
    }

    #[test]
    fn the_three_ways_to_enter_a_batchs_time_agree() {
        let minutes = |n: f64| Seconds::new(n * 60.0);
        for time in [BatchTime::Elapsed, BatchTime::Whole(minutes(12.0)), BatchTime::EachScreen(minutes(3.0))] {
            let batch = batch_of(time, 4);
            assert_eq!(batch.duration(), Some(Millis::from_minutes(12)), "{time:?}");
            assert_eq!(batch.minutes_per_screen(), Some(3.0));
        }
    }

    #[test]
    fn a_batch_that_ends_before_it_starts_has_no_time() {
        let mut bath = Bath::default();
        let id = Uuid::from_u128(1);
        bath.put_in(id, wall(500_000), &[], 2);
        bath.take_out(id, wall(100_000), BatchTime::Elapsed, None);
        assert_eq!(bath.batch(id).unwrap().duration(), None);
    }

    #[test]
    fn screens_that_go_back_in_keep_their_first_start() {
        let id = Uuid::from_u128(1);
        let mut bath = Bath::default();
        bath.put_in(id, wall(60_000), &[], 2);
        bath.take_out(id, wall(120_000), BatchTime::Elapsed, None);
        bath.put_in(id, wall(130_000), &[], 2);
        assert!(bath.batch(id).unwrap().is_in());
        bath.take_out(id, wall(240_000), BatchTime::Elapsed, None);
        assert_eq!(bath.batch(id).unwrap().duration(), Some(Millis::from_minutes(3)));
    }

    #[test]
    fn a_screen_is_found_in_the_bath_until_its_batch_comes_out() {
        let (id, screen) = (Uuid::from_u128(1), Uuid::from_u128(7));
        let mut bath = Bath::default();
        bath.put_in(id, wall(500), &[screen], 1);
        assert_eq!(bath.batch_with(screen), Some((id, wall(500))));
        bath.take_out(id, wall(900), BatchTime::Elapsed, None);
        assert_eq!(bath.batch_with(screen), None);
    }
}
