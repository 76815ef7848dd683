//! What the last import brought, beside the checkpoint: builds that do not know it never look there.

use super::database::IndexedDb;
use super::fault::fault;
use super::schema::CHECKPOINT;
use super::transaction::Work;
use lastpull_core::exchange::ImportRecord;
use lastpull_core::journal::StorageFault;
use wasm_bindgen::JsValue;

const KEY: &str = "import";

impl IndexedDb {
    /// What the last import brought; `None` if nothing is known of one.
    pub async fn import_record(&self) -> Option<ImportRecord> {
        let steps = async |work: &Work| work.get(CHECKPOINT, KEY).await;
        let bytes = self.work(&[CHECKPOINT], "readonly", steps).await.ok().flatten()?;
        ImportRecord::from_bytes(&bytes)
    }

    /// Keeps what an import brought, or forgets it.
    ///
    /// # Errors
    /// [`StorageFault`]; then it can be taken back only until the app is closed.
    pub async fn set_import_record(&self, record: Option<&ImportRecord>) -> Result<(), StorageFault> {
        let steps = async |work: &Work| match record {
            Some(record) => work.put(CHECKPOINT, &KEY.into(), &record.to_bytes()),
            None => work.store(CHECKPOINT)?.delete(JsValue::from_str(KEY)).map(drop).map_err(fault),
        };
        self.work(&[CHECKPOINT], "readwrite", steps).await
    }
}
