//! Fetching every stored value of the journal, as far as the database gives them.

use super::database::IndexedDb;
use super::fault::fault;
use super::schema::{CHECKPOINT, JOURNAL_STORES, META, SEGMENTS, TAIL};
use super::transaction::Work;
use js_sys::{Array, Uint8Array};
use lastpull_core::journal::{RawJournal, StorageFault, StoredValue};
use wasm_bindgen::{JsCast, JsValue};

impl IndexedDb {
    /// Every value of the journal: in one transaction, or if that fails, store by store and value by value.
    pub(super) async fn fetch_raw(&self) -> RawJournal {
        let mut raw = RawJournal::default();
        let all = async |work: &Work| {
            let mut stores = Vec::new();
            for store in JOURNAL_STORES {
                stores.push(work.values(store).await?);
            }
            Ok(stores)
        };
        match self.work(JOURNAL_STORES, "readonly", all).await {
            Ok(stores) => JOURNAL_STORES.iter().zip(stores).for_each(|(store, values)| put(&mut raw, store, values)),
            Err(fault) => {
                raw.fault = Some(fault);
                for store in JOURNAL_STORES {
                    let values = self.fetch_one_by_one(store).await;
                    put(&mut raw, store, values);
                }
            }
        }
        raw
    }

    /// The values of one store that the database gives.
    async fn fetch_one_by_one(&self, store: &str) -> Vec<StoredValue> {
        let at_once = async |work: &Work| work.values(store).await;
        if let Ok(values) = self.work(&[store], "readonly", at_once).await {
            return values;
        }
        let keys = async |work: &Work| work.keys(store).await;
        let mut values = Vec::new();
        for key in self.work(&[store], "readonly", keys).await.unwrap_or_default() {
            let one = async |work: &Work| {
                let value = work.store(store)?.get(key.clone()).map_err(fault)?.await.map_err(fault)?;
                Ok(value.map(|value| (name_of(&key), bytes_of(&value))))
            };
            values.extend(self.work(&[store], "readonly", one).await.ok().flatten());
        }
        values
    }
}

impl Work {
    async fn keys(&self, store: &str) -> Result<Vec<JsValue>, StorageFault> {
        self.store(store)?.get_all_keys(None, None).map_err(fault)?.await.map_err(fault)
    }

    /// The values of a store with their keys in words.
    async fn values(&self, store: &str) -> Result<Vec<StoredValue>, StorageFault> {
        let keys = self.keys(store).await?;
        let values = self.store(store)?.get_all(None, None).map_err(fault)?.await.map_err(fault)?;
        Ok(keys.iter().map(name_of).zip(values.iter().map(bytes_of)).collect())
    }
}

/// A key in words: a string, or a device and a number.
fn name_of(key: &JsValue) -> String {
    let parts = key.dyn_ref::<Array>().cloned().unwrap_or_else(|| Array::of1(key));
    parts.join("-").into()
}

/// The bytes of a value; empty if it holds something else.
fn bytes_of(value: &JsValue) -> Vec<u8> {
    value.dyn_ref::<Uint8Array>().map(Uint8Array::to_vec).unwrap_or_default()
}

fn put(raw: &mut RawJournal, store: &str, values: Vec<StoredValue>) {
    match store {
        META => raw.head = values.into_iter().find(|(key, _)| key == "head").map(|(_, bytes)| bytes),
        TAIL => raw.tail = values,
        SEGMENTS => raw.segments = values,
        // The record of the last import is there too.
        CHECKPOINT => raw.checkpoint = values.into_iter().find(|(key, _)| key == "shop").map(|(_, bytes)| bytes),
        _ => {}
    }
}
