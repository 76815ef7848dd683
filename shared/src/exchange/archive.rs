//! A ZIP archive of one packed file, as far as a backup needs the format (APPNOTE 6.3.10): written
//! and read here because a whole ZIP library weighs more in the bundle than the rest of this crate's
//! arithmetic. Any archive tool reads what is written; what is read may come from any of them.

use miniz_oxide::deflate::core::{
    CompressorOxide, TDEFLFlush, TDEFLStatus, compress_to_output, create_comp_flags_from_zip_params,
};
use miniz_oxide::inflate::stream::{InflateState, inflate};
use miniz_oxide::{DataFormat, MZFlush, MZStatus};

const LOCAL: &[u8; 4] = b"PK\x03\x04";
const CENTRAL: &[u8; 4] = b"PK\x01\x02";
const END: &[u8; 4] = b"PK\x05\x06";
/// The sizes of the three records without their names and comments.
const LOCAL_SIZE: usize = 30;
const CENTRAL_SIZE: usize = 46;
const END_SIZE: usize = 22;
const STORED: u16 = 0;
const DEFLATED: u16 = 8;
/// Midnight of the first day that the format knows: two backups of the same facts are the same bytes.
const FIRST_DAY: u16 = 0x21;
/// How much is unpacked at a time.
const PIECE: usize = 32 * 1024;

/// The CRC-32 of ZIP over what came so far and these bytes, four bits a step.
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

/// An archive with one file in it, while that is written.
pub struct Packing {
    name: &'static str,
    out: Vec<u8>,
    packer: Box<CompressorOxide>,
    crc: u32,
    size: u64,
}

impl Packing {
    /// Starts the archive.
    pub fn new(name: &'static str) -> Self {
        // The records are filled in once the sizes are known.
        let out = vec![0; LOCAL_SIZE + name.len()];
        let packer = Box::new(CompressorOxide::new(create_comp_flags_from_zip_params(6, -15, 0)));
        Self { name, out, packer, crc: 0, size: 0 }
    }

    /// Adds to the file.
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

    /// The bytes of the archive; none should it be larger than the format takes.
    pub fn finish(mut self) -> Option<Vec<u8>> {
        if !self.pack(&[], TDEFLFlush::Finish) {
            return None;
        }
        let Self { name, mut out, crc, size, .. } = self;
        let start = LOCAL_SIZE + name.len();
        let packed = u32::try_from(out.len() - start).ok()?;
        let length = u16::try_from(name.len()).ok()?;
        // What both records of the file say of it.
        let mut about = Vec::new();
        for number in [20, 0, DEFLATED, 0, FIRST_DAY] {
            about.extend(u16::to_le_bytes(number));
        }
        for number in [crc, packed, u32::try_from(size).ok()?] {
            about.extend(number.to_le_bytes());
        }
        about.extend(length.to_le_bytes());
        about.extend([0; 2]);
        out.splice(..start, [&LOCAL[..], &about, name.as_bytes()].concat());
        let central = u32::try_from(out.len()).ok()?;
        out.extend([&CENTRAL[..], &[20, 0], &about, &[0; 14], name.as_bytes()].concat());
        let length = u32::try_from(out.len()).ok()? - central;
        out.extend([&END[..], &[0; 4], &[1, 0, 1, 0], &length.to_le_bytes(), &central.to_le_bytes(), &[0; 2]].concat());
        Some(out)
    }
}

/// Why nothing is unpacked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoFile {
    /// This is no archive, or one cut short.
    NotAnArchive,
    /// It does not hold the file, or in a way that nobody packs one.
    NotInIt,
}

/// The bytes do not match their checksum, or end too early.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Damaged;

/// A file of an archive, while it is read.
pub struct Unpacking<'a> {
    packed: &'a [u8],
    unpacker: Option<Box<InflateState>>,
    crc: u32,
    size: u64,
    so_far: (u32, u64),
    piece: Vec<u8>,
}

