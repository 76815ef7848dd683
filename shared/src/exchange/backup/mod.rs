//! The backup file: a ZIP archive with `journal.ndjson` and photos, readable by any archive tool.
//!
//! `journal.ndjson`, version 1, has one JSON object per line (UTF-8, `\n`): first the header
//! `{"journal":"lastpull","version":1,"entries":N,"made":milliseconds}`, then N entries as written by
//! [`Entry::to_line`](crate::journal::Entry::to_line). It always contains every entry that the device has, from all devices.
//!
//! `photos/<id>.jpg` are the photos in use that this device has, uncompressed, because JPEG does not
//! compress further. A file may contain only some of them or none; the others arrive with another file.
//!
//! `unreadable/` holds stored values that could not be decoded, byte for byte, if the device's storage is damaged.
//!
//! The header of a file of the demo shop also says `"demo":true`.
//!
//! An archive that was unpacked and packed again may have all of this in one folder.
//!
//! A file is not trusted until it was read to its end: its size, the number and length of its lines, and
//! every name and number are limited before memory is allocated for them. One invalid line refuses the
//! whole file, and so does a photo that does not match its name or contains metadata. Other files in the
//! archive are ignored.

use crate::time::WallTime;
use serde::{Deserialize, Serialize};

mod photos;
mod reader;
mod writer;

pub use photos::PhotosLeftOut;
pub use reader::{Backup, BackupProblem, MAX_FILE_BYTES, Share, check_backup, read_backup, read_backup_watched};
pub use writer::{BackupWriter, FinishedJournal, JournalWriter};

/// Most photos in a file, when writing and reading.
pub(crate) const MAX_PHOTOS: usize = 20_000;
/// Name of the journal in the archive.
pub(crate) const JOURNAL: &str = "journal.ndjson";
/// Folder of the photos in the archive.
pub(crate) const PHOTOS: &str = "photos/";
/// Folder of stored values that do not decode.
pub(crate) const UNREADABLE: &str = "unreadable/";
/// The version that is written.
pub(crate) const VERSION: u32 = 1;

#[derive(Serialize, Deserialize)]
pub(crate) struct Heading {
    journal: String,
    version: u32,
    entries: u64,
    made: WallTime,
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    demo: bool,
}

#[cfg(test)]
mod tests;
