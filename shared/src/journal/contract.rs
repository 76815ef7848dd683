//! The storage contract as tests: plain async functions, instantiated for each backend by
//! [`storage_contract!`](crate::storage_contract). A new backend needs a file and one line with the macro.
//!
//! They assert, and so panic, like any test; nothing else calls them.
#![allow(clippy::missing_panics_doc, clippy::unwrap_used)]

use super::{Checkpoint, Draft, Entry, Head, Journal, JournalFact, Packed, Stamp, Storage, StorageFault};
use crate::ids::SHOP;
use crate::time::WallTime;
use std::collections::BTreeSet;
use uuid::Uuid;

/// A fact of which the contract can make some.
pub trait SampleFact: JournalFact {
    /// A fact that differs by its number.
    fn pull(pieces: i32) -> Self;
}

/// A fact at a Unix time in milliseconds.
pub fn pull<F: SampleFact>(unix_ms: u64) -> Draft<F> {
    Draft { at: WallTime::from_unix_ms(unix_ms), subject: Uuid::from_u128(0xa11), fact: F::pull(1) }
}

fn foreign<F: SampleFact>(seq: u64, unix_ms: u64) -> Entry<F> {
    let stamp = Stamp { wall: WallTime::from_unix_ms(unix_ms), counter: 0 };
    Entry {
        device: Uuid::from_u128(0xf0),
        seq,
        stamp,
        at: stamp.wall,
        subject: Uuid::from_u128(0xa11),
        fact: F::pull(2),
    }
}

async fn journal<F: SampleFact>(storage: &impl Storage<F>) -> Journal<F> {
    Journal::of(storage.read_all().await.unwrap()).unwrap()
}

/// Stands for the fold: every entry in the order of the fold.
fn checkpoint_of<F: SampleFact>(journal: &Journal<F>) -> Checkpoint {
    Checkpoint { bytes: journal.in_order().into_iter().flat_map(super::record::encode).collect() }
}

async fn compact<F: SampleFact>(storage: &impl Storage<F>, added: &[Entry<F>]) -> Head {
    let opened = storage.open().await.unwrap();
    let mut all = journal(storage).await;
    all.absorb(added.to_vec()).unwrap();
    storage.compact(&opened.head, &Packed::of(added), opened.head.clock, &checkpoint_of(&all)).await.unwrap()
}

/// A new store is empty and its device keeps its identity.
pub async fn a_new_store_is_empty_and_keeps_its_device<F: SampleFact, S: Storage<F>>(storage: S) {
    let first = storage.open().await.unwrap();
    let again = storage.open().await.unwrap();
    assert_eq!(first, again);
    assert!(first.tail.is_empty() && first.checkpoint.is_none() && first.head.coverage.is_empty());
    assert_ne!(first.device, Uuid::nil());
}

/// Sequence numbers have no gaps and stamps rise, whatever the wall clock does.
pub async fn appended_facts_are_numbered_and_stamped_in_order<F: SampleFact, S: Storage<F>>(storage: S) {
    let mut entries = storage.append(&[pull(500), pull(400)]).await.unwrap();
    entries.extend(storage.append(&[pull(450)]).await.unwrap());
    assert_eq!(entries.iter().map(|entry| entry.seq).collect::<Vec<_>>(), [1, 2, 3]);
    assert!(entries.windows(2).all(|pair| pair[0].stamp < pair[1].stamp));
    let opened = storage.open().await.unwrap();
    assert!(entries.iter().all(|entry| entry.device == opened.device));
    assert_eq!(opened.head.coverage.len(), 3);
    assert_eq!(Journal::of(opened.tail).unwrap(), Journal::of(entries).unwrap());
}

/// Appending nothing is allowed and changes nothing.
pub async fn appending_nothing_changes_nothing<F: SampleFact, S: Storage<F>>(storage: S) {
    let before = storage.open().await.unwrap();
    assert_eq!(storage.append(&[]).await.unwrap(), []);
    assert_eq!(storage.open().await.unwrap(), before);
}

/// Two handles on one store never assign the same number twice and lose nothing.
pub async fn two_tabs_share_one_number_sequence<F: SampleFact, S: Storage<F> + Clone>(storage: S) {
    let other = storage.clone();
    storage.open().await.unwrap();
    for turn in 0..10 {
        storage.append(&[pull(turn)]).await.unwrap();
        other.append(&[pull(turn), pull(turn)]).await.unwrap();
    }
    let seqs: BTreeSet<u64> = storage.read_all().await.unwrap().iter().map(|entry| entry.seq).collect();
    assert_eq!(seqs, (1..=30).collect());
}

