//! Merges that are taken back, of copies of a phone too.

use super::{Phones, checkpoint};
use lastpull_core::facts::Journal;
use lastpull_core::journal::{Coverage, Packed, Storage};
use pollster::block_on;

/// Takes out what a merge stored, as the app does.
fn take_back(phones: &Phones, phone: usize, added: &Coverage) {
    let storage = &phones.phones[phone].storage;
    let head = block_on(storage.open()).unwrap().head;
    let mut remaining = phones.file(phone);
    remaining.retain(|entry| !added.holds(entry.device, entry.seq));
    let folded = checkpoint(&Journal::stored(remaining.clone()));
    block_on(storage.withdraw(&head, &Packed::of(&remaining), &folded)).unwrap();
}

#[test]
fn what_a_copy_of_this_phone_brought_can_be_taken_back_and_brought_again() {
    let mut phones = Phones::new(1);
    (0..3).for_each(|_| phones.count(0));
    let clone = phones.clone_of(0);
    (0..2).for_each(|_| phones.count(0));
    (0..4).for_each(|_| phones.count(clone));
    let own = phones.file(0);
    let merged = phones.hand(clone, 0);
    assert_eq!((merged.new, merged.added.len(), merged.forks.len()), (4, 4, 1));
    // Counted under the new id, meanwhile.
    phones.count(0);
    take_back(&phones, 0, &merged.added);
    let left = phones.file(0);
    assert!(own.iter().all(|entry| left.contains(entry)));
    assert_eq!((left.len(), phones.good(0), phones.opened(0).fact_count()), (6, 6, 6));
    assert!(!Journal::stored(left).has_forks());
    let again = phones.hand(clone, 0);
    assert_eq!((again.new, again.forks.len(), again.renewed), (4, 1, None));
    phones.exchange();
    assert_eq!((phones.good(0), phones.good(clone)), (10, 10));
}

#[test]
fn a_newer_backup_of_this_phone_can_be_taken_back() {
    let mut phones = Phones::new(1);
    (0..3).for_each(|_| phones.count(0));
    let last_week = phones.clone_of(0);
    (0..5).for_each(|_| phones.count(0));
    let merged = phones.hand(0, last_week);
    assert!(merged.renewed.is_some());
    phones.count(last_week);
    take_back(&phones, last_week, &merged.added);
    assert_eq!(phones.good(last_week), 4);
    // Its numbers are not given out again.
    phones.count(last_week);
    assert_eq!(phones.hand(0, last_week).forks, []);
    assert_eq!(phones.good(last_week), 10);
}
