//! Writes the backup file, part after part.

use crate::collections::sort_by_key;
use crate::exchange::backup::{Heading, JOURNAL, MAX_PHOTOS, PHOTOS, UNREADABLE, VERSION};
use crate::exchange::zip::writer::{AddedFile, DeflatedEntry, ZipWriter};
use crate::facts::Entry;
use crate::photo::JpegPhoto;
use crate::time::WallTime;

/// Compressed bytes that are given to the browser at a time.
const PART: usize = 256 * 1024;

/// Writes the journal of a backup file, entry after entry, so that neither the entries nor their lines need be in memory.
pub struct JournalWriter {
    journal: DeflatedEntry,
    line: String,
}

impl JournalWriter {
    /// Starts a journal of this number of entries, made at wall time `made`.
    ///
    /// # Errors
    /// A message if the heading cannot be written; this does not happen.
    pub fn new(entries: u64, made: WallTime, demo: bool) -> Result<Self, String> {
        let heading = Heading { journal: "lastpull".into(), version: VERSION, entries, made, demo };
        let line = serde_json::to_string(&heading).map_err(|error| error.to_string())?;
        Ok(Self { journal: DeflatedEntry::new(), line })
    }

    /// Writes the next entry: they come by device and number, each number once.
    pub fn write(&mut self, entry: &Entry) {
        let line = std::mem::replace(&mut self.line, entry.to_line());
        self.write_line(line);
    }

    fn write_line(&mut self, mut line: String) {
        line.push('\n');
        self.journal.write(line.as_bytes());
    }

    /// The next part of the file, if there is one already. The first one of all follows the record that
    /// [`finish`](Self::finish) returns.
    pub fn take_part(&mut self) -> Option<Vec<u8>> {
        self.journal.take(PART)
    }

    /// Ends the journal.
    ///
    /// # Errors
    /// A message if the journal does not fit into the archive.
    pub fn finish(mut self) -> Result<FinishedJournal, String> {
        let line = std::mem::take(&mut self.line);
        self.write_line(line);
        let mut file = BackupWriter { archive: ZipWriter::default(), photos: 0 };
        let AddedFile { record, rest } = file.archive.add(JOURNAL, self.journal).ok_or("too large for an archive")?;
        Ok(FinishedJournal { file, record, rest })
    }
}

/// A backup file whose journal is written.
pub struct FinishedJournal {
    /// Writes the rest of the file.
    pub file: BackupWriter,
    /// The record that precedes the journal's parts: the file begins with it.
    pub record: Vec<u8>,
    /// The last part of the journal.
    pub rest: Vec<u8>,
}

/// Writes a backup file part by part, so that its photos need not all be in memory: the journal, then for
/// each photo a record followed by the photo's bytes, then the end.
pub struct BackupWriter {
    archive: ZipWriter,
    photos: usize,
}

impl BackupWriter {
    /// Starts a file with these entries, made at wall time `made`. Returns the writer and the first part of
    /// the file.
    ///
    /// # Errors
    /// A message if the journal does not fit into the archive; this does not happen with a journal that
    /// fits into memory.
    pub fn new<'a>(entries: impl IntoIterator<Item = &'a Entry>, made: WallTime) -> Result<(Self, Vec<u8>), String> {
        Self::start(entries, made, false)
    }

    /// The same for the demo shop, which the file says of itself.
    ///
    /// # Errors
    /// As for [`new`](Self::new).
    pub fn of_demo<'a>(
        entries: impl IntoIterator<Item = &'a Entry>,
        made: WallTime,
    ) -> Result<(Self, Vec<u8>), String> {
        Self::start(entries, made, true)
    }

    fn start<'a>(
        entries: impl IntoIterator<Item = &'a Entry>,
        made: WallTime,
        demo: bool,
    ) -> Result<(Self, Vec<u8>), String> {
        let mut sorted: Vec<&Entry> = entries.into_iter().collect();
        sort_by_key(&mut sorted, |entry| (entry.device, entry.seq));
        sorted.dedup_by_key(|entry| (entry.device, entry.seq));
        let mut journal = JournalWriter::new(sorted.len() as u64, made, demo)?;
        sorted.into_iter().for_each(|entry| journal.write(entry));
        let FinishedJournal { file, record, rest } = journal.finish()?;
        Ok((file, [record, rest].concat()))
    }

    /// Adds a photo and returns the part that precedes its bytes. `None` if the file cannot take another
    /// photo.
    pub fn photo(&mut self, photo: &JpegPhoto) -> Option<Vec<u8>> {
        if self.photos == MAX_PHOTOS {
            return None;
        }
        let part = self.archive.store(&format!("{PHOTOS}{}.jpg", photo.id()), photo.bytes())?;
        self.photos += 1;
        Some(part)
    }

    /// Adds a stored value that does not decode, and returns the part that precedes its bytes. `None` if the file
    /// cannot take another one.
    pub fn unreadable(&mut self, name: &str, bytes: &[u8]) -> Option<Vec<u8>> {
        self.archive.store(&format!("{UNREADABLE}{name}.bin"), bytes)
    }

    /// The last part of the file.
    pub fn finish(self) -> Vec<u8> {
        self.archive.finish()
    }
}
