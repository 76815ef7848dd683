//! The journal and the photos in IndexedDB.
//!
//! Schema, database version 2; 1 had no photos. Every value is a byte array that begins with its own version.
//!
//! | object store | key | value |
//! |---|---|---|
//! | `meta` | `"device"` | the 16 bytes of this device's id |
//! | `meta` | `"head"` | [`Head::to_bytes`] |
//! | `tail` | `[device, seq]` | one entry, as `journal::record` |
//! | `segments` | `[device, first seq]` | many entries, as `journal::segment` |
//! | `checkpoint` | `"shop"` | [`Checkpoint`] |
//! | `photos` | id in hexadecimal | [`STORED_VERSION`], then the JPEG |
//! | `cards` | id in hexadecimal | [`StoredPhotoInfo`]: when the photo was last kept, and its thumbnail |
//!
//! `disk.js` reads and appends with the same schema in a worker.
//!
//! Every write asks for strict durability: its future resolves when the bytes are on the disk. Inside a
//! transaction only its own requests are awaited, since it commits by itself otherwise. Photos have
//! transactions of their own, so that a count never waits for one.
//!
//! [`Head::to_bytes`]: lastpull_core::journal::Head::to_bytes
//! [`Checkpoint`]: lastpull_core::journal::Checkpoint
//! [`STORED_VERSION`]: lastpull_core::photo::STORED_VERSION
//! [`StoredPhotoInfo`]: lastpull_core::photo::StoredPhotoInfo

mod database;
mod fault;
mod import_record;
mod journal;
mod journal_meta;
mod photos;
mod raw;
mod schema;
mod transaction;
mod worker_append;

pub use database::IndexedDb;
