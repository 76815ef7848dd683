//! How things are deleted and restored, whatever they are, and in whatever order the facts arrive.

use crate::codec::Encode;
use crate::collections::Table;
use std::collections::BTreeMap;
use uuid::Uuid;

/// That a thing was deleted or restored.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Deletion {
    /// Deleted, or restored.
    pub deleted: bool,
    /// Place of the deleting or restoring fact among all facts.
    pub rank: u64,
}

/// A thing that can be deleted and restored.
pub(crate) trait Deletable {
    /// Marks it as deleted or restored.
    fn mark(&mut self, deletion: Deletion);
}

/// Implements [`Deletable`] for types whose field `deleted: bool` is the whole mark.
macro_rules! deletable {
    ($($type:ty),* $(,)?) => {$(
        impl $crate::deletion::Deletable for $type {
            fn mark(&mut self, deletion: $crate::deletion::Deletion) {
                self.deleted = deletion.deleted;
            }
        }
    )*};
}
pub(crate) use deletable;

/// Things that are found by the id that a deletion names.
pub(crate) trait DeleteById {
    /// Deletes or restores the thing of this id. False if there is none.
    fn delete(&mut self, id: Uuid, deletion: Deletion) -> bool;
}

impl<T: Deletable> DeleteById for Table<T> {
    fn delete(&mut self, id: Uuid, deletion: Deletion) -> bool {
        self.get_mut(&id).map(|thing| thing.mark(deletion)).is_some()
    }
}

impl<T: Deletable> DeleteById for BTreeMap<Uuid, T> {
    fn delete(&mut self, id: Uuid, deletion: Deletion) -> bool {
        self.get_mut(&id).map(|thing| thing.mark(deletion)).is_some()
    }
}

/// Ids of things that were deleted before their first fact arrived.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub(crate) struct Tombstones {
    ids: Table<()>,
}

impl Tombstones {
    /// Keeps the deletion of a thing that is not known yet. Restoring it forgets the deletion.
    pub fn keep(&mut self, id: Uuid, deletion: Deletion) {
        if deletion.deleted {
            self.ids.insert(id, ());
        } else {
            self.ids.remove(&id);
        }
    }

    /// Whether a thing whose first fact is being folded was deleted before it. It is forgotten here.
    pub fn take(&mut self, id: Uuid) -> bool {
        self.ids.contains_key(&id) && self.ids.remove(&id).is_some()
    }

    /// Deletes a thing whose first fact was just folded into `things`, if its deletion came before that fact, the one
    /// of this `rank`. Nothing happens if `things` does not have it.
    pub fn claim(&mut self, id: Uuid, rank: u64, things: &mut impl DeleteById) {
        if self.ids.contains_key(&id) && things.delete(id, Deletion { deleted: true, rank }) {
            self.ids.remove(&id);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[derive(Default)]
    struct Thing {
        deleted: bool,
    }
    deletable!(Thing);

    const ID: Uuid = Uuid::from_u128(7);
    const DELETED: Deletion = Deletion { deleted: true, rank: 1 };

    #[test]
    fn a_deletion_that_came_first_is_claimed_once() {
        let (mut gone, mut things) = (Tombstones::default(), Table::<Thing>::default());
        gone.keep(ID, DELETED);
        gone.claim(ID, 2, &mut things);
        things.get_or_insert_default(ID);
        gone.claim(ID, 3, &mut things);
        assert!(things.get(&ID).unwrap().deleted);
        assert!(things.delete(ID, Deletion { deleted: false, rank: 4 }));
        gone.claim(ID, 5, &mut things);
        assert!(!things.get(&ID).unwrap().deleted);
        assert_eq!(gone, Tombstones::default());
    }

    #[test]
    fn a_thing_restored_before_it_arrived_is_not_deleted() {
        let (mut gone, mut things) = (Tombstones::default(), Table::<Thing>::default());
        gone.keep(ID, DELETED);
        gone.keep(ID, Deletion { deleted: false, rank: 2 });
        things.get_or_insert_default(ID);
        gone.claim(ID, 3, &mut things);
        assert!(!things.get(&ID).unwrap().deleted);
    }
}
