//! Lists the entries of a ZIP archive, and reads one piece after piece.

use crate::exchange::zip::{CENTRAL, CENTRAL_SIZE, DEFLATED, END, END_SIZE, LOCAL, LOCAL_SIZE, STORED};
use crc32fast::Hasher;
use miniz_oxide::inflate::stream::{InflateState, inflate};
use miniz_oxide::{DataFormat, MZFlush, MZStatus};

/// Bytes decompressed at a time.
const PIECE: usize = 32 * 1024;
/// Compressed bytes in memory at a time.
const CHUNK: u64 = 256 * 1024;

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
pub enum ZipError {
    /// Not a ZIP archive, or truncated.
    NotAnArchive,
    /// The file uses an unsupported compression or encryption, or is not where the archive says.
    Missing,
    /// The source cannot be read.
    Unread,
}

/// Why a file in an archive does not read to its end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PieceError {
    /// The bytes do not match their checksum, or end too early.
    Damaged,
    /// The source cannot be read.
    Unread,
}

/// The archive's entry for a file. Nothing in it has been verified.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ZipEntry {
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

fn u16_at(bytes: &[u8], at: usize) -> Option<u16> {
    Some(u16::from_le_bytes(bytes.get(at..at + 2)?.try_into().ok()?))
}

fn u32_at(bytes: &[u8], at: usize) -> Option<u32> {
    Some(u32::from_le_bytes(bytes.get(at..at + 4)?.try_into().ok()?))
}

/// Start of the last record, whose comment extends to the end of the archive.
fn end_of(tail: &[u8]) -> Option<usize> {
    let last = tail.len().checked_sub(END_SIZE)?;
    (last.saturating_sub(usize::from(u16::MAX))..=last).rev().find(|at| {
        tail[*at..].starts_with(END)
            && u16_at(tail, at + 20).is_some_and(|comment| at + END_SIZE + usize::from(comment) == tail.len())
    })
}

/// Reads the list of files of an archive.
///
/// # Errors
/// [`ZipError`] if the source cannot be read or is not a ZIP archive.
pub async fn list<S: Source>(source: &S) -> Result<Vec<ZipEntry>, ZipError> {
    let length = source.size().min((END_SIZE + usize::from(u16::MAX)) as u64);
    let first = source.size() - length;
    let tail = source.read(first, length as usize).await.ok_or(ZipError::Unread)?;
    let end = end_of(&tail).ok_or(ZipError::NotAnArchive)?;
    let (count, start) = (u16_at(&tail, end + 10), u32_at(&tail, end + 16));
    let (count, start) = (count.ok_or(ZipError::NotAnArchive)?, u64::from(start.ok_or(ZipError::NotAnArchive)?));
    let length = (first + end as u64).checked_sub(start).ok_or(ZipError::NotAnArchive)?;
    let length = usize::try_from(length).ok().filter(|length| *length <= LARGEST_LIST).ok_or(ZipError::NotAnArchive)?;
    let list = source.read(start, length).await.ok_or(ZipError::Unread)?;
    rows(&list, count).ok_or(ZipError::NotAnArchive)
}

fn rows(list: &[u8], count: u16) -> Option<Vec<ZipEntry>> {
    let (mut at, mut rows) = (0, Vec::new());
    for _ in 0..count {
        let record = list.get(at..).filter(|record| record.starts_with(CENTRAL))?;
        let length = |at| u16_at(record, at).map(usize::from);
        let (named, extra, comment) = (length(28)?, length(30)?, length(32)?);
        let name = record.get(CENTRAL_SIZE..CENTRAL_SIZE + named)?;
        let encrypted = u16_at(record, 8)? & 1 == 1;
        rows.push(ZipEntry {
            // A name that is not UTF-8 is not one of ours.
            name: String::from_utf8_lossy(name).into_owned(),
            packed: u32_at(record, 20)?,
            size: u32_at(record, 24)?,
            method: if encrypted { u16::MAX } else { u16_at(record, 10)? },
            crc: u32_at(record, 16)?,
            start: u32_at(record, 42)?,
        });
        at += CENTRAL_SIZE + named + extra + comment;
    }
    Some(rows)
}

