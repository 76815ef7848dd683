//! A modal dialog, as the browser's own `<dialog>`: it traps the keyboard focus, closes on Escape and on the browser's
//! Back, hides the page behind it from screen readers, and gives the focus back to what opened it.

use super::icon::Icon;
use crate::i18n;
use crate::platform::history;
use leptos::html;
use leptos::prelude::*;

/// A modal dialog, open while it is mounted.
#[component]
pub fn Sheet(
    /// Title.
    #[prop(into)]
    title: String,
    /// Called when the user closes it.
    on_close: Callback<()>,
    children: Children,
) -> impl IntoView {
    let dialog = NodeRef::<html::Dialog>::new();
    // A dialog may be open over another one.
    let title_id = format!("sheet-title-{}", close_on_back(on_close));
    let labelled_by = title_id.clone();
    Effect::new(move || {
        if let Some(dialog) = dialog.get() {
            if !dialog.open() {
                let _ = dialog.show_modal();
            }
        }
    });
    // The browser gives the focus back when the dialog is closed, not when it is removed.
    on_cleanup(move || {
        if let Some(dialog) = dialog.try_get_untracked().flatten() {
            dialog.close();
        }
    });
    view! {
        <dialog
            class="sheet"
            node_ref=dialog
            aria-labelledby=labelled_by
            on:cancel=move |event: web_sys::Event| {
                event.prevent_default();
                on_close.run(());
            }
            // Where the browser closes it in spite of that, at the second Escape.
            on:close=move |_| {
                // Not if it was closed to be removed, or has become the next dialog since.
                if dialog.try_get_untracked().flatten().is_some_and(|dialog| !dialog.open()) {
                    on_close.run(());
                }
            }
            on:click=move |event| {
                // A click beside the dialog's content has the dialog element itself as its target.
                if dialog.get().is_some_and(|dialog| event.target() == Some(dialog.into())) {
                    on_close.run(());
                }
            }
        >
            <div class="sheet-body">
                <header class="sheet-head">
                    <h2 id=title_id>{title}</h2>
                    <button type="button" class="icon-button" aria-label=i18n::close() on:click=move |_| on_close.run(())>
                        <Icon name="cross"/>
                    </button>
                </header>
                {children()}
            </div>
        </dialog>
    }
}

/// Makes the browser's Back close a dialog, until the component is unmounted. Call it while the dialog is set up. Returns
/// the dialog's number.
pub fn close_on_back(on_close: Callback<()>) -> u32 {
    let number = history::dialog_opened(move || {
        // `None` if it is being unmounted.
        let _ = on_close.try_run(());
    });
    on_cleanup(move || history::dialog_closed(number));
    number
}
