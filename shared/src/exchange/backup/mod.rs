//! The backup file: a ZIP archive with `journal.ndjson` and photos inside, readable by any archive tool.
//!
//! `journal.ndjson`, version 1, is one JSON object a line (UTF-8, `\n`): first the heading
//! `{"journal":"lastpull","version":1,"entries":N,"made":milliseconds}`, then N entries as
//! [`Entry::to_line`] writes them. It always holds everything the device knows, of all devices.
//!
//! `photos/<id>.jpg` are the photos that the shop shows and this device holds, as they are: JPEG does
//! not pack further. A file may hold some of them or none; those that are missing come with another file.
//!
//! A file from elsewhere is hostile until read to its end: its size, the number and length of its
//! lines, and every name and number in them are bounded before they take memory, and a single bad
//! line refuses the whole file. So does a photo that is not what its name says, or more than a picture.
//! Other files that somebody packed along are left alone.

use serde::{Deserialize, Serialize};

mod reader;
mod writer;

pub use reader::{Backup, BackupProblem, LARGEST_FILE, read_backup};
pub use writer::BackupOut;

/// The most photos in a file, out and in.
pub(crate) const MOST_PHOTOS: usize = 20_000;
/// The name inside the archive.
pub(crate) const JOURNAL: &str = "journal.ndjson";
/// The folder of the photos inside the archive.
pub(crate) const PHOTOS: &str = "photos/";
/// The version that is written.
pub(crate) const VERSION: u32 = 1;

#[derive(Serialize, Deserialize)]
pub(crate) struct Heading {
    journal: String,
    version: u32,
    entries: u64,
    made: u64,
}

#[cfg(test)]
mod tests;