/// A file of an archive being decompressed. A chunk of it is in memory at a time.
pub struct EntryReader<'a, S> {
    source: &'a S,
    /// Where the compressed bytes are that were not read yet, and how many there are.
    from: u64,
    left: u64,
    packed: Vec<u8>,
    taken: usize,
    unpacker: Option<Box<InflateState>>,
    crc: u32,
    size: u64,
    hasher: Hasher,
    given: u64,
    piece: Vec<u8>,
}

impl<'a, S: Source> EntryReader<'a, S> {
    /// Finds a file of an archive.
    ///
    /// # Errors
    /// [`ZipError`] if the source cannot be read, or the file is not where `row` says or uses an unsupported
    /// method.
    pub async fn new(source: &'a S, row: &ZipEntry) -> Result<Self, ZipError> {
        let unpacker = match row.method {
            STORED => None,
            DEFLATED => Some(InflateState::new_boxed(DataFormat::Raw)),
            _ => return Err(ZipError::Missing),
        };
        let start = u64::from(row.start);
        let within = |from: u64, length: u64| from.checked_add(length).is_some_and(|end| end <= source.size());
        if !within(start, LOCAL_SIZE as u64) {
            return Err(ZipError::Missing);
        }
        let local = source.read(start, LOCAL_SIZE).await.ok_or(ZipError::Unread)?;
        let (named, extra) = (u16_at(&local, 26).unwrap_or_default(), u16_at(&local, 28).unwrap_or_default());
        let from = start + LOCAL_SIZE as u64 + u64::from(named) + u64::from(extra);
        if !local.starts_with(LOCAL) || !within(from, u64::from(row.packed)) {
            return Err(ZipError::Missing);
        }
        Ok(Self {
            source,
            from,
            left: u64::from(row.packed),
            packed: Vec::new(),
            taken: 0,
            unpacker,
            crc: row.crc,
            size: u64::from(row.size),
            hasher: Hasher::new(),
            given: 0,
            piece: Vec::new(),
        })
    }

    /// Number of compressed bytes that were not read yet.
    pub fn left(&self) -> u64 {
        self.left
    }

    async fn refill(&mut self) -> Result<(), PieceError> {
        let length = self.left.min(CHUNK);
        self.packed = self.source.read(self.from, length as usize).await.ok_or(PieceError::Unread)?;
        self.taken = 0;
        self.from += length;
        self.left -= length;
        Ok(())
    }

    /// The next piece of the file; empty at its end, after the length and checksum were verified.
    ///
    /// # Errors
    /// [`PieceError`] if the data cannot be read or decompressed, or the length or checksum is wrong.
    pub async fn next_piece(&mut self) -> Result<&[u8], PieceError> {
        let given = loop {
            if self.taken == self.packed.len() && self.left > 0 {
                self.refill().await?;
            }
            self.piece.resize(PIECE, 0);
            let packed = self.packed.get(self.taken..).unwrap_or_default();
            let (taken, given) = if let Some(unpacker) = &mut self.unpacker {
                let step = inflate(unpacker, packed, &mut self.piece, MZFlush::None);
                let over = packed.is_empty() && step.bytes_written == 0;
                if !over && !matches!(step.status, Ok(MZStatus::Ok | MZStatus::StreamEnd)) {
                    return Err(PieceError::Damaged);
                }
                (step.bytes_consumed, step.bytes_written)
            } else {
                let length = packed.len().min(PIECE);
                self.piece[..length].copy_from_slice(&packed[..length]);
                (length, length)
            };
            self.taken += taken;
            // What was taken may give nothing before more of it is there.
            if given > 0 || taken == 0 || self.left == 0 {
                break given;
            }
        };
        self.piece.truncate(given);
        self.hasher.update(&self.piece);
        self.given += given as u64;
        if given == 0 && (self.hasher.clone().finalize(), self.given) != (self.crc, self.size) {
            return Err(PieceError::Damaged);
        }
        Ok(&self.piece)
    }

    /// The whole file.
    ///
    /// # Errors
    /// [`PieceError`] as for [`next_piece`](Self::next_piece), and if the file is longer than `most` bytes.
    pub async fn whole(mut self, most: usize) -> Result<Vec<u8>, PieceError> {
        let mut whole = Vec::new();
        loop {
            let piece = self.next_piece().await?;
            if piece.is_empty() {
                return Ok(whole);
            }
            if whole.len() + piece.len() > most {
                return Err(PieceError::Damaged);
            }
            whole.extend_from_slice(piece);
        }
    }
}
