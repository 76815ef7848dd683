//! How far a worker is with a long piece of work, and the way to end it.

use crate::i18n;
use crate::store::{Progress, Step, Store};
use leptos::prelude::*;

/// Shown while a worker imports, takes back or exports.
#[component]
pub fn WorkProgress() -> impl IntoView {
    let store = Store::from_context();
    let shown = Memo::new(move |_| store.progress.with(Option::is_some));
    move || {
        shown.get().then(|| {
            let share = move || store.progress.get().map(|progress| progress.share).unwrap_or_default();
            view! {
                <div class="card" id="work">
                    <p id="work-words">{move || store.progress.get().map(words)}</p>
                    <progress aria-labelledby="work-words" max=move || share().of.max(1) value=move || share().done></progress>
                    <p class="quiet-line">{i18n::work_cancel_hint()}</p>
                    <button type="button" class="button" id="cancel-work" on:click=move |_| store.cancel_work()>{i18n::cancel()}</button>
                </div>
            }
        })
    }
}

fn words(Progress { step, share }: Progress) -> String {
    let (done, of) = (i18n::number(share.done as f64, 0), i18n::facts(share.of as u32));
    match step {
        Step::Reading => i18n::work_reading(done, of),
        Step::Folding => i18n::work_folding(done, of),
        Step::Storing => i18n::work_storing(of),
        Step::Writing => i18n::work_writing(done, of),
        Step::Checking => i18n::work_checking(done, of),
    }
}
