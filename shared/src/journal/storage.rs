//! The promise that every place to keep a journal makes.

use super::record::BytesProblem;
use super::{Checkpoint, Coverage, Entry, HybridClock};
use crate::codec::Encode;
use crate::ids::{DeviceId, Subject};

/// A fact to be appended: the storage gives it its number and stamp.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft<F> {
    /// Wall time at which it happened, in milliseconds since 1970.
    pub at: u64,
    /// What it is about.
    pub subject: Subject,
    /// What happened.
    pub fact: F,
}

/// The one small record that every write reads and rewrites: what is here, and the clock.
#[derive(Clone, Debug, PartialEq, Eq, Default, Encode)]
pub struct Head {
    /// Which facts are stored, in the tail and in segments.
    pub coverage: Coverage,
    /// The clock, past every stamp stored.
    pub clock: HybridClock,
}

impl Head {
    /// The version that is written: one byte of it, then the head in postcard. **Frozen**.
    pub const VERSION: u8 = 1;

    /// The stored bytes.
    pub fn to_bytes(&self) -> Vec<u8> {
        let mut bytes = vec![Self::VERSION];
        self.encode(&mut bytes);
        bytes
    }

    /// The head of stored bytes.
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

/// What opening a journal reads: as much as today's work, however long the shop has been at it.
#[derive(Clone, Debug, PartialEq)]
pub struct Opened<F> {
    /// This device, named in the journal's own place so that wiping one wipes the other.
    pub device: DeviceId,
    /// What is stored.
    pub head: Head,
    /// The shop folded over everything but the tail, where one was saved.
    pub checkpoint: Option<Checkpoint>,
    /// What came after the checkpoint, in any order.
    pub tail: Vec<Entry<F>>,
}

/// Why storing or reading failed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StorageFault {
    /// The device gives no more room.
    Full,
    /// The connection to the store was closed underneath; opening it again may help.
    Closed,
    /// What was read before is not what is stored now: another window wrote. Read again and retry.
    Stale,
    /// Another window holds an older version open and does not let go.
    Blocked,
    /// Stored bytes do not read. Nothing was written over them.
    Unreadable(BytesProblem),
    /// The journal was written by a newer version of Lastpull, which must be loaded first.
    NewerVersion,
    /// The browser has no store for this page (private window, or switched off).
    Unavailable,
    /// Anything else, in the browser's words.
    Other(String),
}

/// Where a journal is kept.
///
/// Every method is one transaction: it happens wholly and durably before its future resolves to
/// `Ok`, or not at all. Several handles (two open tabs) may work on one store at once; each sees
/// what any has committed.
#[allow(async_fn_in_trait)]
pub trait Storage<F> {
    /// Reads what is needed to go on working. Creates the device's identity on first use.
    async fn open(&self) -> Result<Opened<F>, StorageFault>;

    /// Appends facts of this device in the order given, and returns them as entries. Numbers and
    /// stamps are settled inside the transaction, so that two tabs cannot collide: given out from the head
    /// it reads, or made before and stored only if the head they build on is the one it reads.
    async fn append(&self, drafts: &[Draft<F>]) -> Result<Vec<Entry<F>>, StorageFault>;

    /// Packs the tail together with `added` entries of other devices into segments, and saves the
    /// checkpoint, which must be the fold over all of it.
    ///
    /// # Errors
    /// [`StorageFault::Stale`] when what is stored is no longer `expected`; nothing is changed.
    async fn compact(
        &self,
        expected: &Head,
        added: &[Entry<F>],
        clock: HybridClock,
        checkpoint: &Checkpoint,
    ) -> Result<Head, StorageFault>;

    /// Every entry stored, each once, in any order.
    async fn read_all(&self) -> Result<Vec<Entry<F>>, StorageFault>;

    /// Forgets everything, the device's identity and photos kept beside it too.
    async fn erase(&self) -> Result<(), StorageFault>;
}

/// Gives drafts their numbers and stamps, and moves the head past them. Shared by the backends.
pub fn assign_sequence<F: Clone>(head: &mut Head, device: DeviceId, drafts: &[Draft<F>]) -> Vec<Entry<F>> {
    let mut seq = head.coverage.next_seq(device);
    let mut entries = Vec::with_capacity(drafts.len());
    for draft in drafts {
        let stamp = head.clock.stamp(draft.at);
        head.coverage.add(device, seq);
        entries.push(Entry { device, seq, stamp, subject: draft.subject, fact: draft.fact.clone() });
        seq += 1;
    }
    entries
}

#[cfg(test)]
mod tests {
    use super::*;
    use uuid::Uuid;

    /// These bytes are on people's phones.
    #[test]
    fn the_bytes_of_a_head_of_version_1_are_frozen() {
        let mut head = Head::default();
        head.coverage.add(Uuid::from_u128(7), 1);
        head.coverage.add(Uuid::from_u128(7), 2);
        head.clock.stamp(300);
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
