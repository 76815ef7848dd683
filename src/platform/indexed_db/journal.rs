//! The journal in the database.

use super::super::ids;
use super::super::journal_worker::Stored;
use super::database::IndexedDb;
use super::fault::{fault, unreadable};
use super::journal_meta::{KnownMeta, device_and_head};
use super::schema::{CHECKPOINT, JOURNAL_STORES, META, PHOTO_STORES, SEGMENTS, TAIL, entry_key};
use super::transaction::Work;
use super::worker_append::WorkerAppend;
use lastpull_core::facts::{Draft, Entry, Fact, Opened};
use lastpull_core::ids::DeviceId;
use lastpull_core::journal::{Checkpoint, Head, HybridClock, Storage, StorageFault, assign_sequence, record, segment};

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
        let steps = async |work: &Work| {
            let known = work.device_and_head().await?;
            let checkpoint = work.get(CHECKPOINT, "shop").await?.map(|bytes| Checkpoint { bytes });
            let tail = work.tail().await?;
            Ok((known, checkpoint, tail))
        };
        let (known, checkpoint, tail) = self.begin().await?.run_steps(steps).await?;
        let KnownMeta { device, head, .. } = known.clone();
        self.known.replace(Some(known));
        Ok(Opened { device, head, checkpoint, tail })
    }

    async fn append(&self, drafts: &[Draft]) -> Result<Vec<Entry>, StorageFault> {
        let unsure = match self.append_in_worker(drafts).await? {
            WorkerAppend::Saved(entries) => return Ok(entries),
            WorkerAppend::NotDone => Vec::new(),
            WorkerAppend::Unsure(entries) => entries,
        };
        let steps = async |work: &Work| {
            let KnownMeta { device, mut head, .. } = work.device_and_head().await?;
            // Entries without an answer may be stored all the same: all or none of them, since it was one transaction.
            if let Some(first) = unsure.first()
                && work.holds(first).await?
            {
                return Ok(unsure);
            }
            let entries = assign_sequence(&mut head, device, drafts);
            for entry in &entries {
                work.put(TAIL, &entry_key(device, entry.seq), &record::encode(entry))?;
            }
            work.put(META, &"head".into(), &head.to_bytes())?;
            Ok(entries)
        };
        self.begin_over(&[META, TAIL], "readwrite").await?.run_steps(steps).await
    }

    async fn compact(
        &self,
        expected: &Head,
        added: &[Entry],
        clock: HybridClock,
        checkpoint: &Checkpoint,
    ) -> Result<Head, StorageFault> {
        let steps = async |work: &Work| {
            let mut head = work.device_and_head().await?.head;
            if head.coverage != expected.coverage {
                return Err(StorageFault::Stale);
            }
            let tail = work.tail().await?;
            for segment in segment::pack(tail.iter().chain(added)) {
                work.put(SEGMENTS, &entry_key(segment.device, segment.first), &segment.bytes)?;
            }
            work.store(TAIL)?.clear().map_err(fault)?;
            work.put(CHECKPOINT, &"shop".into(), &checkpoint.bytes)?;
            head.coverage.add_all(added);
            head.clock = clock;
            work.put(META, &"head".into(), &head.to_bytes())?;
            Ok(head)
        };
        self.begin().await?.run_steps(steps).await
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
        let known = self.begin_over(&[META], "readwrite").await?.run_steps(steps).await?;
        let device = known.device;
        self.known.replace(Some(known));
        Ok(device)
    }

    async fn read_all(&self) -> Result<Vec<Entry>, StorageFault> {
        let steps = async |work: &Work| Ok((work.tail().await?, work.all(SEGMENTS).await?));
        let (mut entries, segments) = self.begin().await?.run_steps(steps).await?;
        for bytes in segments {
            entries.extend(segment::unpack(&bytes).map_err(unreadable)?);
        }
        Ok(entries)
    }

    async fn erase(&self) -> Result<(), StorageFault> {
        let steps = async |work: &Work| {
            for store in [JOURNAL_STORES, PHOTO_STORES].concat() {
                work.store(store)?.clear().map_err(fault)?;
            }
            Ok(())
        };
        self.begin_over(&[JOURNAL_STORES, PHOTO_STORES].concat(), "readwrite").await?.run_steps(steps).await
    }
}
