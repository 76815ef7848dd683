//! A sheet that comes up over the screen. The browser's own modal dialog: it holds the keyboard's
//! place, closes on Escape, and hides what is behind from readers.

use super::icon::Icon;
use crate::i18n;
use leptos::html;
use leptos::prelude::*;

/// A sheet, open for as long as it is drawn.
#[component]
pub fn Sheet(
    /// What it asks.
    #[prop(into)]
    title: String,
    /// Called when the person puts it away.
    on_close: Callback<()>,
    children: Children,
) -> impl IntoView {
    let dialog = NodeRef::<html::Dialog>::new();
    Effect::new(move || {
        if let Some(dialog) = dialog.get() {
            if !dialog.open() {
                let _ = dialog.show_modal();
            }
        }
    });
    view! {
        <dialog
            class="sheet"
            node_ref=dialog
            aria-labelledby="sheet-title"
            on:cancel=move |event: web_sys::Event| {
                event.prevent_default();
                on_close.run(());
            }
            on:click=move |event| {
                // A touch beside the sheet lands on the dialog itself.
                if dialog.get().is_some_and(|dialog| event.target() == Some(dialog.into())) {
                    on_close.run(());
                }
            }
        >
            <div class="sheet-body">
                <header class="sheet-head">
                    <h2 id="sheet-title">{title}</h2>
                    <button type="button" class="icon-button" aria-label=i18n::close() on:click=move |_| on_close.run(())>
                        <Icon name="cross"/>
                    </button>
                </header>
                {children()}
            </div>
        </dialog>
    }
}
