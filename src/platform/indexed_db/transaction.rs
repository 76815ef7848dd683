//! Transactions with strict durability.

use super::fault::{fault, fault_named};
use idb::{ObjectStore, Transaction};
use js_sys::{Array, Function, Object, Promise, Reflect, Uint8Array};
use lastpull_core::journal::StorageFault;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{IdbDatabase, IdbTransaction};

/// A transaction with strict durability. Called through reflection, since the binding for its options is
/// unstable.
pub fn strict(database: &IdbDatabase, stores: &[&str], mode: &str) -> Result<IdbTransaction, JsValue> {
    let stores: Array = stores.iter().copied().map(JsValue::from_str).collect();
    let options = Object::new();
    Reflect::set(&options, &"durability".into(), &"strict".into())?;
    let transaction: Function = Reflect::get(database, &"transaction".into())?.dyn_into()?;
    transaction.call3(database, &stores, &mode.into(), &options)?.dyn_into()
}

/// Commits a transaction. Called through reflection, since its binding is marked for removal.
fn commit(transaction: &IdbTransaction) -> Result<JsValue, JsValue> {
    let commit: Function = Reflect::get(transaction, &"commit".into())?.dyn_into()?;
    commit.call0(transaction)
}

/// A running transaction.
pub struct Work {
    raw: IdbTransaction,
    transaction: Transaction,
}

impl Work {
    /// Starts using a transaction.
    pub fn new(raw: IdbTransaction) -> Self {
        Self { transaction: Transaction::from(raw.clone()), raw }
    }

    /// The transaction itself, for somebody who may abort it.
    pub fn handle(&self) -> IdbTransaction {
        self.raw.clone()
    }

    /// An object store of the transaction.
    pub fn store(&self, name: &str) -> Result<ObjectStore, StorageFault> {
        self.transaction.object_store(name).map_err(fault)
    }

    /// Requests a write; the commit waits for it.
    pub fn put(&self, store: &str, key: &JsValue, bytes: &[u8]) -> Result<(), StorageFault> {
        self.store(store)?.put(&Uint8Array::from(bytes), Some(key)).map(drop).map_err(fault)
    }

    /// The value under a key.
    pub async fn get(&self, store: &str, key: &str) -> Result<Option<Vec<u8>>, StorageFault> {
        let value = self.store(store)?.get(JsValue::from_str(key)).map_err(fault)?.await.map_err(fault)?;
        Ok(value.map(|value| Uint8Array::new(&value).to_vec()))
    }

    /// The key, if there is a value under it.
    pub async fn get_key(&self, store: &str, key: &str) -> Result<Option<JsValue>, StorageFault> {
        self.store(store)?.get_key(JsValue::from_str(key)).map_err(fault)?.await.map_err(fault)
    }

    /// All values of an object store, in the order of their keys.
    pub async fn all(&self, store: &str) -> Result<Vec<Vec<u8>>, StorageFault> {
        let values = self.store(store)?.get_all(None, None).map_err(fault)?.await.map_err(fault)?;
        Ok(values.iter().map(|value| Uint8Array::new(value).to_vec()).collect())
    }

    /// Waits until the transaction is committed. Listens to the transaction itself: it ends once, by
    /// completion or abort, and only then its error is known.
    async fn finish(self) -> Result<(), StorageFault> {
        let ended = Promise::new(&mut |complete, abort| {
            self.raw.set_oncomplete(Some(&complete));
            self.raw.set_onabort(Some(&abort));
            // Nothing more is requested, so it can commit at once. Fails if the transaction has begun to
            // commit by itself.
            let _ = commit(&self.raw);
        });
        JsFuture::from(ended).await.map(drop).map_err(|_| {
            self.raw.error().map_or(StorageFault::Closed, |error| fault_named(&error.name(), &error.message()))
        })
    }

    /// Runs `steps` and waits for the commit; if one fails, the whole transaction is rolled back.
    pub async fn run_steps<T>(
        self,
        steps: impl AsyncFnOnce(&Self) -> Result<T, StorageFault>,
    ) -> Result<T, StorageFault> {
        match steps(&self).await {
            Ok(value) => self.finish().await.map(|()| value),
            Err(fault) => self.abandon(fault),
        }
    }

    /// Aborts the transaction, and returns the fault that caused it.
    fn abandon<T>(self, fault: StorageFault) -> Result<T, StorageFault> {
        let _ = self.raw.abort();
        Err(fault)
    }
}
