//! The journal in the database.

use super::super::ids;
use super::super::journal_worker::Stored;
use super::database::{Appending, IndexedDb};
use super::fault::{fault, unreadable};
use super::journal_meta::{KnownMeta, device_and_head};
use super::schema::{CHECKPOINT, JOURNAL_STORES, META, PHOTO_STORES, SEGMENTS, TAIL, entry_key};
use super::transaction::Work;
use super::worker_append::WorkerAppend;
use lastpull_core::facts::{Draft, Entry, Fact, Opened};
use lastpull_core::ids::DeviceId;
use lastpull_core::journal::{
    Checkpoint, Head, HybridClock, Packed, RawJournal, Storage, StorageFault, adopt_into, assign_sequence, record,
    withdraw_from,
};

impl IndexedDb {
    /// The stored head.
    ///
    /// # Errors
    /// [`StorageFault`] if it cannot be read.
    pub async fn head(&self) -> Result<Head, StorageFault> {
        let steps = async |work: &Work| device_and_head(work.all(META).await?);
        Ok(self.work(&[META], "readonly", steps).await?.map(|known| known.head).unwrap_or_default())
    }

    /// Gives up an append that is not answered, and returns the entries that it may store all the same: those that a
    /// worker was asked for, or those of a transaction that has begun to commit and cannot be aborted any more.
    pub fn give_up_append(&self) -> Vec<Entry> {
        match self.appending.take() {
            Some(appending) if appending.transaction.abort().is_err() => appending.entries,
            _ => self.unsure.borrow().clone(),
        }
    }

    /// Number of facts stored, as far as this page knows.
    pub fn known_facts(&self) -> Option<u64> {
        self.known.borrow().as_ref().map(|known| known.head.coverage.len())
    }
}

impl Storage<Fact> for IndexedDb {
    async fn open(&self) -> Result<Opened, StorageFault> {
        if let Some(Stored { meta, checkpoint, tail, .. }) = self.read_in_worker().await
            && let Some(known) = device_and_head(meta)?
        {
            let KnownMeta { device, head, .. } = known.clone();
            self.known.replace(Some(known));
            let tail = tail.iter().map(|bytes| record::decode(bytes).map_err(unreadable)).collect::<Result<_, _>>()?;
            return Ok(Opened { device, head, checkpoint: checkpoint.map(|bytes| Checkpoint { bytes }), tail });
        }
        // Read-only: it waits for no count, and no count waits for it. Only a new journal writes its device's id.
        let steps = async |work: &Work| {
            let known = device_and_head(work.all(META).await?)?;
            let checkpoint = work.get(CHECKPOINT, "shop").await?.map(|bytes| Checkpoint { bytes });
            let tail = work.tail().await?;
            Ok((known, checkpoint, tail))
        };
        let (known, checkpoint, tail) = self.work(JOURNAL_STORES, "readonly", steps).await?;
        let known = match known {
            Some(known) => known,
            None => self.work(&[META], "readwrite", async |work: &Work| work.device_and_head().await).await?,
        };
        let KnownMeta { device, head, .. } = known.clone();
        self.known.replace(Some(known));
        Ok(Opened { device, head, checkpoint, tail })
    }

    async fn append(&self, drafts: &[Draft]) -> Result<Vec<Entry>, StorageFault> {
        match self.append_in_worker(drafts).await? {
            WorkerAppend::Saved(entries) => return Ok(entries),
            WorkerAppend::NotDone => {}
            WorkerAppend::Unsure => drop(self.known.take()),
        }
        let unsure = self.unsure.borrow().clone();
        let stores = if unsure.is_empty() { &[META, TAIL] } else { JOURNAL_STORES };
        let steps = async |work: &Work| {
            // Until it knows better, what may be stored is what the worker was asked for.
            self.appending.replace(Some(Appending { transaction: work.handle(), entries: unsure.clone() }));
            let KnownMeta { device, mut head, .. } = work.device_and_head().await?;
            // Entries without an answer may be stored all the same. More facts may have been recorded since: only those
            // that are found count as stored.
            let mut entries = Vec::new();
            for (entry, draft) in unsure.iter().zip(drafts) {
                let same = (entry.at, entry.subject, &entry.fact) == (draft.at, draft.subject, &draft.fact);
                if !same || !head.coverage.holds(entry.device, entry.seq) || !work.holds(entry).await? {
                    break;
                }
                entries.push(entry.clone());
            }
            let added = assign_sequence(&mut head, device, drafts.get(entries.len()..).unwrap_or_default());
            for entry in &added {
                work.put(TAIL, &entry_key(device, entry.seq), &record::encode(entry))?;
            }
            let head_bytes = head.to_bytes();
            work.put(META, &"head".into(), &head_bytes)?;
            entries.extend(added);
            self.appending.replace(Some(Appending { transaction: work.handle(), entries: entries.clone() }));
            let meta = vec![device.as_bytes().to_vec(), head_bytes];
            Ok((entries, KnownMeta { device, head, meta }))
        };
        let appended = self.work(stores, "readwrite", steps).await;
        self.appending.take();
        let (entries, known) = appended?;
        self.unsure.take();
        self.known.replace(Some(known));
        Ok(entries)
    }

