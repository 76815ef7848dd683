//! Notices of what was just done, with undo.

use crate::components::Icon;
use crate::i18n;
use crate::platform::dom;
use crate::store::{Message, Store, StoreEvent};
use leptos::prelude::*;

/// The notice of the last action, above every page.
#[component]
pub fn Notices() -> impl IntoView {
    let store = Store::from_context();
    let undo = move |_| {
        store.undo_notice();
        dom::keep_focus();
    };
    view! {
        <div class="notices" role="status" aria-live="polite">
            {move || store.notice.get().map(|notice| {
                let can_undo = !notice.undo.is_empty();
                view! {
                    <div class="notice">
                        <span>{text_of(notice.message)}</span>
                        {can_undo.then(|| view! {
                            <button type="button" class="notice-undo" on:click=undo>
                                <Icon name="undo"/>{i18n::undo()}
                            </button>
                        })}
                    </div>
                }
            })}
        </div>
    }
}

fn text_of(message: Message) -> String {
    match message {
        Message::Text(text) => text,
        Message::Event(StoreEvent::ChunkNotLoaded) => i18n::chunk_failed_text().into(),
        Message::Event(StoreEvent::OutOfBounds) => i18n::not_written().into(),
        Message::Event(StoreEvent::TooLong) => i18n::too_long_to_keep().into(),
        Message::Event(StoreEvent::NotReadAgain) => i18n::not_read_again().into(),
    }
}
