//! The newest of many things.

use super::WallTime;
use crate::codec::Encode;
use uuid::Uuid;

/// Most things kept: far more than happen on one day. Our own.
const MOST: usize = 400;

/// The newest of many things, by a time of each: what is asked about today, or about the latest, need not go through
/// ten years.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub(crate) struct Newest {
    /// The oldest first; things of one moment in the order of their ids.
    rows: Vec<(WallTime, Uuid)>,
    /// The latest time of all that found no room.
    left_out: Option<WallTime>,
}

impl Newest {
    /// Says that the time of a thing changed; `None` is no time.
    pub fn replace(&mut self, id: Uuid, before: Option<WallTime>, after: Option<WallTime>) {
        if before == after {
            return;
        }
        if let Some(Ok(place)) = before.map(|at| self.rows.binary_search(&(at, id))) {
            self.rows.remove(place);
        }
        if let Some((at, Err(place))) = after.map(|at| (at, self.rows.binary_search(&(at, id)))) {
            self.rows.insert(place, (at, id));
        }
        if self.rows.len() > MOST {
            let (at, _) = self.rows.remove(0);
            self.left_out = self.left_out.max(Some(at));
        }
    }

    /// The things kept, the newest first.
    pub fn iter(&self) -> impl Iterator<Item = (WallTime, Uuid)> {
        self.rows.iter().rev().copied()
    }

    /// Whether everything is here that is as new as this, or newer.
    pub fn is_whole_since(&self, at: WallTime) -> bool {
        self.left_out.is_none_or(|left_out| left_out < at)
    }

    /// Whether everything is here.
    pub fn is_whole(&self) -> bool {
        self.left_out.is_none()
    }

    /// The things that are not of the time before, the newest first; `None` if some of them may have found no room.
    pub fn since(&self, is_before: impl Fn(WallTime) -> bool) -> Option<impl Iterator<Item = Uuid>> {
        let whole = self.left_out.is_none_or(&is_before);
        whole.then(|| self.iter().take_while(move |(at, _)| !is_before(*at)).map(|(_, id)| id))
    }
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
        assert!(newest.is_whole());
    }

    #[test]
    fn the_oldest_finds_no_room_and_what_is_asked_of_its_time_is_not_known() {
        let mut newest = Newest::default();
        (0..=MOST as u64).for_each(|n| put(&mut newest, u128::from(n), None, Some(n)));
        assert_eq!((newest.iter().count(), newest.iter().last()), (MOST, Some((wall(1), Uuid::from_u128(1)))));
        assert!(newest.is_whole_since(wall(1)) && !newest.is_whole_since(wall(0)) && !newest.is_whole());
        assert_eq!(newest.since(|at| at < wall(MOST as u64 - 1)).unwrap().count(), 2);
        assert!(newest.since(|_| false).is_none());
    }
}
