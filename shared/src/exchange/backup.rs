//! The backup file: a ZIP archive with `journal.ndjson` inside, readable by any archive tool.
//!
//! `journal.ndjson`, version 1, is one JSON object a line (UTF-8, `\n`): first the heading
//! `{"journal":"lastpull","version":1,"entries":N,"made":milliseconds}`, then N entries as
//! [`Entry::to_line`] writes them. It always holds everything the device knows, of all devices.
//!
//! A file from elsewhere is hostile until read to its end: its size, the number and length of its
//! lines, and every name and number in them are bounded before they take memory, and a single bad
//! line refuses the whole file.

use super::archive::{NoFile, Packing, Unpacking};
use crate::journal::{Entry, EntryProblem};
use crate::pack::Pack;
use crate::sorted::sort_by_key;
use serde::{Deserialize, Serialize};

/// The largest file taken, in bytes: decades of a shop's facts.
pub const LARGEST_FILE: u64 = 64 * 1024 * 1024;
/// The most entries taken.
const MOST_ENTRIES: u64 = 2_000_000;
/// The most bytes a journal may unpack to.
const LARGEST_JOURNAL: u64 = 512 * 1024 * 1024;
/// The name inside the archive.
const JOURNAL: &str = "journal.ndjson";
/// The version that is written.
const VERSION: u32 = 1;

/// Why a file was not taken in. Nothing was changed by trying.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BackupProblem {
    /// Larger than any backup.
    TooLarge,
    /// No ZIP archive, or one cut short.
    NotAnArchive,
    /// An archive, but not one of ours.
    NotABackup,
    /// Made by a newer version of Lastpull.
    Newer,
    /// Fewer entries than its heading says.
    CutShort,
    /// The bytes inside do not match their checksum.
    Damaged,
    /// A line that no device wrote.
    BadLine {
        /// Which line, from 1.
        line: u64,
    },
}

#[derive(Serialize, Deserialize, Pack)]
struct Heading {
    journal: String,
    version: u32,
    entries: u64,
    made: u64,
}

/// Packs entries into a backup file, made at wall time `made`.
///
/// # Errors
/// In words, should the archive not take them; memory does.
pub fn write_backup<'a>(entries: impl IntoIterator<Item = &'a Entry>, made: u64) -> Result<Vec<u8>, String> {
    let mut sorted: Vec<&Entry> = entries.into_iter().collect();
    sort_by_key(&mut sorted, |entry| (entry.device, entry.seq));
    sorted.dedup_by_key(|entry| (entry.device, entry.seq));
    let heading = Heading { journal: "lastpull".into(), version: VERSION, entries: sorted.len() as u64, made };
    let mut archive = Packing::new(JOURNAL);
    let mut line = serde_json::to_string(&heading).map_err(|error| error.to_string())?;
    for entry in sorted {
        line.push('\n');
        archive.write(line.as_bytes());
        line = entry.to_line();
    }
    line.push('\n');
    archive.write(line.as_bytes());
    archive.finish().ok_or_else(|| "too large for an archive".into())
}

/// Reads a backup file to its end.
///
/// # Errors
/// [`BackupProblem`]; then nothing of it should be used.
pub fn read_backup(bytes: &[u8]) -> Result<Vec<Entry>, BackupProblem> {
    if bytes.len() as u64 > LARGEST_FILE {
        return Err(BackupProblem::TooLarge);
    }
    let journal = Unpacking::new(bytes, JOURNAL).map_err(|missing| match missing {
        NoFile::NotAnArchive => BackupProblem::NotAnArchive,
        NoFile::NotInIt => BackupProblem::NotABackup,
    })?;
    if journal.size() > LARGEST_JOURNAL {
        return Err(BackupProblem::TooLarge);
    }
    let mut lines = Lines { from: journal, ahead: Vec::new(), read: 0, unpacked: 0, line: 0 };
    let heading: Heading = match lines.next_line()? {
        Some(text) => serde_json::from_str(&text).map_err(|_| BackupProblem::NotABackup)?,
        None => return Err(BackupProblem::NotABackup),
    };
    if heading.journal != "lastpull" {
        return Err(BackupProblem::NotABackup);
    }
    if heading.version > VERSION {
        return Err(BackupProblem::Newer);
    }
    if heading.entries > MOST_ENTRIES {
        return Err(BackupProblem::TooLarge);
    }
    // Not with the capacity the heading claims: it has proved nothing yet.
    let mut entries = Vec::new();
    while let Some(text) = lines.next_line()? {
        let bad = BackupProblem::BadLine { line: lines.line };
        if entries.len() as u64 == heading.entries {
            return Err(bad);
        }
        entries.push(Entry::from_line(&text).map_err(|_: EntryProblem| bad)?);
    }
    if (entries.len() as u64) < heading.entries { Err(BackupProblem::CutShort) } else { Ok(entries) }
}

