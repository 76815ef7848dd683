//! Notices of what was just done, with undo.

use crate::components::Icon;
use crate::i18n;
use crate::store::Store;
use leptos::prelude::*;

/// The notice of the last action, above every page.
#[component]
pub fn Notices() -> impl IntoView {
    let store = Store::from_context();
    view! {
        <div class="notices" role="status" aria-live="polite">
            {move || store.notice.get().map(|notice| {
                let can_undo = !notice.undo.is_empty();
                view! {
                    <div class="notice">
                        <span>{notice.text}</span>
                        {can_undo.then(|| view! {
                            <button type="button" class="notice-undo" on:click=move |_| store.undo_notice()>
                                <Icon name="undo"/>{i18n::undo()}
                            </button>
                        })}
                    </div>
                }
            })}
        </div>
    }
}
