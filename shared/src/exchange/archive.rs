//! Reads and writes ZIP archives, as far as a backup needs the format (APPNOTE 6.3.10).
//!
//! Written here because the reader is asynchronous and reads only the parts of the file it needs, limits
//! what a hostile file can make it allocate, and holds one photo in memory at a time; a ZIP library needs a
//! synchronous `Read + Seek`. Any archive tool can read the files written here, and files written by any of
//! them can be read.

use miniz_oxide::deflate::core::{
    CompressorOxide, TDEFLFlush, TDEFLStatus, compress_to_output, create_comp_flags_from_zip_params,
};
use miniz_oxide::inflate::stream::{InflateState, inflate};
use miniz_oxide::{DataFormat, MZFlush, MZStatus};

const LOCAL: &[u8; 4] = b"PK\x03\x04";
const CENTRAL: &[u8; 4] = b"PK\x01\x02";
const END: &[u8; 4] = b"PK\x05\x06";
/// Sizes of the three kinds of records, without names and comments.
const LOCAL_SIZE: usize = 30;
const CENTRAL_SIZE: usize = 46;
const END_SIZE: usize = 22;
const STORED: u16 = 0;
const DEFLATED: u16 = 8;
/// Midnight of the first day of the format's calendar: two backups of the same facts have the same bytes.
const FIRST_DAY: u16 = 0x21;
/// Bytes decompressed at a time.
const PIECE: usize = 32 * 1024;

/// Continues the CRC-32 of ZIP with these bytes, four bits at a time.
fn crc(so_far: u32, bytes: &[u8]) -> u32 {
    const TABLE: [u32; 16] = {
        let mut table = [0; 16];
        let mut index = 0;
        while index < 16 {
            let (mut rest, mut bit) = (index as u32, 0);
            while bit < 4 {
                rest = if rest & 1 == 1 { (rest >> 1) ^ 0xEDB8_8320 } else { rest >> 1 };
                bit += 1;
            }
            table[index] = rest;
            index += 1;
        }
        table
    };
    !bytes.iter().fold(!so_far, |crc, byte| {
        let crc = crc ^ u32::from(*byte);
        let crc = (crc >> 4) ^ TABLE[(crc & 15) as usize];
        (crc >> 4) ^ TABLE[(crc & 15) as usize]
    })
}

/// An archive being written part by part, so that its parts need not all be in memory.
#[derive(Default)]
pub struct Packing {
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

impl Packing {
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
        self.note(name, STORED, crc(0, bytes), size, size)
    }

    /// Adds a compressed file and returns its part of the archive. `None` if the archive would become too
    /// large.
    pub fn add(&mut self, name: &str, packed: Packed) -> Option<Vec<u8>> {
        let (bytes, crc, size) = packed.finish()?;
        let mut part = self.note(name, DEFLATED, crc, u32::try_from(bytes.len()).ok()?, u32::try_from(size).ok()?)?;
        part.extend(bytes);
        Some(part)
    }

    /// The end of the archive: its list of files.
    pub fn finish(self) -> Vec<u8> {
        let (files, length) = (self.files.to_le_bytes(), self.central.len() as u32);
        let start = self.written.to_le_bytes();
        let end = [&END[..], &[0; 4], &files, &files, &length.to_le_bytes(), &start, &[0; 2]].concat();
        [self.central, end].concat()
    }
}

/// A file being compressed.
pub struct Packed {
    out: Vec<u8>,
    packer: Box<CompressorOxide>,
    crc: u32,
    size: u64,
}

impl Packed {
    /// Starts an empty file.
    pub fn new() -> Self {
        let packer = Box::new(CompressorOxide::new(create_comp_flags_from_zip_params(6, -15, 0)));
        Self { out: Vec::new(), packer, crc: 0, size: 0 }
    }

    /// Appends bytes to the file.
    pub fn write(&mut self, bytes: &[u8]) {
        self.crc = crc(self.crc, bytes);
        self.size += bytes.len() as u64;
        self.pack(bytes, TDEFLFlush::None);
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
        self.pack(&[], TDEFLFlush::Finish).then_some((self.out, self.crc, self.size))
    }
}

