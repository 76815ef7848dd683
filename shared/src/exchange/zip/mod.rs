//! A ZIP archive, as far as a backup needs the format (APPNOTE 6.3.10). Any archive tool reads what is
//! written; what is read may come from any of them.
//!
//! Our own, because reading is asynchronous and by ranges ([`Source`]), is bounded against hostile files, and
//! holds one photo in memory at a time; the `zip` crate needs `Read + Seek`.

pub(crate) mod reader;
pub(crate) mod writer;

pub use reader::Source;

pub(crate) const LOCAL: &[u8; 4] = b"PK\x03\x04";
pub(crate) const CENTRAL: &[u8; 4] = b"PK\x01\x02";
pub(crate) const END: &[u8; 4] = b"PK\x05\x06";
/// Sizes of the three kinds of records, without names and comments.
pub(crate) const LOCAL_SIZE: usize = 30;
pub(crate) const CENTRAL_SIZE: usize = 46;
pub(crate) const END_SIZE: usize = 22;
pub(crate) const STORED: u16 = 0;
pub(crate) const DEFLATED: u16 = 8;
