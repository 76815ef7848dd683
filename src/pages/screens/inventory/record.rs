//! Recording facts about screens, with undo.

use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::Subject;
use lastpull_core::screen::undo_facts;
use leptos::prelude::*;

/// Records facts about screens and shows a notice with undo.
pub fn record_screens(store: Store, facts: Vec<(Subject, Fact)>, text: String) {
    let undo = store.shop.with_untracked(|shop| undo_facts(shop, &facts));
    store.record_with_undo(facts, undo, text);
}