/// A file that is read in parts, so that it need not be in memory.
#[allow(async_fn_in_trait)]
pub trait Source {
    /// Length in bytes.
    fn size(&self) -> u64;

    /// Reads `length` bytes at `from`; `None` if they cannot all be read.
    async fn read(&self, from: u64, length: usize) -> Option<Vec<u8>>;
}

impl Source for &[u8] {
    fn size(&self) -> u64 {
        self.len() as u64
    }

    async fn read(&self, from: u64, length: usize) -> Option<Vec<u8>> {
        let from = usize::try_from(from).ok()?;
        self.get(from..from.checked_add(length)?).map(<[u8]>::to_vec)
    }
}

/// Why an archive, or a file in it, cannot be opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoFile {
    /// Not a ZIP archive, or truncated.
    NotAnArchive,
    /// The file uses an unsupported compression or encryption, or is not where the archive says.
    Missing,
    /// The source cannot be read.
    Unread,
}

/// The bytes do not match their checksum, or end too early.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Damaged;

/// The archive's entry for a file. Nothing in it has been verified.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// Name of the file.
    pub name: String,
    /// Compressed size in bytes.
    pub packed: u32,
    /// Uncompressed size in bytes.
    pub size: u32,
    method: u16,
    crc: u32,
    start: u32,
}

/// Largest list of files accepted, in bytes: enough for the largest number of photos, written by any tool.
const LARGEST_LIST: usize = 16 * 1024 * 1024;

fn two(bytes: &[u8], at: usize) -> Option<u16> {
    Some(u16::from_le_bytes(bytes.get(at..at + 2)?.try_into().ok()?))
}

fn four(bytes: &[u8], at: usize) -> Option<u32> {
    Some(u32::from_le_bytes(bytes.get(at..at + 4)?.try_into().ok()?))
}

/// Start of the last record, whose comment extends to the end of the archive.
fn end_of(tail: &[u8]) -> Option<usize> {
    let last = tail.len().checked_sub(END_SIZE)?;
    (last.saturating_sub(usize::from(u16::MAX))..=last).rev().find(|at| {
        tail[*at..].starts_with(END)
            && two(tail, at + 20).is_some_and(|comment| at + END_SIZE + usize::from(comment) == tail.len())
    })
}

/// Reads the list of files of an archive.
///
/// # Errors
/// [`NoFile`] if the source cannot be read or is not a ZIP archive.
pub async fn list<S: Source>(source: &S) -> Result<Vec<Row>, NoFile> {
    let length = source.size().min((END_SIZE + usize::from(u16::MAX)) as u64);
    let first = source.size() - length;
    let tail = source.read(first, length as usize).await.ok_or(NoFile::Unread)?;
    let end = end_of(&tail).ok_or(NoFile::NotAnArchive)?;
    let (count, start) = (two(&tail, end + 10), four(&tail, end + 16));
    let (count, start) = (count.ok_or(NoFile::NotAnArchive)?, u64::from(start.ok_or(NoFile::NotAnArchive)?));
    let length = (first + end as u64).checked_sub(start).ok_or(NoFile::NotAnArchive)?;
    let length = usize::try_from(length).ok().filter(|length| *length <= LARGEST_LIST).ok_or(NoFile::NotAnArchive)?;
    let list = source.read(start, length).await.ok_or(NoFile::Unread)?;
    rows(&list, count).ok_or(NoFile::NotAnArchive)
}

fn rows(list: &[u8], count: u16) -> Option<Vec<Row>> {
    let (mut at, mut rows) = (0, Vec::new());
    for _ in 0..count {
        let record = list.get(at..).filter(|record| record.starts_with(CENTRAL))?;
        let length = |at| two(record, at).map(usize::from);
        let (named, extra, comment) = (length(28)?, length(30)?, length(32)?);
        let name = record.get(CENTRAL_SIZE..CENTRAL_SIZE + named)?;
        let encrypted = two(record, 8)? & 1 == 1;
        rows.push(Row {
            // A name that is not UTF-8 is not one of ours.
            name: String::from_utf8_lossy(name).into_owned(),
            packed: four(record, 20)?,
            size: four(record, 24)?,
            method: if encrypted { u16::MAX } else { two(record, 10)? },
            crc: four(record, 16)?,
            start: four(record, 42)?,
        });
        at += CENTRAL_SIZE + named + extra + comment;
    }
    Some(rows)
}

