//! What belongs to what.

use super::Table;
use crate::codec::{Encode, Reader};
use uuid::Uuid;

/// Things in groups by the id of what they belong to, their owner: each belongs to one owner at most. `G` is what is kept
/// of a group, all ids or only the newest; a group is read when it is asked for, and one that equals the default is not
/// kept.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Groups<G = Vec<Uuid>> {
    groups: Table<G>,
}

impl<G: Encode> Encode for Groups<G> {
    fn encode(&self, out: &mut Vec<u8>) {
        self.groups.encode(out);
    }

    fn decode(from: &mut Reader<'_>) -> Self {
        Self { groups: Table::decode(from) }
    }
}

impl<G> Groups<G> {
    /// The group of an owner; `None` if nothing belongs to it.
    pub fn get(&self, owner: Uuid) -> Option<&G> {
        self.groups.get(&owner)
    }

    /// Number of groups that were decoded or changed. Tests count them.
    pub fn rows_in_memory(&self) -> usize {
        self.groups.rows_in_memory()
    }

    /// The groups in the order of the ids of their owners.
    #[cfg(test)]
    pub(crate) fn iter(&self) -> impl Iterator<Item = (&Uuid, &G)> {
        self.groups.iter()
    }
}

impl<G: Default + PartialEq> Groups<G> {
    /// Says that the owner of a thing changed, or what its group knows of it; `None` is a thing that is in no group.
    ///
    /// `change(group, before, after)` is called for the group that it leaves with `after` as `None`, then for the one that
    /// it joins with `before` as `None`, also where both are the same one.
    pub fn change<M: PartialEq>(
        &mut self,
        before: Option<(Uuid, M)>,
        after: Option<(Uuid, M)>,
        change: impl Fn(&mut G, Option<M>, Option<M>),
    ) {
        if before == after {
            return;
        }
        if let Some((owner, was)) = before {
            let left = self.groups.get_or_insert_default(owner);
            change(left, Some(was), None);
            if *left == G::default() {
                self.groups.remove(&owner);
            }
        }
        if let Some((owner, is)) = after {
            change(self.groups.get_or_insert_default(owner), None, Some(is));
        }
    }
}

impl Groups {
    /// The things that belong to this owner, in the order in which they came to it.
    pub fn of(&self, owner: Uuid) -> &[Uuid] {
        self.get(owner).map_or(&[], Vec::as_slice)
    }

    /// Says that a thing belongs to another owner now.
    pub fn replace(&mut self, id: Uuid, before: Option<Uuid>, after: Option<Uuid>) {
        let [before, after] = [before, after].map(|owner| owner.map(|owner| (owner, ())));
        self.change(before, after, |ids, _, after| match after {
            Some(()) => ids.push(id),
            None => ids.retain(|other| *other != id),
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::codec::{from_bytes, to_bytes};
    use std::collections::BTreeSet;

    const ONE: Uuid = Uuid::from_u128(1);
    const TWO: Uuid = Uuid::from_u128(2);

    #[test]
    fn a_thing_leaves_its_group_for_another_and_an_empty_group_is_gone() {
        let [tee, tote] = [3, 4].map(Uuid::from_u128);
        let mut groups: Groups = Groups::default();
        groups.replace(tee, None, Some(ONE));
        groups.replace(tote, None, Some(ONE));
        assert_eq!(groups.of(ONE), [tee, tote]);
        groups.replace(tee, Some(ONE), Some(TWO));
        assert_eq!((groups.of(ONE), groups.of(TWO)), (&[tote][..], &[tee][..]));
        groups.replace(tee, Some(TWO), None);
        groups.replace(tote, Some(ONE), None);
        assert_eq!(groups, Groups::default());
    }

    #[test]
    fn what_a_group_knows_of_a_thing_changes_within_the_group() {
        let mut groups: Groups<BTreeSet<u32>> = Groups::default();
        let set = |groups: &mut Groups<BTreeSet<u32>>, before, after| {
            groups.change(before, after, |group, before, after| {
                group.retain(|number| Some(*number) != before);
                group.extend(after);
            });
        };
        set(&mut groups, None, Some((ONE, 7)));
        set(&mut groups, None, Some((ONE, 8)));
        set(&mut groups, Some((ONE, 7)), Some((ONE, 9)));
        assert_eq!(groups.get(ONE), Some(&BTreeSet::from([8, 9])));
        assert_eq!(groups.get(TWO), None);
        set(&mut groups, Some((ONE, 8)), None);
        set(&mut groups, Some((ONE, 9)), None);
        assert_eq!(groups.get(ONE), None);
    }

    #[test]
    fn a_thing_that_did_not_change_decodes_no_group() {
        let mut groups: Groups = Groups::default();
        groups.replace(TWO, None, Some(ONE));
        let mut opened: Groups = from_bytes(&to_bytes(&groups)).unwrap();
        opened.replace(TWO, Some(ONE), Some(ONE));
        assert_eq!(opened.rows_in_memory(), 0);
        assert_eq!(opened, groups);
    }

    #[test]
    fn groups_are_encoded_as_their_table() {
        let mut groups: Groups = Groups::default();
        groups.replace(TWO, None, Some(ONE));
        let mut table = Table::default();
        table.insert(ONE, vec![TWO]);
        assert_eq!(to_bytes(&groups), to_bytes(&table));
    }
}