/// Lines of bounded length.
struct Lines<'a> {
    from: Unpacking<'a>,
    /// What was unpacked, and how much of it was read.
    ahead: Vec<u8>,
    read: usize,
    unpacked: u64,
    line: u64,
}

impl Lines<'_> {
    fn next_line(&mut self) -> Result<Option<String>, BackupProblem> {
        let mut bytes = Vec::new();
        self.line += 1;
        let bad = BackupProblem::BadLine { line: self.line };
        loop {
            let ahead = &self.ahead[self.read..];
            if let Some(end) = ahead.iter().position(|byte| *byte == b'\n') {
                bytes.extend_from_slice(&ahead[..end]);
                self.read += end + 1;
                break;
            }
            bytes.extend_from_slice(ahead);
            self.ahead.clear();
            self.read = 0;
            if bytes.len() > Entry::LONGEST_LINE {
                return Err(bad);
            }
            let piece = self.from.next_piece().map_err(|_| BackupProblem::Damaged)?;
            if piece.is_empty() {
                return if bytes.is_empty() { Ok(None) } else { Err(BackupProblem::CutShort) };
            }
            self.unpacked += piece.len() as u64;
            // What the archive says of its size has proved nothing either.
            if self.unpacked > LARGEST_JOURNAL {
                return Err(BackupProblem::CutShort);
            }
            self.ahead.extend_from_slice(piece);
        }
        if bytes.len() > Entry::LONGEST_LINE {
            return Err(bad);
        }
        String::from_utf8(bytes).map(Some).map_err(|_| bad)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::journal::{Fact, Stamp};
    use std::io::{Cursor, Write};
    use uuid::Uuid;
    use zip::{CompressionMethod, ZipArchive, ZipWriter, write::SimpleFileOptions};

    fn entries() -> Vec<Entry> {
        (1..=40)
            .map(|seq| Entry {
                device: Uuid::from_u128(u128::from(seq % 3) + 1),
                seq: (seq - 1) / 3 + 1,
                stamp: Stamp { wall: seq * 1_000, counter: 0 },
                subject: Uuid::from_u128(5),
                fact: Fact::Pulled { pieces: 1, size: None },
            })
            .collect()
    }

    fn archive_of(name: &str, text: &str) -> Vec<u8> {
        let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
        archive.start_file(name, SimpleFileOptions::default()).unwrap();
        archive.write_all(text.as_bytes()).unwrap();
        archive.finish().unwrap().into_inner()
    }

    #[test]
    fn what_goes_out_comes_in() {
        let bytes = write_backup(&entries(), 9).unwrap();
        let mut back = read_backup(&bytes).unwrap();
        back.sort_by_key(|entry| entry.stamp);
        assert_eq!(back, entries());
    }

    /// Another reader of the format finds the same in it, checksum and all.
    #[test]
    fn any_archive_tool_reads_it() {
        let bytes = write_backup(&entries(), 9).unwrap();
        let mut archive = ZipArchive::new(Cursor::new(&bytes)).unwrap();
        assert_eq!(archive.len(), 1);
        let text = std::io::read_to_string(archive.by_name(JOURNAL).unwrap()).unwrap();
        let lines: Vec<&str> = text.lines().collect();
        assert_eq!(lines.len(), 41);
        assert_eq!(Entry::from_line(lines[1]).unwrap(), Entry { device: Uuid::from_u128(1), ..entries()[2].clone() });
    }

    #[test]
    fn a_journal_that_does_not_match_its_checksum_is_damaged() {
        let mut bytes = write_backup(&entries(), 9).unwrap();
        let central = bytes.windows(4).rposition(|four| four == b"PK\x01\x02").unwrap();
        bytes[central + 16] ^= 1;
        assert_eq!(read_backup(&bytes), Err(BackupProblem::Damaged));
    }

    #[test]
    fn a_journal_that_was_packed_again_by_another_tool_reads() {
        let mut archive = ZipArchive::new(Cursor::new(write_backup(&entries(), 9).unwrap())).unwrap();
        let text = std::io::read_to_string(archive.by_name(JOURNAL).unwrap()).unwrap();
        for method in [CompressionMethod::Stored, CompressionMethod::Deflated] {
            let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
            archive.set_comment("from the desk");
            let options = SimpleFileOptions::default().compression_method(method);
            archive.start_file("notes.txt", options).unwrap();
            archive.write_all(b"hello").unwrap();
            archive.start_file(JOURNAL, options).unwrap();
            archive.write_all(text.as_bytes()).unwrap();
            assert_eq!(
                read_backup(&archive.finish().unwrap().into_inner()).map(|entries| entries.len()),
                Ok(40),
                "{method}"
            );
        }
    }

    /// A file written by version 1 of this program: `shared/tests/data/backup_v1.zip`.
    #[test]
    fn a_file_of_version_1_still_reads() {
        let bytes = include_bytes!("../../tests/data/backup_v1.zip");
        let mut back = read_backup(bytes).unwrap();
        back.sort_by_key(|entry| entry.stamp);
        assert_eq!(back, entries());
    }

    #[test]
    fn every_truncation_is_refused() {
        let bytes = write_backup(&entries(), 9).unwrap();
        for cut in 0..bytes.len() {
            assert!(read_backup(&bytes[..cut]).is_err(), "cut at {cut}");
        }
    }

    #[test]
    fn a_flipped_byte_in_the_packed_journal_is_refused() {
        let bytes = write_backup(&entries(), 9).unwrap();
        for at in 60..200 {
            let mut bad = bytes.clone();
            bad[at] ^= 0x55;
            let same = read_backup(&bad).is_ok_and(|entries| entries.len() != 40);
            assert!(!same, "byte {at}");
        }
    }

    #[test]
    fn foreign_and_hostile_files_are_refused_in_words() {
        let heading = r#"{"journal":"lastpull","version":1,"entries":1,"made":1}"#;
        let cases: [(&[u8], BackupProblem); 3] = [
            (b"hello", BackupProblem::NotAnArchive),
            (b"", BackupProblem::NotAnArchive),
            (b"PK\x05\x06\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0", BackupProblem::NotABackup),
        ];
        for (bytes, problem) in cases {
            assert_eq!(read_backup(bytes), Err(problem));
        }
        for (name, text, problem) in [
            ("photos.txt", "hello".to_owned(), BackupProblem::NotABackup),
            ("../journal.ndjson", heading.to_owned(), BackupProblem::NotABackup),
            (JOURNAL, "hello\n".to_owned(), BackupProblem::NotABackup),
            (JOURNAL, String::new(), BackupProblem::NotABackup),
            (JOURNAL, format!("{heading}\n"), BackupProblem::CutShort),
            (JOURNAL, format!("{heading}\nnonsense\n"), BackupProblem::BadLine { line: 2 }),
            (JOURNAL, format!("{heading}\n{}", "[".repeat(5_000_000)), BackupProblem::BadLine { line: 2 }),
            (JOURNAL, heading.replace("\"version\":1", "\"version\":2") + "\n", BackupProblem::Newer),
            (JOURNAL, heading.replace("\"entries\":1", "\"entries\":99999999999") + "\n", BackupProblem::TooLarge),
        ] {
            assert_eq!(read_backup(&archive_of(name, &text)), Err(problem), "{name} {}", text.len());
        }
    }

    #[test]
    fn more_lines_than_the_heading_says_are_refused() {
        let line = entries()[0].to_line();
        let text = format!("{{\"journal\":\"lastpull\",\"version\":1,\"entries\":1,\"made\":1}}\n{line}\n{line}\n");
        assert_eq!(read_backup(&archive_of(JOURNAL, &text)), Err(BackupProblem::BadLine { line: 3 }));
    }

    #[test]
    fn a_bomb_is_stopped_at_its_first_line() {
        let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
        let options = SimpleFileOptions::default().compression_method(CompressionMethod::Deflated);
        archive.start_file(JOURNAL, options).unwrap();
        let nothing = vec![b' '; 1 << 20];
        for _ in 0..64 {
            archive.write_all(&nothing).unwrap();
        }
        let bytes = archive.finish().unwrap().into_inner();
        assert!(bytes.len() < 100_000);
        assert_eq!(read_backup(&bytes), Err(BackupProblem::BadLine { line: 1 }));
    }
}
