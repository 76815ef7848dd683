//! The newest of many things of each kind.

use super::WallTime;
use super::newest::{LeftOut, Newest, answer};
use crate::codec::{Encode, Reader};
use uuid::Uuid;

/// Most kinds kept, those with the newest things: no list here comes near it in ten years. Our own.
const MOST_KINDS: usize = 200;

/// The newest things of each kind.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct NewestOfKinds<K> {
    kinds: Vec<(K, Newest)>,
}

impl<K> Default for NewestOfKinds<K> {
    fn default() -> Self {
        Self { kinds: Vec::new() }
    }
}

impl<K: Encode> Encode for NewestOfKinds<K> {
    fn encode(&self, out: &mut Vec<u8>) {
        self.kinds.encode(out);
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        Self { kinds: Vec::decode(from) }
    }
}

impl<K: Copy + PartialEq> NewestOfKinds<K> {
    /// Says that the kind or the time of a thing changed, of whose kind at most `limit` are kept; `None` is a thing that
    /// is not there.
    pub fn replace_with_limit(
        &mut self,
        limit: usize,
        id: Uuid,
        before: Option<(K, WallTime)>,
        after: Option<(K, WallTime)>,
    ) {
        match (before, after) {
            (Some((kind, was)), Some((same, is))) if kind == same => {
                self.of(kind).replace_with_limit(limit, id, Some(was), Some(is));
            }
            _ => {
                if let Some((kind, was)) = before {
                    self.of(kind).replace_with_limit(limit, id, Some(was), None);
                    self.kinds.retain(|(_, newest)| !newest.is_empty());
                }
                after.into_iter().for_each(|(kind, is)| self.of(kind).replace_with_limit(limit, id, None, Some(is)));
            }
        }
    }

    /// The things of a kind, which is made if it is not there.
    fn of(&mut self, kind: K) -> &mut Newest {
        let place = self.kinds.iter().position(|(of, _)| *of == kind).unwrap_or_else(|| {
            if self.kinds.len() == MOST_KINDS {
                let oldest = self.kinds.iter().enumerate().min_by_key(|(_, (_, newest))| newest.rows.last());
                oldest.map(|(place, _)| place).into_iter().for_each(|place| drop(self.kinds.remove(place)));
            }
            self.kinds.push((kind, Newest::default()));
            self.kinds.len() - 1
        });
        &mut self.kinds[place].1
    }

    /// The kinds, each with the newest things of it, in no particular order.
    pub fn iter(&self) -> impl Iterator<Item = (K, &Newest)> {
        self.kinds.iter().map(|(kind, newest)| (*kind, newest))
    }

    /// The newest thing of all the kinds that are meant, if there is one; of one moment the one with the highest id.
    ///
    /// # Errors
    /// [`LeftOut`] if one that was left out may be newer.
    pub fn newest(&self, is_meant: impl Fn(K) -> bool) -> Result<Option<Uuid>, LeftOut> {
        let (mut found, mut left_out) = (None, None);
        for (_, newest) in self.kinds.iter().filter(|(kind, _)| is_meant(*kind)) {
            found = found.max(newest.rows.last().copied());
            left_out = left_out.max(newest.left_out);
        }
        answer(found, left_out)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::time::wall;
    use proptest::prelude::*;
    use std::collections::BTreeMap;

    const MOST: usize = 24;

    fn put(kinds: &mut NewestOfKinds<u8>, kind: u8, n: u64, is_there: bool) {
        let row = Some((kind, wall(n)));
        let (before, after) = if is_there { (None, row) } else { (row, None) };
        kinds.replace_with_limit(MOST, Uuid::from_u128(n.into()), before, after);
    }

    #[test]
    fn the_newest_of_each_kind_are_kept() {
        let mut kinds = NewestOfKinds::default();
        (0..100).for_each(|n| put(&mut kinds, n as u8 % 2, n, true));
        for kind in [0, 1] {
            let (_, kept) = kinds.iter().find(|(of, _)| *of == kind).unwrap();
            let newest = (0..100).rev().filter(|n| n % 2 == u64::from(kind)).take(MOST);
            assert!(kept.iter().map(|(at, _)| at).eq(newest.map(wall)));
        }
        (0..100).for_each(|n| put(&mut kinds, n as u8 % 2, n, false));
        assert_eq!(kinds.iter().map(|(_, kept)| kept.iter().count()).sum::<usize>(), 0);
    }

    #[test]
    fn a_kind_without_things_is_not_kept() {
        let mut kinds = NewestOfKinds::default();
        put(&mut kinds, 1, 7, true);
        put(&mut kinds, 1, 7, false);
        assert_eq!(kinds, NewestOfKinds::default());
    }

    #[test]
    fn a_new_kind_takes_the_place_of_the_one_whose_newest_thing_is_oldest() {
        let mut kinds = NewestOfKinds::default();
        (0..=MOST_KINDS as u64).for_each(|n| put(&mut kinds, n as u8, n + 1, true));
        assert!(!kinds.iter().any(|(kind, _)| kind == 0));
        assert_eq!(kinds.iter().count(), MOST_KINDS);
    }

    proptest! {
        #[test]
        fn the_newest_of_some_kinds_is_that_of_all_things_or_said_not_to_be_known(
            changes in prop::collection::vec((0..12_u128, prop::option::of((0..3_u8, 0..9_u64))), 1..80),
        ) {
            let (mut kinds, mut all) = (NewestOfKinds::default(), BTreeMap::new());
            for (id, now) in changes {
                let after = now.map(|(kind, at)| (kind, wall(at)));
                let before = all.insert(id, after).flatten();
                kinds.replace_with_limit(2, Uuid::from_u128(id), before, after);
                for meant in [&[0][..], &[1, 2], &[0, 1, 2]] {
                    let rows = all.iter().filter_map(|(id, row)| row.map(|(kind, at)| (kind, at, *id)));
                    let newest = rows.filter(|(kind, ..)| meant.contains(kind)).map(|(_, at, id)| (at, id)).max();
                    if let Ok(found) = kinds.newest(|kind| meant.contains(&kind)) {
                        prop_assert_eq!(found, newest.map(|(_, id)| Uuid::from_u128(id)));
                    }
                }
            }
        }
    }
}
