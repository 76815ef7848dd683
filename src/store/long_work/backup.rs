//! Making the backup file.

use super::import::photos_of;
use super::{Step, Watch};
use crate::platform::files::{FileParts, Outgoing};
use crate::platform::indexed_db::IndexedDb;
use lastpull_core::codec::Encode;
use lastpull_core::exchange::{BackupProblem, FinishedJournal, JournalWriter, PhotosLeftOut, Share, check_backup};
use lastpull_core::facts::{Entry, Fact};
use lastpull_core::journal::{
    Coverage, Packed, Packer, Salvage, Storage, StorageFault, StoredValue, by_number, record,
};
use lastpull_core::photo::{JpegPhoto, PhotoStore};
use lastpull_core::time::WallTime;
use std::collections::BTreeSet;

/// Why no backup file was made.
#[derive(Clone, Debug, PartialEq, Eq, Encode)]
pub enum BackupFailure {
    /// Nothing could be read from the storage.
    NothingRead(StorageFault),
    /// The file was made, and could not be read back.
    NotReadBack(BackupProblem),
    /// The browser refused to make a file of it.
    NotMade,
}

/// What to put into the file besides what is stored.
#[derive(Clone, Encode)]
pub(in super::super) struct Order {
    /// Name of the file.
    pub name: String,
    /// Whether it is of the demo shop.
    pub demo: bool,
    /// When it is made.
    pub now: WallTime,
    /// Entries that the page has seen, as records: put in if not everything stored reads.
    pub seen: Vec<Vec<u8>>,
    /// Entries that could not be saved, as records.
    pub unsaved: Vec<Vec<u8>>,
}

/// What is in the file.
#[derive(Clone, Debug, Encode)]
pub(in super::super) struct Contents {
    /// Number of facts.
    pub facts: u64,
    /// Number of facts that should be in it: those that are stored or could not be saved, each once. `None` if the storage
    /// does not say how many it has.
    pub expected: Option<u64>,
    /// Number of stored values that do not decode.
    pub unreadable: u32,
    /// Whether everything stored is in it.
    pub whole: bool,
    /// Number of photos.
    pub photos: u32,
    /// Number of photos that the shop shows and that are not on this device.
    pub photos_left_out: u32,
    /// Number of photos on this device that do not fit.
    pub photos_too_many: u32,
}

/// These entries as records.
pub(in super::super) fn records(entries: &[Entry]) -> Vec<Vec<u8>> {
    entries.iter().map(record::encode).collect()
}

fn packed(records: &[Vec<u8>]) -> Packed<Fact> {
    let mut packer = Packer::default();
    records.iter().filter_map(|bytes| record::decode(bytes).ok()).for_each(|entry| packer.push(&entry));
    packer.finish()
}

/// Makes the file, and reads it back.
pub(in super::super) async fn make(
    storage: &IndexedDb,
    order: &Order,
    watch: &Watch,
) -> Result<(Outgoing, Contents), BackupFailure> {
    match make_once(storage, order, false, watch).await {
        // A line that no Lastpull reads: leave it out, and keep it beside the others.
        Err(BackupFailure::NotReadBack(_)) => make_once(storage, order, true, watch).await,
        other => other,
    }
}

