//! Reading and appending in the worker.

use super::super::journal_worker::{Append, Appended, Stored};
use super::database::IndexedDb;
use super::journal_meta::{KnownMeta, device_and_head};
use super::schema::{VERSION, entry_key};
use lastpull_core::facts::{Draft, Entry};
use lastpull_core::journal::{StorageFault, assign_sequence, record};

/// Result of an append in the worker.
pub enum WorkerAppend {
    /// Committed.
    Saved(Vec<Entry>),
    /// The worker was not asked, or stored nothing.
    NotDone,
    /// The worker did not answer: the entries may be committed or not.
    Unsure,
}

impl IndexedDb {
    /// What the worker read; `None` if it failed, or if the page must create or upgrade the database first.
    pub(super) async fn read_in_worker(&self) -> Option<Stored> {
        let stored = self.disk.as_ref()?.read(&self.name).await?;
        (stored.version == VERSION && !stored.meta.is_empty()).then_some(stored)
    }

    /// Appends in the worker, on top of the head last seen by this page.
    pub(super) async fn append_in_worker(&self, drafts: &[Draft]) -> Result<WorkerAppend, StorageFault> {
        let Some(disk) = self.disk.as_ref().filter(|disk| !disk.is_given_up()) else {
            return Ok(WorkerAppend::NotDone);
        };
        // The page itself looks first whether an append without an answer is stored.
        if !self.unsure.borrow().is_empty() {
            return Ok(WorkerAppend::NotDone);
        }
        // Another tab may have written in between, more than once.
        for _ in 0..3 {
            let Some(KnownMeta { device, mut head, meta }) = self.known.borrow().clone() else { break };
            let entries = assign_sequence(&mut head, device, drafts);
            let after = head.to_bytes();
            let append = Append {
                name: &self.name,
                version: VERSION,
                meta: &meta,
                head: &after,
                keys: entries.iter().map(|entry| entry_key(device, entry.seq)).collect(),
                records: entries.iter().map(record::encode).collect(),
            };
            // Until the answer is here, they may be stored or not.
            self.unsure.replace(entries.clone());
            let appended = disk.append(append).await;
            if !matches!(appended, Appended::Unknown) {
                self.unsure.take();
            }
            match appended {
                Appended::Saved => {
                    let meta = vec![device.as_bytes().to_vec(), after];
                    self.known.replace(Some(KnownMeta { device, head, meta }));
                    return Ok(WorkerAppend::Saved(entries));
                }
                Appended::Changed(meta) => {
                    let known = device_and_head(meta)?;
                    self.known.replace(known);
                }
                Appended::Unknown => return Ok(WorkerAppend::Unsure),
            }
        }
        Ok(WorkerAppend::NotDone)
    }
}
