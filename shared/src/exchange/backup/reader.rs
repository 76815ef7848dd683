//! Reads the backup file, and refuses it whole if anything in it is not as a device writes it.

use crate::bounds::LONGEST_LINE;
use crate::codec::Encode;
use crate::exchange::Source;
use crate::exchange::backup::{Heading, JOURNAL, MAX_PHOTOS, PHOTOS, VERSION};
use crate::exchange::zip::reader::{EntryReader, PieceError, ZipEntry, ZipError, list};
use crate::facts::{Entry, Fact, MAX_ACCEPTED_BYTES};
use crate::ids::PhotoId;
use crate::journal::{Coverage, EntryProblem, Packed, Packer};
use crate::photo::JpegPhoto;
use std::collections::BTreeMap;

/// Largest file accepted, in bytes: the limit of the ZIP format. It is read in parts.
pub const MAX_FILE_BYTES: u64 = u32::MAX as u64;
/// Most entries accepted.
const MAX_ENTRIES: u64 = 2_000_000;
/// Largest compressed journal, in bytes: decades of a shop's facts.
const MAX_COMPRESSED_JOURNAL: u32 = 64 * 1024 * 1024;
/// Largest decompressed journal, in bytes.
const MAX_JOURNAL_BYTES: u64 = 512 * 1024 * 1024;

/// Most devices in a file: a shop has two to ten.
const MAX_DEVICES: usize = 2_000;
/// Most unbroken ranges of numbers in a file. The head that each count rewrites grows with them.
const MAX_RANGES: usize = 10_000;

/// Why a file was refused. The attempt changes nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Encode)]
pub enum BackupProblem {
    /// Larger than any backup.
    TooLarge,
    /// Not a ZIP archive, or truncated.
    NotAnArchive,
    /// A ZIP archive that is not a backup of this app.
    NotABackup,
    /// Made by a newer version of Lastpull.
    Newer,
    /// Fewer entries than the header says.
    CutShort,
    /// The bytes inside do not match their checksum.
    Damaged,
    /// A line that no device wrote.
    BadLine {
        /// Which line, from 1.
        line: u64,
    },
    /// A photo that no device made, or that does not match its name.
    BadPhoto,
    /// The file could not be read to its end.
    NotRead,
    /// More devices or gaps than the devices of a shop leave.
    Scattered,
}

/// An opened backup file: its journal has been read to the end, its photos are fetched one by one.
pub struct Backup<S> {
    /// The entries of the journal, in its order, and as they are to be stored.
    pub facts: Packed<Fact>,
    /// Whether it is of the demo shop.
    pub demo: bool,
    photos: BTreeMap<PhotoId, ZipEntry>,
    source: S,
}

impl<S: Source> Backup<S> {
    /// The photos in the file and their sizes in bytes, as the archive gives them.
    pub fn photos(&self) -> impl Iterator<Item = (PhotoId, u32)> {
        self.photos.iter().map(|(id, row)| (*id, row.size))
    }

    /// Fetches a photo; `None` if the file does not contain it.
    ///
    /// # Errors
    /// [`BackupProblem`]; then nothing from the file should be used.
    pub async fn photo(&self, photo: PhotoId) -> Result<Option<JpegPhoto>, BackupProblem> {
        let Some(row) = self.photos.get(&photo) else { return Ok(None) };
        let file = EntryReader::new(&self.source, row).await.map_err(backup_problem)?;
        let bytes = file.whole(MAX_ACCEPTED_BYTES).await.map_err(piece_problem)?;
        let read = JpegPhoto::of(bytes).filter(|read| read.id() == photo);
        read.map(Some).ok_or(BackupProblem::BadPhoto)
    }
}

pub(crate) fn backup_problem(missing: ZipError) -> BackupProblem {
    match missing {
        ZipError::NotAnArchive => BackupProblem::NotAnArchive,
        ZipError::Missing => BackupProblem::NotABackup,
        ZipError::Unread => BackupProblem::NotRead,
    }
}

