//! Recording facts about pots, with undo.

use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{InkFact, reading_now};
use leptos::prelude::*;

/// Records facts, with undo.
pub fn record_and_notify(store: Store, facts: Vec<(Subject, Fact)>, said: impl Into<String>) {
    let undo = facts.iter().rev().map(|(subject, _)| (*subject, Fact::Deleted)).collect();
    store.record_all(facts);
    store.notify_with_undo(said, undo);
}

/// Records that a pot matches, with its reading.
pub fn record_match(store: Store, pot: Subject) {
    let reading = store.shop.with_untracked(|shop| reading_now(shop, pot));
    let matched = InkFact::Matched { pot, reading, by: store.operator() };
    record_and_notify(store, vec![(ids::new_id(), Fact::Ink(matched))], i18n::pot_matched_notice());
}
