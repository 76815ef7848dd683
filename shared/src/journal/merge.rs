//! Taking the entries of other devices into a storage.
//!
//! Both sides are packed and stay so: what is here and what arrives are compared entry by entry where they overlap, and
//! folded as streams. Only if a device was forked, or the file has its entries in another order than the app writes them,
//! is a [`Journal`] made of all entries, which takes fifteen times as much memory.

use super::packed::in_order;
use super::{
    Checkpoint, Coverage, Entry, Fork, Gap, Journal, JournalFact, Opened, Packed, Storage, StorageFault, TooMany,
};
use crate::codec::Encode;
use crate::ids::DeviceId;
use crate::time::{Millis, WallTime};

/// What a merge added.
#[derive(Clone, Debug, Default, PartialEq, Eq, Encode)]
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

/// Makes a checkpoint of entries in the order of the fold.
pub trait Folding<F>: Fn(&mut dyn Iterator<Item = Entry<F>>) -> Checkpoint {}

impl<F, T: Fn(&mut dyn Iterator<Item = Entry<F>>) -> Checkpoint> Folding<F> for T {}

/// Merges entries of other devices, or of this one, into a storage: all of them or none. They are given as they are to be
/// stored ([`Packed::arriving`]). `fold` makes the checkpoint of
/// a journal; `now` is compared with the times of the entries. If the entries show that another device counts under this
/// device's id, this device gets a new one first.
///
/// # Errors
/// [`MergeProblem`]
pub async fn merge<F: JournalFact, S: Storage<F>>(
    storage: &S,
    arriving: &Packed<F>,
    now: WallTime,
    fold: impl Folding<F>,
) -> Result<Merged, MergeProblem> {
    merge_by(storage, arriving, now, fold, true).await
}

/// Whether entries that arrive can be merged with the stored ones as streams: both are by device and number, no device was
/// forked, and under each number that both have, they have the same entry.
pub fn is_plain<F: JournalFact>(arriving: &Packed<F>, stored: &Packed<F>) -> bool {
    stored.is_plain() && arriving.is_plain() && arriving.agrees_with(stored)
}

/// What one try of a merge would store.
struct Addition<F> {
    /// The entries, as they are stored.
    added: Packed<F>,
    /// Number of entries that are here or new, of those that arrive.
    offered: u64,
    forks: Vec<Fork>,
    /// The journal afterwards, if it had to be made.
    journal: Option<Journal<F>>,
    /// Whether another device counts under this device's id.
    counts_elsewhere: bool,
}

async fn merge_by<F: JournalFact, S: Storage<F>>(
    storage: &S,
    arriving: &Packed<F>,
    now: WallTime,
    fold: impl Folding<F>,
    streams: bool,
) -> Result<Merged, MergeProblem> {
    let mut renewed = None;
    for tries in 1.. {
        let opened = storage.open().await?;
        let stored = storage.read_packed().await?;
        let is_complete = stored.len() == opened.head.coverage.len();
        if !is_complete && tries < TRIES {
            // Another tab saved between the two reads: its facts are this device's own.
            continue;
        }
        let plain = streams && is_complete && is_plain(arriving, &stored);
        let mut addition =
            if plain { of_plain(&opened, &stored, arriving)? } else { of_any(&opened, &stored, arriving)? };
        if addition.counts_elsewhere {
            renewed = Some(storage.renew_device(opened.device).await?);
        }
        if addition.journal.as_ref().is_some_and(Journal::has_forks) {
            let mut stored = storage.read_all().await?;
            let added = addition.journal.take().unwrap_or_default().beyond_stored(&stored);
            // A fact that is stored already may have arrived under an id that tells more of it. That is not stored.
            stored.extend_from_slice(&added);
            addition.journal = Some(Journal::stored(stored));
            addition.added = stored_form(added);
        }
        let Addition { added, offered, forks, journal, .. } = addition;
        let (mut clock, mut far_ahead) = (opened.head.clock, 0);
        for entry in added.entries() {
            clock.observe(entry.stamp);
            far_ahead += u64::from(entry.at > now + TRUSTED_AHEAD);
        }
        let new = added.len();
        let merged = |coverage: &Coverage| Merged {
            new,
            added: added.coverage(),
            known: offered.saturating_sub(new),
            gaps: coverage.gaps().iter().map(Gap::len).sum(),
            far_ahead,
            forks: forks.clone(),
            renewed,
        };
        if added.is_empty() {
            return Ok(merged(&opened.head.coverage));
        }
        let checkpoint = match &journal {
            Some(journal) => fold(&mut journal.in_order().into_iter().cloned()),
            None => fold(&mut in_order(&[&stored, &added])),
        };
        drop((stored, journal));
        match storage.compact(&opened.head, &added, clock, &checkpoint).await {
            Ok(head) => return Ok(merged(&head.coverage)),
            Err(StorageFault::Stale) if tries < TRIES => {}
            Err(fault) => return Err(fault.into()),
        }
    }
    Err(StorageFault::Stale.into())
}

/// Of entries that are by device and number, agree with the stored ones and have no forks.
fn of_plain<F: JournalFact>(
    opened: &Opened<F>,
    stored: &Packed<F>,
    arriving: &Packed<F>,
) -> Result<Addition<F>, TooMany> {
    let head = &opened.head.coverage;
    let mut all = stored.coverage();
    all.add_coverage(&arriving.coverage());
    all.check_bounds()?;
    Ok(Addition {
        added: arriving.beyond(head),
        offered: arriving.len(),
        forks: Vec::new(),
        journal: None,
        counts_elsewhere: all.next_seq(opened.device) > head.next_seq(opened.device),
    })
}

/// Of any entries.
fn of_any<F: JournalFact>(
    opened: &Opened<F>,
    stored: &Packed<F>,
    arriving: &Packed<F>,
) -> Result<Addition<F>, TooMany> {
    let head = &opened.head.coverage;
    let mut journal = Journal::stored(stored.entries().collect());
    let absorbed = journal.absorb(arriving.entries().collect())?;
    // With forks it depends on what is stored afterwards.
    let added = if journal.has_forks() { Vec::new() } else { journal.beyond(head) };
    Ok(Addition {
        added: stored_form(added),
        offered: absorbed.new + absorbed.known,
        forks: absorbed.forks,
        counts_elsewhere: counts_elsewhere(opened.device, head, &journal),
        journal: Some(journal),
    })
}

fn stored_form<F: JournalFact>(entries: Vec<Entry<F>>) -> Packed<F> {
    let entries: Vec<Entry<F>> = entries.into_iter().map(Entry::stored_form).collect();
    Packed::sorted(&entries)
}

/// Whether another device counts under this device's id: its id is forked, or there are numbers of its own that it did
/// not give. It was cloned, or set back to an older state.
fn counts_elsewhere<F: JournalFact>(device: DeviceId, head: &Coverage, all: &Journal<F>) -> bool {
    all.is_forked(device) || all.coverage().next_seq(device) > head.next_seq(device)
}

#[cfg(test)]
mod tests;
