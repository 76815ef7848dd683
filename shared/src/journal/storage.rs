//! The contract of every storage backend.

use super::record::BytesProblem;
use super::{Checkpoint, Coverage, Entry, HybridClock, JournalFact, Packed};
use crate::codec::Encode;
use crate::ids::{DeviceId, Subject};
use crate::time::WallTime;

/// A fact to append; the storage assigns its number and stamp.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft<F> {
    /// When it happened.
    pub at: WallTime,
    /// What it is about.
    pub subject: Subject,
    /// The fact.
    pub fact: F,
}

/// The small record that every write reads and replaces: which facts are stored, and the clock.
#[derive(Clone, Debug, PartialEq, Eq, Default, Encode)]
pub struct Head {
    /// Which facts are stored, in the tail and in segments.
    pub coverage: Coverage,
    /// The clock, after every stored stamp.
    pub clock: HybridClock,
}

impl Head {
    /// The version written: one byte, then the head in postcard. **Frozen**.
    pub const VERSION: u8 = 1;

    /// Encodes the head.
    pub fn to_bytes(&self) -> Vec<u8> {
        let mut bytes = vec![Self::VERSION];
        self.encode(&mut bytes);
        bytes
    }

    /// Decodes a head.
    ///
    /// # Errors
    /// [`BytesProblem`]; bytes left over count as damage.
    pub fn from_bytes(bytes: &[u8]) -> Result<Self, BytesProblem> {
        match bytes.split_first() {
            Some((&Self::VERSION, rest)) => crate::codec::from_bytes(rest).ok_or(BytesProblem::Damaged),
            Some((&version, _)) if version > Self::VERSION => Err(BytesProblem::Newer(version)),
            _ => Err(BytesProblem::Damaged),
        }
    }
}

/// What opening a journal reads: only as much as the work since the last checkpoint.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened<F> {
    /// Id of this device, stored with the journal so that erasing one erases the other.
    pub device: DeviceId,
    /// Which facts are stored.
    pub head: Head,
    /// The shop folded over everything but the tail, if one was saved.
    pub checkpoint: Option<Checkpoint>,
    /// Entries after the checkpoint, in any order.
    pub tail: Vec<Entry<F>>,
}

/// Why storing or reading failed.
#[derive(Clone, Debug, PartialEq, Eq, Encode)]
pub enum StorageFault {
    /// The disk or the quota is full.
    Full,
    /// The connection to the database was closed; opening it again may help.
    Closed,
    /// Another window wrote since the last read. Read again and retry.
    Stale,
    /// Another window holds an older version of the database open.
    Blocked,
    /// Stored bytes cannot be decoded. They were not overwritten.
    Unreadable(BytesProblem),
    /// Written by a newer version of Lastpull, which must be loaded first.
    NewerVersion,
    /// The storage does not answer. What was asked of it may still happen.
    Silent,
    /// The browser offers no storage to this page (private window, or switched off).
    Unavailable,
    /// Anything else, in the browser's words.
    Other(String),
}

/// A stored value and its key in words, which becomes a file name.
pub type StoredValue = (String, Vec<u8>);

/// The values of a journal as they are stored, undecoded.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RawJournal {
    /// The head; `None` if there is none, or if it could not be fetched.
    pub head: Option<Vec<u8>>,
    /// Single entries.
    pub tail: Vec<StoredValue>,
    /// Packed entries.
    pub segments: Vec<StoredValue>,
    /// The checkpoint.
    pub checkpoint: Option<Vec<u8>>,
    /// The first fault while fetching: there may be more values than these.
    pub fault: Option<StorageFault>,
}

/// A place to store a journal.
///
/// Every method is one transaction: it is complete and durable before its future resolves to `Ok`, or has no
/// effect. Several handles (two open tabs) may use one store at once; each sees what any has committed.
#[allow(async_fn_in_trait)]
pub trait Storage<F> {
    /// Reads what is needed to continue working. Creates the device's id on first use.
    async fn open(&self) -> Result<Opened<F>, StorageFault>;

    /// Appends facts of this device in the given order and returns them as entries. Numbers and stamps are
    /// assigned inside the transaction, so that two tabs cannot collide: either from the head it reads, or in
    /// advance and stored only if the head they build on is the one it reads.
    async fn append(&self, drafts: &[Draft<F>]) -> Result<Vec<Entry<F>>, StorageFault>;

    /// Encodes the tail and the `added` entries of other devices, by device and number, into segments, and saves the
    /// checkpoint, which must be the fold over all of them.
    ///
    /// # Errors
    /// [`StorageFault::Stale`] if the stored head is no longer `expected`; nothing is changed.
    async fn compact(
        &self,
        expected: &Head,
        added: &Packed<F>,
        clock: HybridClock,
        checkpoint: &Checkpoint,
    ) -> Result<Head, StorageFault>;

