//! Opens a failure of the run on the press.

use crate::platform::{ids, spawn_local};
use crate::route::Route;
use crate::store::Store;
use lastpull_core::failure::open_facts;
use lastpull_core::ids::RunId;
use leptos::prelude::*;

/// Records a failure: the press stops at once, and the details are entered afterwards. Nothing while `busy`, which is set
/// until it is saved: a second tap opens no second failure.
pub fn open_failure(store: Store, run: RunId, busy: RwSignal<bool>) {
    if busy.get_untracked() {
        return;
    }
    busy.set(true);
    let (id, by) = (ids::new_id(), store.operator());
    let facts = store.shop.with_untracked(|shop| open_facts(shop, run, id, by.as_deref()));
    spawn_local(async move {
        if store.record_and_wait(facts).await {
            Route::Failure(id).navigate();
        }
        // Not if the page was left meanwhile.
        let _ = busy.try_set(false);
    });
}