/// A file of an archive being decompressed.
pub struct Unpacking {
    packed: Vec<u8>,
    taken: usize,
    unpacker: Option<Box<InflateState>>,
    crc: u32,
    size: u64,
    so_far: (u32, u64),
    piece: Vec<u8>,
}

impl Unpacking {
    /// Fetches a file of an archive, still compressed.
    ///
    /// # Errors
    /// [`NoFile`] if the source cannot be read, or the file is not where `row` says or uses an unsupported
    /// method.
    pub async fn new<S: Source>(source: &S, row: &Row) -> Result<Self, NoFile> {
        let unpacker = match row.method {
            STORED => None,
            DEFLATED => Some(InflateState::new_boxed(DataFormat::Raw)),
            _ => return Err(NoFile::Missing),
        };
        let start = u64::from(row.start);
        let within = |from: u64, length: u64| from.checked_add(length).is_some_and(|end| end <= source.size());
        if !within(start, LOCAL_SIZE as u64) {
            return Err(NoFile::Missing);
        }
        let local = source.read(start, LOCAL_SIZE).await.ok_or(NoFile::Unread)?;
        let (named, extra) = (two(&local, 26).unwrap_or_default(), two(&local, 28).unwrap_or_default());
        let from = start + LOCAL_SIZE as u64 + u64::from(named) + u64::from(extra);
        if !local.starts_with(LOCAL) || !within(from, u64::from(row.packed)) {
            return Err(NoFile::Missing);
        }
        let packed = source.read(from, row.packed as usize).await.ok_or(NoFile::Unread)?;
        let size = u64::from(row.size);
        Ok(Self { packed, taken: 0, unpacker, crc: row.crc, size, so_far: (0, 0), piece: Vec::new() })
    }

    /// The next piece of the file; empty at its end, after the length and checksum were verified.
    ///
    /// # Errors
    /// [`Damaged`] if the data cannot be decompressed, or the length or checksum is wrong.
    pub fn next_piece(&mut self) -> Result<&[u8], Damaged> {
        self.piece.resize(PIECE, 0);
        let packed = self.packed.get(self.taken..).unwrap_or_default();
        let (taken, given) = if let Some(unpacker) = &mut self.unpacker {
            let step = inflate(unpacker, packed, &mut self.piece, MZFlush::None);
            let over = packed.is_empty() && step.bytes_written == 0;
            if !over && !matches!(step.status, Ok(MZStatus::Ok | MZStatus::StreamEnd)) {
                return Err(Damaged);
            }
            (step.bytes_consumed, step.bytes_written)
        } else {
            let length = packed.len().min(PIECE);
            self.piece[..length].copy_from_slice(&packed[..length]);
            (length, length)
        };
        self.taken += taken;
        self.piece.truncate(given);
        self.so_far = (crc(self.so_far.0, &self.piece), self.so_far.1 + given as u64);
        if given == 0 && self.so_far != (self.crc, self.size) {
            return Err(Damaged);
        }
        Ok(&self.piece)
    }

    /// The whole file.
    ///
    /// # Errors
    /// [`Damaged`] as for [`next_piece`](Self::next_piece), and if the file is longer than `most` bytes.
    pub fn whole(mut self, most: usize) -> Result<Vec<u8>, Damaged> {
        let mut whole = Vec::new();
        loop {
            let piece = self.next_piece()?;
            if piece.is_empty() {
                return Ok(whole);
            }
            if whole.len() + piece.len() > most {
                return Err(Damaged);
            }
            whole.extend_from_slice(piece);
        }
    }
}
