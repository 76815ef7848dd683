//! Object stores and keys.

use idb::{Database, ObjectStoreParams};
use js_sys::Array;
use lastpull_core::ids::DeviceId;
use wasm_bindgen::JsValue;

/// Version of the schema.
pub const VERSION: u32 = 2;
/// Identity of the device and the head of the journal.
pub const META: &str = "meta";
/// Entries since the last compaction.
pub const TAIL: &str = "tail";
/// Packed entries.
pub const SEGMENTS: &str = "segments";
/// The fold of the packed entries.
pub const CHECKPOINT: &str = "checkpoint";
/// Photos.
pub const PHOTOS: &str = "photos";
/// When each photo was last kept, and its thumbnail.
pub const CARDS: &str = "cards";
/// Object stores of the journal.
pub const JOURNAL_STORES: &[&str] = &[META, TAIL, SEGMENTS, CHECKPOINT];
/// Object stores of the photos.
pub const PHOTO_STORES: &[&str] = &[PHOTOS, CARDS];

/// Creates the object stores that each version after `from` added. 0 is a new database.
pub fn upgrade(database: &Database, from: u32) {
    let added: &[&[&str]] = &[JOURNAL_STORES, PHOTO_STORES];
    for store in added.iter().skip(from as usize).copied().flatten() {
        let _ = database.create_object_store(store, ObjectStoreParams::new());
    }
}

/// The key of an entry in the tail, and of a segment by its first entry.
pub fn entry_key(device: DeviceId, seq: u64) -> JsValue {
    Array::of2(&device.to_string().into(), &JsValue::from_f64(seq as f64)).into()
}
