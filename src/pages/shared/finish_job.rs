//! Finishing a job, from its own page or after its last run.

use crate::i18n;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::JobId;
use lastpull_core::screen::facts_on_finish;
use leptos::prelude::*;

/// Finishes a job and takes its screens off the press, with undo.
pub fn finish_job(store: Store, id: JobId) {
    let by = store.operator();
    let (mut facts, title) = store.shop.with_untracked(|shop| {
        (facts_on_finish(shop, id, by.as_deref()), shop.job(id).map(|job| job.title.clone()).unwrap_or_default())
    });
    facts.push((id, Fact::JobFinished));
    store.record_with_undo(facts, vec![(id, Fact::JobReopened)], i18n::job_finished_notice(title));
}
