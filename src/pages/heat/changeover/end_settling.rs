//! Ends a settling: what is recorded, and what is shown of it.

use crate::i18n;
use crate::store::Store;
use lastpull_core::heat::{ActiveSettling, SettledTime, SettlingDoubt, settled_facts, settled_undo};
use lastpull_core::ids::RunId;
use leptos::prelude::*;

/// The settling that was to end, and why that is doubtful.
pub type Doubted = (ActiveSettling, SettlingDoubt);

/// Ends a settling now and says so, with an undo: a mistaken touch neither teaches the dryer nor checks it.
pub fn end_settling(store: Store, id: RunId, settling: ActiveSettling, time: SettledTime) {
    let by = store.operator();
    let at = store.clock.get_untracked().now;
    let (facts, undo) = store.shop.with_untracked(|shop| {
        let facts = settled_facts(shop, id, settling, at, time, by);
        let undo = settled_undo(shop, &facts);
        (facts, undo)
    });
    let text = match time {
        SettledTime::Counts => i18n::settle_logged(i18n::duration(settling.at(at).elapsed.into())),
        SettledTime::LeftOut => i18n::settle_left_out().to_owned(),
    };
    store.record_with_undo(facts, undo, text);
}