fn two(bytes: &[u8], at: usize) -> Option<u16> {
    Some(u16::from_le_bytes(bytes.get(at..at + 2)?.try_into().ok()?))
}

fn four(bytes: &[u8], at: usize) -> Option<u32> {
    Some(u32::from_le_bytes(bytes.get(at..at + 4)?.try_into().ok()?))
}

/// Where the last record starts: its comment reaches to the end of the archive.
fn end_of(archive: &[u8]) -> Option<usize> {
    let last = archive.len().checked_sub(END_SIZE)?;
    (last.saturating_sub(usize::from(u16::MAX))..=last).rev().find(|at| {
        archive[*at..].starts_with(END)
            && two(archive, at + 20).is_some_and(|comment| at + END_SIZE + usize::from(comment) == archive.len())
    })
}

impl<'a> Unpacking<'a> {
    /// Finds a file in an archive.
    pub fn new(archive: &'a [u8], name: &str) -> Result<Self, NoFile> {
        let end = end_of(archive).ok_or(NoFile::NotAnArchive)?;
        let count = two(archive, end + 10).ok_or(NoFile::NotAnArchive)?;
        let mut at = four(archive, end + 16).ok_or(NoFile::NotAnArchive)? as usize;
        for _ in 0..count {
            let record =
                archive.get(at..end).filter(|record| record.starts_with(CENTRAL)).ok_or(NoFile::NotAnArchive)?;
            let length = |at| two(record, at).map(usize::from).ok_or(NoFile::NotAnArchive);
            let (named, extra, comment) = (length(28)?, length(30)?, length(32)?);
            if record.get(CENTRAL_SIZE..CENTRAL_SIZE + named) == Some(name.as_bytes()) {
                return Self::of(archive.get(..end).unwrap_or_default(), record).ok_or(NoFile::NotInIt);
            }
            at += CENTRAL_SIZE + named + extra + comment;
        }
        Err(NoFile::NotInIt)
    }

    fn of(archive: &'a [u8], record: &[u8]) -> Option<Self> {
        let encrypted = two(record, 8)? & 1 == 1;
        let unpacker = match two(record, 10)? {
            _ if encrypted => return None,
            STORED => None,
            DEFLATED => Some(InflateState::new_boxed(DataFormat::Raw)),
            _ => return None,
        };
        let (crc, length, size) = (four(record, 16)?, four(record, 20)? as usize, u64::from(four(record, 24)?));
        let local = archive.get(four(record, 42)? as usize..).filter(|local| local.starts_with(LOCAL))?;
        let start = LOCAL_SIZE + usize::from(two(local, 26)?) + usize::from(two(local, 28)?);
        let packed = local.get(start..start.checked_add(length)?)?;
        Some(Self { packed, unpacker, crc, size, so_far: (0, 0), piece: Vec::new() })
    }

    /// How large the archive says the file is.
    pub fn size(&self) -> u64 {
        self.size
    }

    /// The next piece of the file; empty at its end, once that is known to be whole.
    pub fn next_piece(&mut self) -> Result<&[u8], Damaged> {
        self.piece.resize(PIECE, 0);
        let (taken, given) = if let Some(unpacker) = &mut self.unpacker {
            let step = inflate(unpacker, self.packed, &mut self.piece, MZFlush::None);
            let over = self.packed.is_empty() && step.bytes_written == 0;
            if !over && !matches!(step.status, Ok(MZStatus::Ok | MZStatus::StreamEnd)) {
                return Err(Damaged);
            }
            (step.bytes_consumed, step.bytes_written)
        } else {
            let length = self.packed.len().min(PIECE);
            self.piece[..length].copy_from_slice(&self.packed[..length]);
            (length, length)
        };
        self.packed = &self.packed[taken..];
        self.piece.truncate(given);
        self.so_far = (crc(self.so_far.0, &self.piece), self.so_far.1 + given as u64);
        if given == 0 && self.so_far != (self.crc, self.size) {
            return Err(Damaged);
        }
        Ok(&self.piece)
    }
}
