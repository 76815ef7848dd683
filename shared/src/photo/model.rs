//! The photos of each subject, folded from the facts.

use crate::codec::Encode;
use crate::collections::{Table, sort_by_key};
use crate::facts::PhotoFact;
use crate::ids::{PhotoId, Subject};
use crate::time::{Millis, WallTime};
use std::collections::{BTreeMap, BTreeSet};

impl From<&Photo> for PhotoFact {
    fn from(photo: &Photo) -> Self {
        Self::Taken { photo: photo.id, width: photo.width, height: photo.height, bytes: photo.bytes }
    }
}

/// A photo of a subject.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub struct Photo {
    /// The photo's id.
    pub id: PhotoId,
    /// Width in pixels.
    pub width: u16,
    /// Height in pixels.
    pub height: u16,
    /// Size of the file in bytes.
    pub bytes: u32,
    /// Wall time at which it was first taken.
    pub at: WallTime,
}

/// Number and size of the photos in use, each photo counted once.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct PhotoTotal {
    /// Number of photos.
    pub count: u32,
    /// Total bytes.
    pub bytes: u64,
}

/// A photo and its rank among those of its subject. A photo that was dropped keeps its row, so that taking
/// it again puts it where it was.
#[derive(Clone, Copy, Debug, PartialEq, Encode)]
struct Row {
    photo: Photo,
    rank: u64,
    /// Wall time at which it was dropped; `None` while it is in use.
    dropped: Option<WallTime>,
}

/// All photos, by subject.
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub struct Photos {
    of: Table<BTreeMap<PhotoId, Row>>,
    taken: u64,
}

impl Photos {
    /// How long an unused photo is kept: a day, our own. By then undo and the work of other windows are
    /// finished.
    pub const GRACE: Millis = Millis::from_days(1);

    /// The photos of a subject, in the order taken.
    pub fn of(&self, subject: Subject) -> Vec<Photo> {
        let rows = self.of.get(&subject).into_iter().flat_map(BTreeMap::values);
        let mut shown: Vec<&Row> = rows.filter(|row| row.dropped.is_none()).collect();
        sort_by_key(&mut shown, |row| row.rank);
        shown.into_iter().map(|row| row.photo).collect()
    }

    /// Every photo in use.
    pub fn ids(&self) -> BTreeSet<PhotoId> {
        self.shown().map(|photo| photo.id).collect()
    }

    /// Every photo in use by a subject that is not `gone`.
    pub(crate) fn ids_except(&self, gone: impl Fn(Subject) -> bool) -> BTreeSet<PhotoId> {
        let of = self.of.iter().filter(|(subject, _)| !gone(**subject));
        of.flat_map(|(_, rows)| rows.values()).filter(|row| row.dropped.is_none()).map(|row| row.photo.id).collect()
    }

    /// Number and size of the photos in use.
    pub fn total(&self) -> PhotoTotal {
        let sizes: BTreeMap<PhotoId, u32> = self.shown().map(|photo| (photo.id, photo.bytes)).collect();
        PhotoTotal { count: sizes.len() as u32, bytes: sizes.values().map(|bytes| u64::from(*bytes)).sum() }
    }

    /// Number of photos in use whose bytes are not among the stored ones, so have not arrived yet.
    pub fn missing(&self, stored: &BTreeSet<PhotoId>) -> u32 {
        self.ids().difference(stored).count() as u32
    }

    /// The stored photos that can be deleted at wall time `now`: those that are not in use by a subject that is not
    /// `gone`, and were not dropped within [`Self::GRACE`]. The store itself checks how long it has had them.
    pub fn to_delete(&self, stored: &BTreeSet<PhotoId>, now: WallTime, gone: impl Fn(Subject) -> bool) -> Vec<PhotoId> {
        let lately = |row: &&Row| row.dropped.is_none_or(|at| at + Self::GRACE > now);
        let rows = self.of.iter().filter(|(subject, _)| !gone(**subject)).flat_map(|(_, rows)| rows.values());
        let wanted: BTreeSet<PhotoId> = rows.filter(lately).map(|row| row.photo.id).collect();
        stored.difference(&wanted).copied().collect()
    }

    fn shown(&self) -> impl Iterator<Item = Photo> {
        self.of.values().flat_map(BTreeMap::values).filter(|row| row.dropped.is_none()).map(|row| row.photo)
    }

