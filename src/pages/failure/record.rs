//! Recording facts of a failure: each answer is recorded as it is given.

use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::failure::FailureForm;
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// Records the fields that `change` changes in the failure's form.
pub fn record_change(store: Store, id: Subject, change: impl FnOnce(&mut FailureForm)) {
    let facts = store.shop.with_untracked(|shop| {
        let mut form = FailureForm::of(shop.failures.live(id)?);
        change(&mut form);
        form.check(shop, id).ok()
    });
    record(store, facts.unwrap_or_default());
}

/// Records facts, if there are any.
pub fn record(store: Store, facts: Vec<(Subject, Fact)>) {
    if !facts.is_empty() {
        store.record_all(facts);
    }
}