/// After compaction the tail is empty, the checkpoint is the one given, and every entry is still there.
pub async fn compaction_moves_the_tail_and_keeps_every_fact<F: SampleFact, S: Storage<F>>(storage: S) {
    storage.append(&[pull(1), pull(2), pull(3)]).await.unwrap();
    let before = journal(&storage).await;
    compact(&storage, &[]).await;
    let opened = storage.open().await.unwrap();
    assert!(opened.tail.is_empty());
    assert_eq!(opened.checkpoint.unwrap(), checkpoint_of(&before));
    assert_eq!(journal(&storage).await, before);
    assert_eq!(storage.append(&[pull(4)]).await.unwrap()[0].seq, 4);
    assert_eq!(storage.open().await.unwrap().tail.len(), 1);
    assert_eq!(storage.read_all().await.unwrap().len(), 4);
}

/// Entries of other devices are stored, even with gaps in their numbers.
pub async fn entries_of_other_devices_are_stored<F: SampleFact, S: Storage<F>>(storage: S) {
    storage.append(&[pull(10)]).await.unwrap();
    let head = compact(&storage, &[foreign(1, 5), foreign(2, 15), foreign(7, 20)]).await;
    assert_eq!(head.coverage.len(), 4);
    assert_eq!(head.coverage.gaps()[0].len(), 4);
    assert_eq!(storage.open().await.unwrap().head, head);
    assert_eq!(storage.read_all().await.unwrap().len(), 4);
}

/// A caller that has not seen the latest write is refused, and nothing changes.
pub async fn a_stale_compaction_changes_nothing<F: SampleFact, S: Storage<F>>(storage: S) {
    let seen = storage.open().await.unwrap().head;
    storage.append(&[pull(1)]).await.unwrap();
    let before = storage.open().await.unwrap();
    let stale = Checkpoint { bytes: vec![0] };
    let result = storage.compact(&seen, &Packed::of(&[foreign(1, 5)]), seen.clock, &stale).await;
    assert_eq!(result, Err(StorageFault::Stale));
    assert_eq!(storage.open().await.unwrap(), before);
    assert_eq!(storage.read_all().await.unwrap().len(), 1);
}

