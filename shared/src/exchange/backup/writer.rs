//! Writes the backup file, part after part.

use crate::collections::sort_by_key;
use crate::exchange::backup::{Heading, JOURNAL, MAX_PHOTOS, PHOTOS, UNREADABLE, VERSION};
use crate::exchange::zip::writer::{DeflatedEntry, ZipWriter};
use crate::facts::Entry;
use crate::photo::JpegPhoto;
use crate::time::WallTime;

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
        let entries = sorted.len() as u64;
        let heading = Heading { journal: "lastpull".into(), version: VERSION, entries, made, demo };
        let mut journal = DeflatedEntry::new();
        let mut line = serde_json::to_string(&heading).map_err(|error| error.to_string())?;
        for entry in sorted {
            line.push('\n');
            journal.write(line.as_bytes());
            line = entry.to_line();
        }
        line.push('\n');
        journal.write(line.as_bytes());
        let mut out = Self { archive: ZipWriter::default(), photos: 0 };
        let part = out.archive.add(JOURNAL, journal).ok_or("too large for an archive")?;
        Ok((out, part))
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
