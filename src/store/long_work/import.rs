//! Importing a file, and taking that back.

use super::super::photos::has_room;
use super::refold::{checkpoint_of, fold};
use super::{Step, Watch};
use crate::platform::files::Incoming;
use crate::platform::indexed_db::IndexedDb;
use lastpull_core::codec::Encode;
use lastpull_core::exchange::{Backup, BackupProblem, ImportPreview, read_backup_watched};
use lastpull_core::facts::{Entry, Fact};
use lastpull_core::ids::PhotoId;
use lastpull_core::journal::{
    Checkpoint, Coverage, JournalFact, MergeProblem, Merged, Packed, Packer, Storage, StorageFault, TooMany, by_number,
    in_fold_order, merge,
};
use lastpull_core::photo::PhotoStore;
use lastpull_core::shop::Shop;
use lastpull_core::time::{Millis, WallTime};
use std::collections::BTreeSet;

/// Why a file was refused. Nothing was changed.
#[derive(Clone, Debug, PartialEq, Eq, Encode)]
pub enum ImportError {
    /// No file was picked, or it could not be read.
    NotRead,
    /// The chunk that reads it could not be loaded.
    ChunkNotLoaded,
    /// The device has too little space for its photos.
    NoRoom,
    /// It is not a backup, or damaged.
    File(BackupProblem),
    /// It has more devices or gaps than a shop can have.
    TooMany(TooMany),
    /// It could not be stored.
    Storage(StorageFault),
}

impl From<MergeProblem> for ImportError {
    fn from(problem: MergeProblem) -> Self {
        match problem {
            MergeProblem::TooMany(many) => Self::TooMany(many),
            MergeProblem::Storage(fault) => Self::Storage(fault),
        }
    }
}

/// A file that was read to its end, and waits for the user's decision.
pub struct PickedFile {
    backup: Backup<Incoming>,
    /// The photos in use here.
    photos: BTreeSet<PhotoId>,
}

/// What an import brought.
#[derive(Clone, Debug, Encode)]
pub(in super::super) struct Imported {
    pub merged: Merged,
    /// The photos that were not stored before.
    pub photos: Vec<PhotoId>,
    /// Number of photos that the shop shows now and this device still lacks.
    pub photos_missing: u32,
    /// When.
    pub at: WallTime,
}

/// Tries of a change of the whole journal while other tabs write.
const TRIES: u32 = 6;

/// Reads a file and says what it would bring to this shop.
pub(in super::super) async fn describe(
    storage: &IndexedDb,
    file: Incoming,
    shop: &Shop,
    demo: bool,
    watch: &Watch,
) -> Result<(PickedFile, ImportPreview), ImportError> {
    let backup = read_backup_watched(file, &mut |share| watch.tell(Step::Reading, share)).await.map_err(refused)?;
    let stored = storage.read_packed().await.map_err(ImportError::Storage)?;
    let preview = ImportPreview::of(&backup.facts, backup.demo, shop, &stored, demo).map_err(ImportError::TooMany)?;
    Ok((PickedFile { backup, photos: shop.photos.ids() }, preview))
}

/// Merges a file: all of it or nothing.
pub(in super::super) async fn bring_in(
    storage: &IndexedDb,
    PickedFile { mut backup, photos: here }: PickedFile,
    now: WallTime,
    watch: &Watch,
) -> Result<Imported, ImportError> {
    let arriving = std::mem::take(&mut backup.facts);
    let (shown, stored) = shown_with(storage, &arriving, now).await?;
    let mut new = Vec::new();
    // The photos first, then the facts that name them.
    let merged = match import_photos(storage, &backup, &shown, &here, now, &mut new).await {
        Ok(()) => {
            let of = stored + arriving.len();
            let fold = |entries: &mut dyn Iterator<Item = Entry>| checkpoint_of(entries, of, watch);
            merge(storage, &arriving, now, fold).await.map_err(ImportError::from)
        }
        Err(error) => Err(error),
    };
    let merged = match merged {
        Ok(merged) => merged,
        Err(error) => {
            // Delete what this import added; photos that were kept again since then stay.
            let _ = storage.delete_photos(&new, now + Millis::from_ms(1)).await;
            return Err(error);
        }
    };
    let stored = storage.photos().await.unwrap_or_default();
    let photos_missing = shown.difference(&stored).count() as u32;
    Ok(Imported { merged, photos: new, photos_missing, at: now })
}

