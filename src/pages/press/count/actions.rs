//! What the counting page does to a run.

use crate::pages::shared::open_failure;
use crate::platform::haptics;
use crate::route::Route;
use crate::store::{Store, after_write};
use lastpull_core::facts::Fact;
use lastpull_core::failure::{notice_at_press, resume_facts, undo_verdict_of_misprint};
use lastpull_core::ids::{RunId, Subject};
use lastpull_core::run::{CountView, UndoView};
use lastpull_core::screen::{facts_on_end, should_keep_ready};
use leptos::prelude::*;

/// Ends the run and takes its screens off the press.
pub fn end_run(store: Store, id: RunId) {
    let by = store.operator();
    let mut facts = vec![(id, Fact::RunEnded)];
    facts.extend(store.shop.with_untracked(|shop| facts_on_end(shop, id, should_keep_ready(shop, id), by.as_deref())));
    store.record_all(facts);
}

/// Opens a new failure, or the one for which the press is stopped already.
pub fn failed(store: Store, run: RunId, busy: RwSignal<bool>) {
    if let Some(notice) = standing_failure(store, run) {
        return Route::Failure(notice).navigate();
    }
    open_failure(store, run, busy);
}

/// Restarts the press; after a failure, with the facts that belong to it.
pub fn go_on(store: Store, run: RunId) {
    let by = store.operator();
    let after_failure = standing_failure(store, run)
        .map(|id| store.shop.with_untracked(|shop| resume_facts(shop, id, by.as_deref())))
        .filter(|facts| !facts.is_empty());
    store.record_all(after_failure.unwrap_or_else(|| vec![(run, Fact::Resumed)]));
}

/// The failure for which the press is stopped.
fn standing_failure(store: Store, run: RunId) -> Option<Subject> {
    let notice = store.shop.with_untracked(|shop| notice_at_press(shop, run))?;
    notice.stopped_for.is_none().then_some(notice.id)
}

/// Undoes the last action of this device on the run, saved or not.
pub fn undo(store: Store, id: RunId, count: Memo<CountView>) {
    let fact = match count.with_untracked(|count| count.undo) {
        Some(UndoView::Pulled { pieces, size }) => Fact::Pulled { pieces: -pieces, size },
        Some(UndoView::Misprinted { pieces, size, cause, was_counted }) => {
            Fact::Misprinted { pieces: -pieces, size, cause, was_counted }
        }
        None => return,
    };
    let judgement = store.shop.with_untracked(|shop| undo_verdict_of_misprint(shop, id, &fact));
    store.record_undo([(id, fact)].into_iter().chain(judgement).collect());
    give_feedback(store, 40, None);
}

/// Confirms an accepted touch by vibration and a click sound of this pitch (Hz), if switched on. It comes with the
/// drawing of the count: the write starts first, since starting a vibration takes as long as recording the fact.
pub fn give_feedback(store: Store, milliseconds: u32, pitch: Option<f32>) {
    let (buzz, click) = store.settings.with_untracked(|settings| (settings.buzz, settings.click));
    let pitch = pitch.filter(|_| click);
    if buzz || pitch.is_some() {
        after_write(move || {
            if buzz {
                haptics::buzz(milliseconds);
            }
            if let Some(pitch) = pitch {
                haptics::click(pitch);
            }
        });
    }
}