/// Facts unknown to this version are stored and read like any other.
pub async fn unknown_facts_are_kept<F: SampleFact, S: Storage<F>>(storage: S) {
    let fact = F::unknown("later".into(), r#"{"later":[1,2]}"#.into());
    let draft = Draft { at: WallTime::EPOCH, subject: SHOP, fact: fact.clone() };
    storage.append(&[draft]).await.unwrap();
    assert_eq!(storage.open().await.unwrap().tail[0].fact, fact);
    compact(&storage, &[]).await;
    assert_eq!(storage.read_all().await.unwrap()[0].fact, fact);
}

/// Entries that have a number already are stored once, whatever stamp they have, and numbers go on as before.
pub async fn adopted_entries_are_stored_once<F: SampleFact, S: Storage<F>>(storage: S) {
    storage.append(&[pull(10)]).await.unwrap();
    let arriving = [foreign(1, 5), foreign(2, 400)];
    storage.adopt(&arriving).await.unwrap();
    storage.adopt(&arriving).await.unwrap();
    assert_eq!(storage.open().await.unwrap().head.coverage.len(), 3);
    assert_eq!(storage.read_all().await.unwrap().len(), 3);
    let next = storage.append(&[pull(20)]).await.unwrap();
    assert_eq!(next[0].seq, 2);
    assert!(next[0].stamp > arriving[1].stamp);
    compact(&storage, &[]).await;
    storage.adopt(&arriving).await.unwrap();
    assert_eq!(storage.read_all().await.unwrap().len(), 4, "those in segments are known too");
}

/// An entry whose number another entry has meanwhile is stored under the device's next number.
pub async fn an_adopted_entry_whose_number_is_taken_gets_another<F: SampleFact, S: Storage<F>>(storage: S) {
    let first = storage.append(&[pull(10)]).await.unwrap().remove(0);
    let mut exported = Entry { seq: 2, stamp: Stamp { counter: 9, ..first.stamp }, ..first.clone() };
    storage.append(&[pull(20)]).await.unwrap();
    let stored = storage.adopt(&[first.clone(), exported.clone()]).await.unwrap();
    assert_eq!((&stored[0], stored[1].seq, stored[1].at), (&first, 3, exported.at));
    assert_eq!(storage.read_all().await.unwrap().len(), 3);
    exported.seq = 4;
    assert_eq!(storage.adopt(&[exported.clone()]).await.unwrap(), [exported]);
    assert_eq!(storage.append(&[pull(30)]).await.unwrap()[0].seq, 5);
}

/// Entries that are taken out leave nothing, and can come in again.
pub async fn withdrawn_entries_leave_nothing<F: SampleFact, S: Storage<F>>(storage: S) {
    storage.append(&[pull(10)]).await.unwrap();
    let stale = storage.open().await.unwrap().head;
    compact(&storage, &[foreign(1, 5), foreign(2, 15)]).await;
    storage.append(&[pull(30)]).await.unwrap();
    let head = storage.open().await.unwrap().head;
    let all = storage.read_all().await.unwrap();
    let remaining: Vec<Entry<F>> = all.into_iter().filter(|entry| entry.device != foreign::<F>(1, 5).device).collect();
    let checkpoint = checkpoint_of(&Journal::of(remaining.clone()).unwrap());
    let packed = Packed::of(&remaining);
    assert_eq!(storage.withdraw(&stale, &packed, &checkpoint).await, Err(StorageFault::Stale));
    assert_eq!(storage.read_all().await.unwrap().len(), 4);
    storage.withdraw(&head, &packed, &checkpoint).await.unwrap();
    let opened = storage.open().await.unwrap();
    assert_eq!((opened.head.coverage.len(), opened.tail.len()), (2, 0));
    assert_eq!(opened.checkpoint, Some(checkpoint));
    assert_eq!(journal(&storage).await, Journal::of(remaining).unwrap());
    compact(&storage, &[foreign(1, 5)]).await;
    assert_eq!(storage.read_all().await.unwrap().len(), 3);
    assert_eq!(storage.append(&[pull(40)]).await.unwrap()[0].seq, 3);
}

/// The stored values add up to the stored entries.
pub async fn raw_values_decode_to_every_fact<F: SampleFact, S: Storage<F>>(storage: S) {
    assert!(storage.read_raw().await.salvage::<F>().is_whole());
    storage.append(&[pull(1), pull(2)]).await.unwrap();
    compact(&storage, &[foreign(1, 5), foreign(4, 9)]).await;
    storage.append(&[pull(3)]).await.unwrap();
    let salvage = storage.read_raw().await.salvage::<F>();
    assert!(salvage.is_whole());
    assert_eq!((salvage.facts_read(), salvage.facts_stored()), (5, Some(5)));
    assert_eq!(Journal::of(salvage.facts.entries().collect()).unwrap(), journal(&storage).await);
}

/// What is read packed is every entry by device and number, and one that comes next to the tail is packed with it.
pub async fn packed_entries_are_by_device_and_number<F: SampleFact, S: Storage<F>>(storage: S) {
    storage.append(&[pull(10), pull(20)]).await.unwrap();
    compact(&storage, &[foreign(3, 5), foreign(4, 6)]).await;
    storage.adopt(&[foreign(5, 15)]).await.unwrap();
    storage.append(&[pull(30)]).await.unwrap();
    compact(&storage, &[foreign(1, 1), foreign(2, 2), foreign(6, 16)]).await;
    storage.append(&[pull(40)]).await.unwrap();
    let packed = storage.read_packed().await.unwrap();
    let read: Vec<Entry<F>> = packed.entries().collect();
    let mut sorted = storage.read_all().await.unwrap();
    sorted.sort_by_key(|entry| (entry.device, entry.seq));
    assert_eq!(read, sorted);
    assert_eq!((read.len(), packed.len()), (10, 10));
    assert_eq!(packed.coverage(), storage.open().await.unwrap().head.coverage);
    let of_others = packed.segments().iter().filter(|segment| segment.device == foreign::<F>(1, 1).device);
    let ranges: Vec<(u64, u64)> = of_others.map(|segment| (segment.first, segment.count)).collect();
    assert_eq!(ranges, [(1, 2), (3, 2), (5, 2)]);
}

/// A new id of the device keeps what is stored, and its facts are numbered from 1.
pub async fn a_renewed_device_keeps_its_facts_and_numbers_from_1<F: SampleFact, S: Storage<F>>(storage: S) {
    let old = storage.open().await.unwrap().device;
    storage.append(&[pull(1), pull(2)]).await.unwrap();
    let new = storage.renew_device(old).await.unwrap();
    assert_ne!(new, old);
    assert_eq!(storage.open().await.unwrap().device, new);
    let entry = storage.append(&[pull(3)]).await.unwrap().remove(0);
    assert_eq!((entry.device, entry.seq), (new, 1));
    let held: Vec<_> = storage.read_all().await.unwrap().iter().map(|entry| (entry.device, entry.seq)).collect();
    assert_eq!(held.iter().filter(|(device, _)| *device == old).count(), 2);
    assert_eq!((held.len(), storage.open().await.unwrap().head.coverage.len()), (3, 3));
}

/// Two tabs that learn of a fork at the same time give the device one new id.
pub async fn two_tabs_renew_a_device_once<F: SampleFact, S: Storage<F> + Clone>(storage: S) {
    let other = storage.clone();
    let old = storage.open().await.unwrap().device;
    let new = storage.renew_device(old).await.unwrap();
    assert_eq!(other.renew_device(old).await.unwrap(), new);
    let seqs = [storage.append(&[pull(1)]).await.unwrap(), other.append(&[pull(2)]).await.unwrap()].concat();
    assert_eq!(seqs.iter().map(|entry| (entry.device, entry.seq)).collect::<Vec<_>>(), [(new, 1), (new, 2)]);
}

/// The wall time of an entry is that of its draft, though the stamp never runs back.
pub async fn the_wall_time_is_stored_beside_the_stamp<F: SampleFact, S: Storage<F>>(storage: S) {
    let entries = storage.append(&[pull(5_000), pull(4_000)]).await.unwrap();
    assert_eq!(entries.iter().map(|entry| entry.at.unix_ms()).collect::<Vec<_>>(), [5_000, 4_000]);
    assert_eq!(storage.open().await.unwrap().tail, entries);
    compact(&storage, &[]).await;
    assert_eq!(storage.read_all().await.unwrap(), entries);
}

/// Erasing removes the facts and the device's identity.
pub async fn erasing_leaves_nothing<F: SampleFact, S: Storage<F>>(storage: S) {
    storage.append(&[pull(1)]).await.unwrap();
    let device = storage.open().await.unwrap().device;
    storage.erase().await.unwrap();
    let opened = storage.open().await.unwrap();
    assert!(opened.tail.is_empty() && opened.head.coverage.is_empty());
    assert_ne!(opened.device, device);
    assert!(storage.read_all().await.unwrap().is_empty());
}

/// Instantiates the contract for a backend: an expression for a fresh store, and how to run a future.
#[macro_export]
macro_rules! storage_contract {
    // In a browser the test itself is async.
    (in_browser: $fresh:expr) => {
        $crate::storage_contract!(@async $fresh,
            a_new_store_is_empty_and_keeps_its_device
            appended_facts_are_numbered_and_stamped_in_order
            appending_nothing_changes_nothing
            two_tabs_share_one_number_sequence
            compaction_moves_the_tail_and_keeps_every_fact
            entries_of_other_devices_are_stored
            a_stale_compaction_changes_nothing
            unknown_facts_are_kept
            adopted_entries_are_stored_once
            an_adopted_entry_whose_number_is_taken_gets_another
            withdrawn_entries_leave_nothing
            raw_values_decode_to_every_fact
            packed_entries_are_by_device_and_number
            a_renewed_device_keeps_its_facts_and_numbers_from_1
            two_tabs_renew_a_device_once
            the_wall_time_is_stored_beside_the_stamp
            erasing_leaves_nothing
        );
    };
    ($fresh:expr, |$run:ident| $block_on:expr) => {
        $crate::storage_contract!(@each $fresh, |$run| $block_on,
            a_new_store_is_empty_and_keeps_its_device
            appended_facts_are_numbered_and_stamped_in_order
            appending_nothing_changes_nothing
            two_tabs_share_one_number_sequence
            compaction_moves_the_tail_and_keeps_every_fact
            entries_of_other_devices_are_stored
            a_stale_compaction_changes_nothing
            unknown_facts_are_kept
            adopted_entries_are_stored_once
            an_adopted_entry_whose_number_is_taken_gets_another
            withdrawn_entries_leave_nothing
            raw_values_decode_to_every_fact
            packed_entries_are_by_device_and_number
            a_renewed_device_keeps_its_facts_and_numbers_from_1
            two_tabs_renew_a_device_once
            the_wall_time_is_stored_beside_the_stamp
            erasing_leaves_nothing
        );
    };
    (@each $fresh:expr, |$run:ident| $block_on:expr, $($name:ident)+) => {
        $(
            #[test]
            fn $name() {
                let $run = $crate::journal::contract::$name($fresh);
                $block_on;
            }
        )+
    };
    (@async $fresh:expr, $($name:ident)+) => {
        $(
            #[wasm_bindgen_test::wasm_bindgen_test]
            async fn $name() {
                $crate::journal::contract::$name($fresh).await;
            }
        )+
    };
}