async fn make_once(
    storage: &IndexedDb,
    order: &Order,
    check_lines: bool,
    watch: &Watch,
) -> Result<(Outgoing, Contents), BackupFailure> {
    let salvage: Salvage<Fact> = storage.read_raw().await.salvage();
    let (whole, fault) = (salvage.is_whole(), salvage.fault.clone());
    let unsaved = packed(&order.unsaved);
    let expected = salvage.facts_stored().map(|stored| {
        let mut coverage = salvage.facts.coverage();
        let read = coverage.len();
        coverage.add_coverage(&unsaved.coverage());
        stored + coverage.len() - read
    });
    let mut unreadable = salvage.unreadable;
    // What this page has seen may be more than what can be read again.
    let seen = if whole { Packed::default() } else { packed(&order.seen) };
    let facts = Facts { all: [salvage.facts, seen, unsaved], check_lines };
    let unwritable = facts.unwritable();
    let whole = whole && unwritable.is_empty();
    let count = facts.count() - unwritable.len() as u64;
    unreadable.extend(unwritable);
    if let Some(fault) = fault.filter(|_| count == 0 && unreadable.is_empty()) {
        return Err(BackupFailure::NothingRead(fault));
    }
    let mut parts = FileParts::default();
    let mut journal = JournalWriter::new(count, order.now, order.demo).map_err(|_| BackupFailure::NotMade)?;
    for entry in watch.count(Step::Writing, count, facts.writable()) {
        journal.write(&entry);
        if let Some(part) = journal.take_part() {
            parts.add(&part).ok_or(BackupFailure::NotMade)?;
        }
    }
    let FinishedJournal { file: mut out, record, rest } = journal.finish().map_err(|_| BackupFailure::NotMade)?;
    parts.add(&rest).and_then(|()| parts.add_in_front(&record)).ok_or(BackupFailure::NotMade)?;
    let mut add = |bytes: &[u8]| parts.add(bytes).ok_or(BackupFailure::NotMade);
    for (name, bytes) in &unreadable {
        if let Some(before) = out.unreadable(name, bytes) {
            add(&before)?;
            add(bytes)?;
        }
    }
    let on_device = storage.photos().await.unwrap_or_default();
    let shown = photos_of(facts.writable(), order.now);
    // Facts that cannot be read may name any photo.
    let to_pack = if whole { shown.intersection(&on_device).copied().collect() } else { on_device.clone() };
    let (mut photos, mut refused) = (BTreeSet::new(), BTreeSet::new());
    for id in to_pack {
        // One at a time: a phone need not hold hundreds in memory.
        let bytes = storage.photo(id).await.ok().flatten();
        let Some(photo) = bytes.and_then(JpegPhoto::of).filter(|photo| photo.id() == id) else { continue };
        let Some(before) = out.photo(&photo) else {
            refused.insert(id);
            continue;
        };
        add(&before)?;
        add(photo.bytes())?;
        photos.insert(id);
    }
    add(&out.finish())?;
    let left_out = PhotosLeftOut::of(&shown, &photos, &refused);
    let file = Outgoing::new(&order.name, &parts).ok_or(BackupFailure::NotMade)?;
    // Not held while the file is read back.
    drop((facts, parts));
    let mut on_share = |share: Share| watch.tell(Step::Checking, share);
    let facts = check_backup(file.to_incoming(), &mut on_share).await.map_err(BackupFailure::NotReadBack)?;
    let contents = Contents {
        facts,
        expected,
        unreadable: unreadable.len() as u32,
        whole,
        photos: photos.len() as u32,
        photos_left_out: left_out.absent,
        photos_too_many: left_out.too_many,
    };
    Ok((file, contents))
}

/// The facts for the file: those that were stored, those that the page has seen, and those that could not be saved.
struct Facts {
    all: [Packed<Fact>; 3],
    /// Whether to leave out entries that no Lastpull would read from a file.
    check_lines: bool,
}

impl Facts {
    /// Every entry by device and number, each number once.
    fn entries(&self) -> impl Iterator<Item = Entry> {
        let [stored, seen, unsaved] = &self.all;
        let mut last = None;
        by_number(&[stored, seen, unsaved])
            .filter(move |entry| last.replace((entry.device, entry.seq)) != Some((entry.device, entry.seq)))
    }

    fn count(&self) -> u64 {
        let mut coverage = Coverage::default();
        self.all.iter().for_each(|packed| coverage.add_coverage(&packed.coverage()));
        coverage.len()
    }

    fn writable(&self) -> impl Iterator<Item = Entry> {
        self.entries().filter(|entry| !self.check_lines || reads(&entry.to_line()))
    }

    /// The lines that no Lastpull would read, as values of their own.
    fn unwritable(&self) -> Vec<StoredValue> {
        if !self.check_lines {
            return Vec::new();
        }
        let lines = self.entries().map(|entry| (format!("line-{}-{}", entry.device, entry.seq), entry.to_line()));
        lines.filter(|(_, line)| !reads(line)).map(|(name, line)| (name, line.into_bytes())).collect()
    }
}

fn reads(line: &str) -> bool {
    Entry::from_line(line).is_ok()
}