    /// Stores entries that have a device and a number already, in the tail, and marks the clock as after their stamps.
    /// Those that are stored are left as they are. If another entry is stored under a number, the entry gets the next
    /// number of this device. Returns the entries as they are stored.
    async fn adopt(&self, entries: &[Entry<F>]) -> Result<Vec<Entry<F>>, StorageFault>;

    /// Takes entries out again that a merge brought in: stores `remaining`, which must be every other stored entry,
    /// and the checkpoint over them. The clock stays.
    ///
    /// # Errors
    /// [`StorageFault::Stale`] if the stored head is no longer `expected`; nothing is changed.
    async fn withdraw(
        &self,
        expected: &Head,
        remaining: &Packed<F>,
        checkpoint: &Checkpoint,
    ) -> Result<Head, StorageFault>;

    /// Gives this device a new id if it still has the id `old`, and returns the id that it has. What is stored stays, and
    /// its next fact has number 1. For a device that learns that another one counts under its id.
    async fn renew_device(&self, old: DeviceId) -> Result<DeviceId, StorageFault>;

    /// Every stored entry, each once, by device and number, as it is stored.
    async fn read_packed(&self) -> Result<Packed<F>, StorageFault>;

    /// Every stored entry, as [`read_packed`](Self::read_packed) gives them. They take fifteen times as much memory.
    async fn read_all(&self) -> Result<Vec<Entry<F>>, StorageFault>
    where
        F: JournalFact,
    {
        Ok(self.read_packed().await?.entries().collect())
    }

    /// Every stored value that can be fetched, decodable or not.
    async fn read_raw(&self) -> RawJournal;

    /// Erases everything, including the device's id and the stored photos.
    async fn erase(&self) -> Result<(), StorageFault>;
}

/// Assigns numbers and stamps to drafts and advances the head past them. Shared by the backends.
pub fn assign_sequence<F: Clone>(head: &mut Head, device: DeviceId, drafts: &[Draft<F>]) -> Vec<Entry<F>> {
    let mut seq = head.coverage.next_seq(device);
    let mut entries = Vec::with_capacity(drafts.len());
    for draft in drafts {
        let stamp = head.clock.stamp(draft.at);
        head.coverage.add(device, seq);
        entries.push(Entry { device, seq, stamp, at: draft.at, subject: draft.subject, fact: draft.fact.clone() });
        seq += 1;
    }
    entries
}

/// What [`Storage::adopt`] stores.
pub struct Adopted<F> {
    /// The entries to write.
    pub new: Vec<Entry<F>>,
    /// All entries as they are stored afterwards, in the order given.
    pub all: Vec<Entry<F>>,
}

/// What [`Storage::adopt`] stores, and the head after it. `stored` are those of the entries that are stored as they are.
/// Shared by the backends.
pub fn adopt_into<F: Clone>(
    head: &mut Head,
    device: DeviceId,
    entries: &[Entry<F>],
    stored: impl Fn(&Entry<F>) -> bool,
) -> Adopted<F> {
    let taken: Vec<bool> =
        entries.iter().map(|entry| head.coverage.holds(entry.device, entry.seq) && !stored(entry)).collect();
    let mut adopted = Adopted { new: Vec::new(), all: entries.to_vec() };
    for entry in entries.iter().filter(|entry| !head.coverage.holds(entry.device, entry.seq)) {
        adopted.new.push(entry.clone());
    }
    for entry in &adopted.new {
        head.coverage.add(entry.device, entry.seq);
        head.clock.observe(entry.stamp);
    }
    for (entry, _) in adopted.all.iter_mut().zip(taken).filter(|(_, taken)| *taken) {
        let draft = Draft { at: entry.at, subject: entry.subject, fact: entry.fact.clone() };
        let numbered = assign_sequence(head, device, &[draft]);
        numbered.into_iter().for_each(|again| *entry = again);
        adopted.new.push(entry.clone());
    }
    adopted
}

/// The head after [`Storage::withdraw`]. Shared by the backends.
pub fn withdraw_from<F>(head: &Head, remaining: &Packed<F>) -> Head {
    Head { coverage: remaining.coverage(), clock: head.clock }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::time::wall;
    use uuid::Uuid;

    /// These bytes are stored on users' devices.
    #[test]
    fn the_bytes_of_a_head_of_version_1_are_frozen() {
        let mut head = Head::default();
        head.coverage.add(Uuid::from_u128(7), 1);
        head.coverage.add(Uuid::from_u128(7), 2);
        head.clock.stamp(wall(300));
        let frozen: &[u8] = &[
            1, 1, // version, one device
            16, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 7, // its id
            1, 1, 2, // one run of numbers, 1 to 2
            0xac, 0x02, 0, // clock
        ];
        assert_eq!(head.to_bytes(), frozen);
        assert_eq!(Head::from_bytes(frozen), Ok(head));
        assert_eq!(Head::from_bytes(&[2, 0]), Err(BytesProblem::Newer(2)));
        assert_eq!(Head::from_bytes(&frozen[..9]), Err(BytesProblem::Damaged));
    }
}
