//! The newest of many things.

use super::WallTime;
use crate::codec::Encode;
use uuid::Uuid;

/// Most things kept of all that a shop has: far more than happen on one day. Our own.
const MOST: usize = 400;

/// A time and what has it.
pub(super) type Row = (WallTime, Uuid);

/// The answer may be a thing that was left out at the limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct LeftOut;

/// The newest of many things, by a time of each: what is asked about today, or about the latest, need not go through
/// ten years.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub(crate) struct Newest {
    /// The oldest first; things of one moment in the order of their ids.
    pub(super) rows: Vec<Row>,
    /// The newest of all that were left out at the limit.
    pub(super) left_out: Option<Row>,
}

impl Newest {
    /// Says that the time of a thing changed; `None` is no time.
    pub fn replace(&mut self, id: Uuid, before: Option<WallTime>, after: Option<WallTime>) {
        self.replace_with_limit(MOST, id, before, after);
    }

    /// The same with another limit: the most things that are kept.
    pub fn replace_with_limit(&mut self, limit: usize, id: Uuid, before: Option<WallTime>, after: Option<WallTime>) {
        if before == after {
            return;
        }
        if let Some(Ok(place)) = before.map(|at| self.rows.binary_search(&(at, id))) {
            self.rows.remove(place);
        }
        if let Some((at, Err(place))) = after.map(|at| (at, self.rows.binary_search(&(at, id)))) {
            self.rows.insert(place, (at, id));
        }
        if self.rows.len() > limit {
            self.left_out = self.left_out.max(Some(self.rows.remove(0)));
        }
    }

    /// The things kept, the newest first.
    pub fn iter(&self) -> impl Iterator<Item = (WallTime, Uuid)> {
        self.rows.iter().rev().copied()
    }

    /// Whether everything is here that is as new as this, or newer.
    pub fn is_complete_since(&self, at: WallTime) -> bool {
        self.left_out.is_none_or(|(left_out, _)| left_out < at)
    }

    /// Whether everything is here.
    pub fn is_complete(&self) -> bool {
        self.left_out.is_none()
    }

    /// The things that are not of the time before, the newest first; `None` if some of them may have been left out.
    pub fn since(&self, is_before: impl Fn(WallTime) -> bool) -> Option<impl Iterator<Item = Uuid>> {
        let whole = self.left_out.is_none_or(|(at, _)| is_before(at));
        whole.then(|| self.iter().take_while(move |(at, _)| !is_before(*at)).map(|(_, id)| id))
    }

    /// The newest thing that is meant, if there is one; of one moment the one with the highest id.
    ///
    /// # Errors
    /// [`LeftOut`] if one that was left out may be newer.
    pub fn newest(&self, is_meant: impl Fn(Uuid) -> bool) -> Result<Option<Uuid>, LeftOut> {
        let found = self.rows.iter().rev().find(|(_, id)| is_meant(*id)).copied();
        answer(found, self.left_out)
    }

    /// Whether it says nothing: nothing is here, and nothing was left out.
    pub fn is_empty(&self) -> bool {
        self.rows.is_empty() && self.left_out.is_none()
    }
}

/// What was found, unless it may be older than what was left out.
pub(super) fn answer(found: Option<Row>, left_out: Option<Row>) -> Result<Option<Uuid>, LeftOut> {
    if left_out.is_none() || left_out < found { Ok(found.map(|(_, id)| id)) } else { Err(LeftOut) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::time::wall;

    fn ids(newest: &Newest) -> Vec<u128> {
        newest.iter().map(|(_, id)| id.as_u128()).collect()
    }

    fn put(newest: &mut Newest, id: u128, before: Option<u64>, after: Option<u64>) {
        newest.replace(Uuid::from_u128(id), before.map(wall), after.map(wall));
    }

    #[test]
    fn a_thing_whose_time_changes_moves_and_one_without_a_time_is_gone() {
        let mut newest = Newest::default();
        put(&mut newest, 1, None, Some(10));
        put(&mut newest, 2, None, Some(20));
        put(&mut newest, 3, None, Some(20));
        assert_eq!(ids(&newest), [3, 2, 1]);
        put(&mut newest, 1, Some(10), Some(30));
        put(&mut newest, 3, Some(20), None);
        assert_eq!(ids(&newest), [1, 2]);
        assert!(newest.is_complete());
    }

    #[test]
    fn the_oldest_is_left_out_and_what_is_asked_of_its_time_is_not_known() {
        let mut newest = Newest::default();
        (0..=MOST as u64).for_each(|n| put(&mut newest, u128::from(n), None, Some(n)));
        assert_eq!((newest.iter().count(), newest.iter().last()), (MOST, Some((wall(1), Uuid::from_u128(1)))));
        assert!(newest.is_complete_since(wall(1)) && !newest.is_complete_since(wall(0)) && !newest.is_complete());
        assert_eq!(newest.since(|at| at < wall(MOST as u64 - 1)).unwrap().count(), 2);
        assert!(newest.since(|_| false).is_none());
    }

    #[test]
    fn the_newest_that_is_meant_is_known_while_nothing_left_out_may_be_newer() {
        let mut newest = Newest::default();
        for n in 1..=3 {
            newest.replace_with_limit(2, Uuid::from_u128(n), None, Some(wall(7)));
        }
        let of = |newest: &Newest, id: u128| newest.newest(|other| other == Uuid::from_u128(id));
        assert_eq!(of(&newest, 2), Ok(Some(Uuid::from_u128(2))));
        assert_eq!(of(&newest, 1), Err(LeftOut));
        assert_eq!(Newest::default().newest(|_| true), Ok(None));
    }
}