/// The photos that the shop shows with these entries, and the number of stored ones.
async fn shown_with(
    storage: &IndexedDb,
    arriving: &Packed<Fact>,
    now: WallTime,
) -> Result<(BTreeSet<PhotoId>, u64), ImportError> {
    let stored = storage.read_packed().await.map_err(ImportError::Storage)?;
    Ok((photos_of(by_number(&[&stored, arriving]), now), stored.len()))
}

/// Takes facts out again: all of them or none. Returns how many there were.
pub(in super::super) async fn take_back(
    storage: &IndexedDb,
    facts: &Coverage,
    watch: &Watch,
) -> Result<u64, StorageFault> {
    let mut tries = 0;
    loop {
        let head = storage.open().await?.head;
        let stored = storage.read_packed().await?;
        let remaining = stored.filtered(|entry| !facts.holds(entry.device, entry.seq));
        let gone = stored.len() - remaining.len();
        drop(stored);
        let checkpoint = Checkpoint::of(&fold(&remaining, watch));
        match storage.withdraw(&head, &remaining, &checkpoint).await {
            Ok(_) => return Ok(gone),
            Err(StorageFault::Stale) if tries < TRIES => tries += 1,
            Err(fault) => return Err(fault),
        }
    }
}

/// Reads every photo of a file, needed or not, since one that does not match its id makes the file invalid; keeps those
/// that the shop will show. `new` are those that were not stored before.
async fn import_photos(
    storage: &IndexedDb,
    backup: &Backup<Incoming>,
    shown: &BTreeSet<PhotoId>,
    here: &BTreeSet<PhotoId>,
    now: WallTime,
    new: &mut Vec<PhotoId>,
) -> Result<(), ImportError> {
    let stored = storage.photos().await.map_err(ImportError::Storage)?;
    let is_new = |id: &PhotoId| shown.contains(id) && !stored.contains(id);
    let need: f64 = backup.photos().filter(|(id, _)| is_new(id)).map(|(_, bytes)| f64::from(bytes)).sum();
    if need > 0.0 && !has_room(need).await {
        return Err(ImportError::NoRoom);
    }
    for (id, _) in backup.photos() {
        let Some(photo) = backup.photo(id).await.map_err(refused)? else { continue };
        // A photo that is stored but no longer shown will be shown again: renew its time.
        if shown.contains(&id) && !(stored.contains(&id) && here.contains(&id)) {
            let kept = storage.store_photo(&photo, None, now).await.map_err(ImportError::Storage)?;
            new.extend(kept.then_some(id));
        }
    }
    Ok(())
}

/// The photos in use at wall time `now` in a shop of these entries, which may be repeated.
pub(super) fn photos_of(entries: impl Iterator<Item = Entry>, now: WallTime) -> BTreeSet<PhotoId> {
    // Which subjects belong together, which are deleted, and their photos: the rest is folded for nothing.
    // What is stored as unknown may be one of these to this version.
    let needed = |entry: &Entry| {
        matches!(
            entry.fact,
            Fact::Photo(_)
                | Fact::Deleted
                | Fact::Restored
                | Fact::JobSet(_)
                | Fact::LotSet(_)
                | Fact::RunSet(_)
                | Fact::Failure(_)
        ) || entry.fact.as_unknown().is_some()
    };
    let mut packed = Packer::default();
    let mut last = None;
    for entry in entries.filter(needed) {
        if last.as_ref() != Some(&entry) {
            packed.push(&entry);
            last = Some(entry);
        }
    }
    let mut photos = BTreeSet::new();
    in_fold_order(&packed.finish(), &mut |entries| photos = Shop::fold_entries(entries).photos_in_use(now));
    photos
}

fn refused(problem: BackupProblem) -> ImportError {
    if problem == BackupProblem::NotRead { ImportError::NotRead } else { ImportError::File(problem) }
}
