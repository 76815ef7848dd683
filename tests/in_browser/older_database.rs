//! A database made by an older version opens with all its data and accepts new data.

use idb::{DatabaseEvent, Factory, ObjectStoreParams, TransactionMode};
use js_sys::{Array, Uint8Array};
use lastpull::platform::ids::new_id;
use lastpull::platform::indexed_db::IndexedDb;
use lastpull_core::facts::Fact;
use lastpull_core::journal::{Storage, StorageFault};
use lastpull_core::photo::PhotoStore;
use lastpull_core::photo::contract::photo;
use lastpull_core::time::WallTime;
use uuid::Uuid;
use wasm_bindgen::JsValue;
use wasm_bindgen_test::wasm_bindgen_test;

/// Wall time 1,790,000,000,000 and counter 0, in postcard.
const STAMP: &[u8] = &[0x80, 0xd8, 0xc1, 0xa2, 0x8c, 0x34, 0];

/// An entry as version 1 stored it: the bytes of the test of `journal::record`, with sequence number 1.
fn record() -> Vec<u8> {
    let (device, subject) = (Uuid::from_u128(1), Uuid::from_u128(2));
    [&[1], &device.as_bytes()[..], &[1], STAMP, subject.as_bytes(), &[1, 16, 2, 0]].concat()
}

/// Its head, as in the test of `journal::storage`: device 1 has recorded number 1.
fn head() -> Vec<u8> {
    [&[1, 1, 16], &Uuid::from_u128(1).as_bytes()[..], &[1, 1, 1], STAMP].concat()
}

/// Creates a database exactly as schema version 1 did, with one counted piece in it.
async fn of_version_1(name: &str) {
    let mut request = Factory::new().unwrap().open(name, Some(1)).unwrap();
    request.on_upgrade_needed(|event| {
        for store in ["meta", "tail", "segments", "checkpoint"] {
            event.database().unwrap().create_object_store(store, ObjectStoreParams::new()).unwrap();
        }
    });
    let database = request.await.unwrap();
    let transaction = database.transaction(&["meta", "tail"], TransactionMode::ReadWrite).unwrap();
    let device = Uuid::from_u128(1);
    let put = |store: &str, key: &JsValue, bytes: &[u8]| {
        transaction.object_store(store).unwrap().put(&Uint8Array::from(bytes), Some(key)).unwrap();
    };
    put("meta", &"device".into(), device.as_bytes());
    put("meta", &"head".into(), &head());
    put("tail", &Array::of2(&device.to_string().into(), &1.into()), &record());
    transaction.commit().unwrap().await.unwrap();
    database.close();
}

#[wasm_bindgen_test]
async fn a_database_of_version_1_keeps_its_journal_and_takes_photos() {
    let name = format!("older-{}", new_id());
    of_version_1(&name).await;
    let storage = IndexedDb::new(&name);
    let opened = storage.open().await.unwrap();
    assert_eq!(opened.device, Uuid::from_u128(1));
    assert_eq!(opened.tail.len(), 1);
    assert_eq!(opened.tail[0].fact, Fact::Pulled { pieces: 1, size: None });
    assert!(storage.photos().await.unwrap().is_empty());
    assert!(storage.store_photo(&photo(1), None, WallTime::EPOCH).await.unwrap());
    let again = IndexedDb::new(&name);
    assert_eq!(again.photo(photo(1).id()).await.unwrap().unwrap(), photo(1).bytes());
    assert_eq!(again.open().await.unwrap(), opened);
}

#[wasm_bindgen_test]
async fn a_database_of_a_later_version_is_left_alone() {
    let name = format!("later-{}", new_id());
    Factory::new().unwrap().open(&name, Some(99)).unwrap().await.unwrap().close();
    assert_eq!(IndexedDb::new(&name).open().await, Err(StorageFault::NewerVersion));
}