    pub(crate) fn apply(&mut self, subject: Subject, at: WallTime, fact: &PhotoFact) {
        match fact {
            PhotoFact::Taken { photo: id, width, height, bytes } => {
                self.taken += 1;
                let (photo, rank) = (Photo { id: *id, width: *width, height: *height, bytes: *bytes, at }, self.taken);
                let rows = self.of.get_or_insert_default(subject);
                rows.entry(*id).or_insert(Row { photo, rank, dropped: None }).dropped = None;
            }
            PhotoFact::Dropped(id) => {
                if let Some(row) = self.of.get_mut(&subject).and_then(|rows| rows.get_mut(id)) {
                    row.dropped = Some(at);
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::time::wall;
    use proptest::prelude::*;
    use uuid::Uuid;

    fn id(n: u8) -> PhotoId {
        PhotoId([n; 32])
    }

    fn taken(n: u8) -> PhotoFact {
        PhotoFact::Taken { photo: id(n), width: 40, height: 30, bytes: u32::from(n) * 100 }
    }

    fn shown(photos: &Photos, subject: Uuid) -> Vec<PhotoId> {
        photos.of(subject).iter().map(|photo| photo.id).collect()
    }

    const SCREEN: Uuid = Uuid::from_u128(1);
    const RUN: Uuid = Uuid::from_u128(2);

    #[test]
    fn a_dropped_photo_taken_again_is_where_it_was() {
        let mut photos = Photos::default();
        for (at, n) in [(10, 3), (20, 1), (30, 2)] {
            photos.apply(SCREEN, wall(at), &taken(n));
        }
        photos.apply(SCREEN, wall(40), &PhotoFact::Dropped(id(1)));
        assert_eq!(shown(&photos, SCREEN), [id(3), id(2)]);
        photos.apply(SCREEN, wall(50), &taken(1));
        assert_eq!(shown(&photos, SCREEN), [id(3), id(1), id(2)]);
        assert_eq!(photos.of(SCREEN)[1].at, wall(20));
    }

    #[test]
    fn dropping_a_photo_that_was_never_taken_changes_nothing() {
        let mut photos = Photos::default();
        photos.apply(SCREEN, wall(1), &PhotoFact::Dropped(id(1)));
        assert_eq!(photos, Photos::default());
        photos.apply(SCREEN, wall(2), &taken(1));
        assert_eq!(shown(&photos, SCREEN), [id(1)]);
    }

    #[test]
    fn a_photo_of_two_subjects_counts_once_and_stays_while_in_use() {
        let mut photos = Photos::default();
        photos.apply(SCREEN, wall(1), &taken(2));
        photos.apply(RUN, wall(2), &taken(2));
        assert_eq!(photos.total(), PhotoTotal { count: 1, bytes: 200 });
        photos.apply(SCREEN, wall(3), &PhotoFact::Dropped(id(2)));
        let stored = BTreeSet::from([id(2), id(9)]);
        let later = wall(3) + Photos::GRACE;
        assert_eq!(photos.to_delete(&stored, later, |_| false), [id(9)]);
        photos.apply(RUN, wall(4), &PhotoFact::Dropped(id(2)));
        assert_eq!(photos.to_delete(&stored, later, |_| false), [id(9)]);
        assert_eq!(photos.to_delete(&stored, later + Millis::from_ms(1), |_| false), [id(2), id(9)]);
        assert_eq!(photos.total(), PhotoTotal::default());
    }

    #[test]
    fn photos_whose_bytes_have_not_arrived_are_missing() {
        let mut photos = Photos::default();
        photos.apply(SCREEN, wall(1), &taken(1));
        photos.apply(SCREEN, wall(2), &taken(2));
        assert_eq!(photos.missing(&BTreeSet::from([id(2), id(7)])), 1);
    }

    proptest! {
        #[test]
        fn the_latest_fact_decides_whether_a_photo_is_in_use(
            facts in prop::collection::vec((0..3u128, 1..5u8, any::<bool>()), 0..60),
        ) {
            let mut photos = Photos::default();
            let mut last = BTreeMap::new();
            for (at, (subject, n, take)) in facts.iter().enumerate() {
                let fact = if *take { taken(*n) } else { PhotoFact::Dropped(id(*n)) };
                photos.apply(Uuid::from_u128(*subject), wall(at as u64), &fact);
                last.insert((*subject, *n), *take);
            }
            let mut all = BTreeSet::new();
            for subject in 0..3 {
                let expected: BTreeSet<PhotoId> =
                    last.iter().filter(|((of, _), take)| *of == subject && **take).map(|((_, n), _)| id(*n)).collect();
                let shown = shown(&photos, Uuid::from_u128(subject));
                prop_assert_eq!(shown.len(), expected.len());
                prop_assert_eq!(shown.iter().copied().collect::<BTreeSet<_>>(), expected.clone());
                all.extend(expected);
            }
            prop_assert_eq!(photos.ids(), all.clone());
            let stored: BTreeSet<PhotoId> = (1..6).map(id).collect();
            let kept: BTreeSet<PhotoId> = stored.difference(&all).copied().collect();
            prop_assert_eq!(photos.to_delete(&stored, WallTime::MAX, |_| false).into_iter().collect::<BTreeSet<_>>(), kept);
        }
    }
}
