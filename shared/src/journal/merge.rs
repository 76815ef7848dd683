//! Taking the entries of other devices into a storage.

use super::{Checkpoint, Coverage, Entry, Fork, Gap, Journal, JournalFact, Storage, StorageFault, TooMany};
use crate::ids::DeviceId;
use crate::time::{Millis, WallTime};

/// What a merge added.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Merged {
    /// Number of facts that were new here.
    pub new: u64,
    /// Which they are, by the ids that they are stored under.
    pub added: Coverage,
    /// Number of facts that were already here.
    pub known: u64,
    /// Number of facts missing in between.
    pub gaps: u64,
    /// Number of new facts dated further ahead than clocks drift.
    pub far_ahead: u64,
    /// Devices whose id two devices counted on under. Both lines are kept.
    pub forks: Vec<Fork>,
    /// The new id of this device, if another one counted under its old id.
    pub renewed: Option<DeviceId>,
}

/// Why entries were not merged. Nothing was changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MergeProblem {
    /// They are not from a shop.
    TooMany(TooMany),
    /// They could not be stored.
    Storage(StorageFault),
}

impl From<StorageFault> for MergeProblem {
    fn from(fault: StorageFault) -> Self {
        Self::Storage(fault)
    }
}

impl From<TooMany> for MergeProblem {
    fn from(problem: TooMany) -> Self {
        Self::TooMany(problem)
    }
}

/// How far the clocks of two phones may be apart. Phones that set their clock themselves agree within seconds, others
/// within minutes: our own choice.
const TRUSTED_AHEAD: Millis = Millis::from_hours(1);

/// How often the merge is tried while other tabs write.
const TRIES: u32 = 6;

/// Merges entries of other devices, or of this one, into a storage: all of them or none. `fold` makes the checkpoint of
/// a journal; `now` is compared with the times of the entries. If the entries show that another device counts under this
/// device's id, this device gets a new one first.
///
/// # Errors
/// [`MergeProblem`]
pub async fn merge<F: JournalFact, S: Storage<F>>(
    storage: &S,
    arriving: Vec<Entry<F>>,
    now: WallTime,
    fold: impl Fn(&Journal<F>) -> Checkpoint,
) -> Result<Merged, MergeProblem> {
    let mut renewed = None;
    for tries in 1.. {
        let opened = storage.open().await?;
        let stored = storage.read_all().await?;
        if stored.len() as u64 != opened.head.coverage.len() && tries < TRIES {
            // Another tab saved between the two reads: its facts are this device's own.
            continue;
        }
        let mut all = Journal::stored(stored);
        let absorbed = all.absorb(arriving.clone())?;
        if counts_elsewhere(opened.device, &opened.head.coverage, &all) {
            renewed = Some(storage.renew_device(opened.device).await?);
        }
        let added = if all.has_forks() {
            let mut stored = storage.read_all().await?;
            let added = all.beyond_stored(&stored);
            // A fact that is stored already may have arrived under an id that tells more of it. That is not stored.
            stored.extend_from_slice(&added);
            all = Journal::stored(stored);
            added
        } else {
            all.beyond(&opened.head.coverage)
        };
        let added: Vec<Entry<F>> = added.into_iter().map(Entry::stored_form).collect();
        let mut clock = opened.head.clock;
        added.iter().for_each(|entry| clock.observe(entry.stamp));
        let far_ahead = added.iter().filter(|entry| entry.at > now + TRUSTED_AHEAD).count() as u64;
        let new = added.len() as u64;
        let mut brought = Coverage::default();
        brought.add_all(&added);
        let merged = |coverage: &Coverage| Merged {
            new,
            added: brought.clone(),
            known: (absorbed.new + absorbed.known).saturating_sub(new),
            gaps: coverage.gaps().iter().map(Gap::len).sum(),
            far_ahead,
            forks: absorbed.forks.clone(),
            renewed,
        };
        if added.is_empty() {
            return Ok(merged(&opened.head.coverage));
        }
        match storage.compact(&opened.head, &added, clock, &fold(&all)).await {
            Ok(head) => return Ok(merged(&head.coverage)),
            Err(StorageFault::Stale) if tries < TRIES => {}
            Err(fault) => return Err(fault.into()),
        }
    }
    Err(StorageFault::Stale.into())
}

/// Whether another device counts under this device's id: its id is forked, or there are numbers of its own that it did
/// not give. It was cloned, or set back to an older state.
fn counts_elsewhere<F: JournalFact>(device: DeviceId, head: &Coverage, all: &Journal<F>) -> bool {
    all.is_forked(device) || all.coverage().next_seq(device) > head.next_seq(device)
}
