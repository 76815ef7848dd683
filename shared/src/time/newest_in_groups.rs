//! The newest of many things that belong to each other thing.

use super::WallTime;
use super::newest::Newest;
use crate::codec::Encode;
use crate::collections::Table;
use uuid::Uuid;

/// The newest of the things that belong to each other thing, of which there may be many: a group is read when it is asked
/// for.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub(crate) struct NewestInGroups {
    groups: Table<Newest>,
}

impl NewestInGroups {
    /// The newest things that belong to this one; `None` if nothing does.
    pub fn of(&self, owner: Uuid) -> Option<&Newest> {
        self.groups.get(&owner)
    }

    /// Says that a thing belongs to another one now, or that its time changed; so many of one group are kept at most. `None`
    /// is a thing that is not there.
    pub fn replace_among(
        &mut self,
        most: usize,
        id: Uuid,
        before: Option<(Uuid, WallTime)>,
        after: Option<(Uuid, WallTime)>,
    ) {
        if before == after {
            return;
        }
        if let Some((owner, was)) = before {
            let left = self.groups.get_or_insert_default(owner);
            left.replace_among(most, id, Some(was), None);
            if left.is_empty() {
                self.groups.remove(&owner);
            }
        }
        if let Some((owner, is)) = after {
            self.groups.get_or_insert_default(owner).replace_among(most, id, None, Some(is));
        }
    }

    /// Number of groups that were decoded or changed. Tests count them.
    pub fn rows_in_memory(&self) -> usize {
        self.groups.rows_in_memory()
    }
}