    async fn compact(
        &self,
        expected: &Head,
        added: &Packed<Fact>,
        clock: HybridClock,
        checkpoint: &Checkpoint,
    ) -> Result<Head, StorageFault> {
        let steps = async |work: &Work| {
            let mut head = work.head_at(expected).await?;
            let tail = work.tail().await?;
            for segment in added.with_tail(&tail).segments() {
                work.put(SEGMENTS, &entry_key(segment.device, segment.first), &segment.bytes)?;
            }
            work.store(TAIL)?.clear().map_err(fault)?;
            work.put(CHECKPOINT, &"shop".into(), &checkpoint.bytes)?;
            head.coverage.add_coverage(&added.coverage());
            head.clock = clock;
            work.put(META, &"head".into(), &head.to_bytes())?;
            Ok(head)
        };
        self.work(JOURNAL_STORES, "readwrite", steps).await
    }

    async fn adopt(&self, entries: &[Entry]) -> Result<Vec<Entry>, StorageFault> {
        let steps = async |work: &Work| {
            let KnownMeta { device, mut head, .. } = work.device_and_head().await?;
            let mut stored = Vec::new();
            for entry in entries.iter().filter(|entry| head.coverage.holds(entry.device, entry.seq)) {
                if work.holds(entry).await? {
                    stored.push((entry.device, entry.seq));
                }
            }
            let is_stored = |entry: &Entry| stored.contains(&(entry.device, entry.seq));
            let adopted = adopt_into(&mut head, device, entries, is_stored);
            for entry in &adopted.new {
                work.put(TAIL, &entry_key(entry.device, entry.seq), &record::encode(entry))?;
            }
            work.put(META, &"head".into(), &head.to_bytes())?;
            Ok(adopted.all)
        };
        let adopted = self.work(JOURNAL_STORES, "readwrite", steps).await?;
        self.unsure.take();
        Ok(adopted)
    }

    async fn withdraw(
        &self,
        expected: &Head,
        remaining: &Packed<Fact>,
        checkpoint: &Checkpoint,
    ) -> Result<Head, StorageFault> {
        let steps = async |work: &Work| {
            let head = withdraw_from(&work.head_at(expected).await?, remaining);
            work.store(TAIL)?.clear().map_err(fault)?;
            work.store(SEGMENTS)?.clear().map_err(fault)?;
            for segment in remaining.segments() {
                work.put(SEGMENTS, &entry_key(segment.device, segment.first), &segment.bytes)?;
            }
            work.put(CHECKPOINT, &"shop".into(), &checkpoint.bytes)?;
            work.put(META, &"head".into(), &head.to_bytes())?;
            Ok(head)
        };
        self.work(JOURNAL_STORES, "readwrite", steps).await
    }

    async fn read_raw(&self) -> RawJournal {
        self.fetch_raw().await
    }

    async fn renew_device(&self, old: DeviceId) -> Result<DeviceId, StorageFault> {
        let steps = async |work: &Work| {
            let mut known = work.device_and_head().await?;
            if known.device == old {
                known.device = ids::new_id();
                known.meta[0] = known.device.as_bytes().to_vec();
                work.put(META, &"device".into(), known.device.as_bytes())?;
            }
            Ok(known)
        };
        let known = self.work(&[META], "readwrite", steps).await?;
        let device = known.device;
        self.known.replace(Some(known));
        Ok(device)
    }

    async fn read_packed(&self) -> Result<Packed<Fact>, StorageFault> {
        let steps = async |work: &Work| Ok((work.tail().await?, work.all(SEGMENTS).await?));
        let (tail, segments) = self.work(JOURNAL_STORES, "readonly", steps).await?;
        Packed::stored(&tail, segments).map_err(unreadable)
    }

    async fn erase(&self) -> Result<(), StorageFault> {
        let steps = async |work: &Work| {
            for store in [JOURNAL_STORES, PHOTO_STORES].concat() {
                work.store(store)?.clear().map_err(fault)?;
            }
            Ok(())
        };
        self.work(&[JOURNAL_STORES, PHOTO_STORES].concat(), "readwrite", steps).await
    }
}
