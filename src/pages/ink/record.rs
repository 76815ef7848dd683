//! Recording that a pot matches.

use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{InkFact, reading_now};
use leptos::prelude::*;

/// Records that a pot matches, with its reading.
pub fn record_match(store: Store, pot: Subject) {
    let reading = store.shop.with_untracked(|shop| reading_now(shop, pot));
    let matched = InkFact::Matched { pot, reading, by: store.operator() };
    store.record_new(vec![(ids::new_id(), Fact::Ink(matched))], i18n::pot_matched_notice());
}
