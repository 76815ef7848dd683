//! What belongs to what.

use super::Table;
use crate::codec::Encode;
use uuid::Uuid;

/// Things in groups by the id of what they belong to: each belongs to one other thing at most.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Groups {
    groups: Table<Vec<Uuid>>,
}

impl Groups {
    /// The things that belong to this one, in the order in which they came to it.
    pub fn of(&self, owner: Uuid) -> &[Uuid] {
        self.groups.get(&owner).map_or(&[], Vec::as_slice)
    }

    /// Says that a thing belongs to another one now.
    pub fn replace(&mut self, id: Uuid, before: Option<Uuid>, after: Option<Uuid>) {
        if before == after {
            return;
        }
        if let Some(owner) = before {
            let left = self.groups.get_or_insert_default(owner);
            left.retain(|other| *other != id);
            if left.is_empty() {
                self.groups.remove(&owner);
            }
        }
        after.into_iter().for_each(|owner| self.groups.get_or_insert_default(owner).push(id));
    }

    /// The groups in the order of the ids of what they belong to.
    #[cfg(test)]
    pub(crate) fn iter(&self) -> impl Iterator<Item = (&Uuid, &Vec<Uuid>)> {
        self.groups.iter()
    }

    /// Number of groups that were decoded or changed. Tests count them.
    pub fn rows_in_memory(&self) -> usize {
        self.groups.rows_in_memory()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_thing_leaves_its_group_for_another_and_an_empty_group_is_gone() {
        let [one, two, tee, tote] = [1, 2, 3, 4].map(Uuid::from_u128);
        let mut groups = Groups::default();
        groups.replace(tee, None, Some(one));
        groups.replace(tote, None, Some(one));
        assert_eq!(groups.of(one), [tee, tote]);
        groups.replace(tee, Some(one), Some(two));
        assert_eq!((groups.of(one), groups.of(two)), (&[tote][..], &[tee][..]));
        groups.replace(tee, Some(two), None);
        groups.replace(tote, Some(one), None);
        assert_eq!(groups, Groups::default());
    }
}
