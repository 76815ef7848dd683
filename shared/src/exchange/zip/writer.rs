//! Writes a ZIP archive, entry after entry.

use crate::exchange::zip::{CENTRAL, DEFLATED, END, END_SIZE, LOCAL, STORED};
use crc32fast::Hasher;
use miniz_oxide::deflate::core::{
    CompressorOxide, TDEFLFlush, TDEFLStatus, compress_to_output, create_comp_flags_from_zip_params,
};

/// Midnight of the first day of the format's calendar: two backups of the same facts have the same bytes.
const FIRST_DAY: u16 = 0x21;

/// An archive being written part by part, so that its parts need not all be in memory.
#[derive(Default)]
pub struct ZipWriter {
    /// Number of bytes returned so far.
    written: u32,
    central: Vec<u8>,
    files: u16,
}

/// The fields that both records of a file contain, up to its name.
fn about(method: u16, crc: u32, packed: u32, size: u32, name: &str) -> Option<Vec<u8>> {
    let mut about = Vec::new();
    for number in [20, 0, method, 0, FIRST_DAY] {
        about.extend(u16::to_le_bytes(number));
    }
    for number in [crc, packed, size] {
        about.extend(number.to_le_bytes());
    }
    about.extend(u16::try_from(name.len()).ok()?.to_le_bytes());
    about.extend([0; 2]);
    Some(about)
}

impl ZipWriter {
    /// Adds a file of `packed` bytes to the list and returns the record that precedes them. `None`, without
    /// adding it, if the archive would exceed the limits of the format.
    fn note(&mut self, name: &str, method: u16, crc: u32, packed: u32, size: u32) -> Option<Vec<u8>> {
        let about = about(method, crc, packed, size, name)?;
        let local = [&LOCAL[..], &about, name.as_bytes()].concat();
        let record = [&CENTRAL[..], &[20, 0], &about, &[0; 10], &self.written.to_le_bytes(), name.as_bytes()].concat();
        let written = self.written.checked_add(local.len() as u32)?.checked_add(packed)?;
        // The records at the end must fit as well.
        written.checked_add((self.central.len() + record.len() + END_SIZE) as u32)?;
        self.files = self.files.checked_add(1)?;
        self.written = written;
        self.central.extend(record);
        Some(local)
    }

    /// Adds an uncompressed file and returns the record that precedes its bytes. `None` if the archive
    /// would become too large.
    pub fn store(&mut self, name: &str, bytes: &[u8]) -> Option<Vec<u8>> {
        let size = u32::try_from(bytes.len()).ok()?;
        self.note(name, STORED, crc32fast::hash(bytes), size, size)
    }

    /// Adds a compressed file. `None` if the archive would become too large.
    pub fn add(&mut self, name: &str, packed: DeflatedEntry) -> Option<AddedFile> {
        let taken = packed.taken;
        let (rest, crc, size) = packed.finish()?;
        let length = u32::try_from(taken + rest.len() as u64).ok()?;
        let record = self.note(name, DEFLATED, crc, length, u32::try_from(size).ok()?)?;
        Some(AddedFile { record, rest })
    }

    /// The end of the archive: its list of files.
    pub fn finish(self) -> Vec<u8> {
        let (files, length) = (self.files.to_le_bytes(), self.central.len() as u32);
        let start = self.written.to_le_bytes();
        let end = [&END[..], &[0; 4], &files, &files, &length.to_le_bytes(), &start, &[0; 2]].concat();
        [self.central, end].concat()
    }
}

/// What is left to write of a compressed file that was added to an archive.
pub struct AddedFile {
    /// The record that precedes all of its bytes.
    pub record: Vec<u8>,
    /// Those of its bytes that were not taken yet.
    pub rest: Vec<u8>,
}

/// A file being compressed.
pub struct DeflatedEntry {
    out: Vec<u8>,
    /// Number of compressed bytes that are not in `out` any more.
    taken: u64,
    packer: Box<CompressorOxide>,
    hasher: Hasher,
    size: u64,
}

impl DeflatedEntry {
    /// Starts an empty file.
    pub fn new() -> Self {
        let packer = Box::new(CompressorOxide::new(create_comp_flags_from_zip_params(6, -15, 0)));
        Self { out: Vec::new(), taken: 0, packer, hasher: Hasher::new(), size: 0 }
    }

    /// Appends bytes to the file.
    pub fn write(&mut self, bytes: &[u8]) {
        self.hasher.update(bytes);
        self.size += bytes.len() as u64;
        self.pack(bytes, TDEFLFlush::None);
    }

    /// The compressed bytes since the last time, if they are this many or more.
    pub fn take(&mut self, at_least: usize) -> Option<Vec<u8>> {
        if self.out.len() < at_least {
            return None;
        }
        self.taken += self.out.len() as u64;
        Some(std::mem::take(&mut self.out))
    }

    fn pack(&mut self, bytes: &[u8], flush: TDEFLFlush) -> bool {
        let out = &mut self.out;
        let (status, _) = compress_to_output(&mut self.packer, bytes, flush, |packed| {
            out.extend_from_slice(packed);
            true
        });
        matches!(status, TDEFLStatus::Okay | TDEFLStatus::Done)
    }

    fn finish(mut self) -> Option<(Vec<u8>, u32, u64)> {
        self.pack(&[], TDEFLFlush::Finish).then_some((self.out, self.hasher.finalize(), self.size))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_past_the_limit_is_refused_and_leaves_the_archive_whole() {
        // Room for the records of one file, which take 31, 47 and 22 bytes, and for 100 bytes more.
        let room = 31 + 47 + END_SIZE as u32 + 100;
        let mut full = ZipWriter { written: u32::MAX - room, ..ZipWriter::default() };
        assert_eq!(full.store("a", &[0; 101]), None);
        assert_eq!((full.written, full.files, full.central.len()), (u32::MAX - room, 0, 0));
        assert!(full.store("b", &[0; 100]).is_some());
        assert_eq!(full.written, u32::MAX - 47 - END_SIZE as u32);
        assert_eq!(full.store("c", &[]), None);
        let end = full.finish();
        assert_eq!(end.len(), 47 + END_SIZE);
        assert!(end.ends_with(&[47, 0, 0, 0, 0xBA, 0xFF, 0xFF, 0xFF, 0, 0]), "47 bytes of list, where the files end");
    }
}