fn piece_problem(error: PieceError) -> BackupProblem {
    match error {
        PieceError::Damaged => BackupProblem::Damaged,
        PieceError::Unread => BackupProblem::NotRead,
    }
}

/// How much of something is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default, Encode)]
pub struct Share {
    /// What is done.
    pub done: u64,
    /// All of it.
    pub of: u64,
}

/// Opens a backup file and reads its journal to the end.
///
/// # Errors
/// [`BackupProblem`]; then nothing from the file should be used.
pub async fn read_backup<S: Source>(source: S) -> Result<Backup<S>, BackupProblem> {
    read_backup_watched(source, &mut |_| ()).await
}

/// The same, telling how many of the journal's entries were read whenever some were.
///
/// # Errors
/// As for [`read_backup`].
pub async fn read_backup_watched<S: Source>(
    source: S,
    watch: &mut dyn FnMut(Share),
) -> Result<Backup<S>, BackupProblem> {
    let mut packer = Packer::default();
    let (demo, photos) = read_file(&source, &mut |entry| packer.push(&entry.stored_form()), watch).await?;
    Ok(Backup { facts: packer.finish(), demo, photos, source })
}

/// Reads the journal of a backup file to the end, and keeps nothing of it. Returns the number of its entries.
///
/// # Errors
/// As for [`read_backup`].
pub async fn check_backup<S: Source>(source: S, watch: &mut dyn FnMut(Share)) -> Result<u64, BackupProblem> {
    let mut entries = 0;
    read_file(&source, &mut |_| entries += 1, watch).await?;
    Ok(entries)
}

/// Gives every entry of a file to `take`. Returns whether it is of the demo shop, and its photos.
async fn read_file<S: Source>(
    source: &S,
    take: &mut dyn FnMut(Entry),
    watch: &mut dyn FnMut(Share),
) -> Result<(bool, BTreeMap<PhotoId, ZipEntry>), BackupProblem> {
    if source.size() > MAX_FILE_BYTES {
        return Err(BackupProblem::TooLarge);
    }
    let rows = list(source).await.map_err(backup_problem)?;
    let (folder, journal) = find_journal(&rows).ok_or(BackupProblem::NotABackup)?;
    let folder = folder.to_owned();
    if journal.packed > MAX_COMPRESSED_JOURNAL || u64::from(journal.size) > MAX_JOURNAL_BYTES {
        return Err(BackupProblem::TooLarge);
    }
    let journal = EntryReader::new(source, journal).await.map_err(backup_problem)?;
    let demo = read_journal(journal, take, watch).await?;
    Ok((demo, photo_entries(rows, &folder)?))
}

/// The journal, and the folder that it is in: none, or the one into which an archive was unpacked before it was packed
/// again.
fn find_journal(rows: &[ZipEntry]) -> Option<(&str, &ZipEntry)> {
    if let Some(row) = rows.iter().find(|row| row.name == JOURNAL) {
        return Some(("", row));
    }
    let in_folder = |row: &ZipEntry| {
        let folder = row.name.strip_suffix(JOURNAL)?;
        let name = folder.strip_suffix('/')?;
        let plain = !name.is_empty() && !name.contains(['/', '\\']) && !name.starts_with('.');
        plain.then_some(folder.len())
    };
    let mut found = rows.iter().filter_map(|row| Some((&row.name[..in_folder(row)?], row)));
    // Of two journals none is the right one.
    found.next().filter(|_| found.next().is_none())
}

/// The archive entries of the photos, by the ids in their names.
fn photo_entries(rows: Vec<ZipEntry>, folder: &str) -> Result<BTreeMap<PhotoId, ZipEntry>, BackupProblem> {
    let mut photos = BTreeMap::new();
    for row in rows {
        // Some tools list the folder itself.
        let name = row.name.strip_prefix(folder).and_then(|name| name.strip_prefix(PHOTOS));
        let Some(name) = name.filter(|name| !name.is_empty()) else { continue };
        let id = name.strip_suffix(".jpg").and_then(PhotoId::parse).ok_or(BackupProblem::BadPhoto)?;
        if row.packed.max(row.size) as usize > MAX_ACCEPTED_BYTES || photos.len() == MAX_PHOTOS {
            return Err(BackupProblem::TooLarge);
        }
        if photos.insert(id, row).is_some() {
            return Err(BackupProblem::BadPhoto);
        }
    }
    Ok(photos)
}

/// Gives every entry to `take`. Returns whether it is of the demo shop.
async fn read_journal<S: Source>(
    journal: EntryReader<'_, S>,
    take: &mut dyn FnMut(Entry),
    watch: &mut dyn FnMut(Share),
) -> Result<bool, BackupProblem> {
    let mut lines = Lines { from: journal, buffer: Vec::new(), read: 0, unpacked: 0, line: 0 };
    let heading: Heading = match lines.next_line().await? {
        Some(text) => serde_json::from_str(text).map_err(|_| BackupProblem::NotABackup)?,
        None => return Err(BackupProblem::NotABackup),
    };
    if heading.journal != "lastpull" {
        return Err(BackupProblem::NotABackup);
    }
    if heading.version > VERSION {
        return Err(BackupProblem::Newer);
    }
    if heading.entries > MAX_ENTRIES {
        return Err(BackupProblem::TooLarge);
    }
    let (mut coverage, mut entries, mut left) = (Coverage::default(), 0, u64::MAX);
    while let Some(text) = lines.next_line().await? {
        let entry = Entry::from_line(text);
        let bad = BackupProblem::BadLine { line: lines.line };
        if entries == heading.entries {
            return Err(bad);
        }
        let entry = entry.map_err(|_: EntryProblem| bad)?;
        coverage.add(entry.device, entry.seq);
        take(entry);
        entries += 1;
        if lines.from.left() != left {
            left = lines.from.left();
            watch(Share { done: entries, of: heading.entries });
        }
    }
    if coverage.devices().count() > MAX_DEVICES || coverage.ranges() > MAX_RANGES {
        return Err(BackupProblem::Scattered);
    }
    if entries < heading.entries { Err(BackupProblem::CutShort) } else { Ok(heading.demo) }
}

/// Reads lines of limited length.
struct Lines<'a, S> {
    from: EntryReader<'a, S>,
    /// Decompressed bytes, and how many of them were read.
    buffer: Vec<u8>,
    read: usize,
    unpacked: u64,
    line: u64,
}

impl<S: Source> Lines<'_, S> {
    async fn next_line(&mut self) -> Result<Option<&str>, BackupProblem> {
        self.line += 1;
        let bad = BackupProblem::BadLine { line: self.line };
        let mut searched = self.read;
        let end = loop {
            let ahead = self.buffer.get(searched..).unwrap_or_default();
            if let Some(end) = ahead.iter().position(|byte| *byte == b'\n') {
                break searched + end;
            }
            self.buffer.drain(..self.read);
            self.read = 0;
            searched = self.buffer.len();
            if searched > LONGEST_LINE {
                return Err(bad);
            }
            let piece = self.from.next_piece().await.map_err(piece_problem)?;
            if piece.is_empty() {
                return if self.buffer.is_empty() { Ok(None) } else { Err(BackupProblem::CutShort) };
            }
            self.unpacked += piece.len() as u64;
            // The size in the archive's list has not been verified either.
            if self.unpacked > MAX_JOURNAL_BYTES {
                return Err(BackupProblem::CutShort);
            }
            self.buffer.extend_from_slice(piece);
        };
        let line = self.buffer.get(self.read..end).unwrap_or_default();
        self.read = end + 1;
        if line.len() > LONGEST_LINE {
            return Err(bad);
        }
        std::str::from_utf8(line).map(Some).map_err(|_| bad)
    }
}
