//! A "?" button, and the dialog that explains something.

use super::sheet::Sheet;
use leptos::html;
use leptos::prelude::*;

/// A "?" button. The dialog that it opens, also over another dialog, gives the focus back to it.
#[component]
pub fn HelpButton(
    /// What is explained, as a question: the name of the button.
    #[prop(into)]
    label: String,
    /// Opens the dialog.
    on_open: Callback<()>,
) -> impl IntoView {
    let button = NodeRef::<html::Button>::new();
    let show = move |_| {
        // Some browsers give no focus to a button that is tapped, and the sheet gives it back to what had it.
        if let Some(button) = button.get_untracked() {
            let _ = button.focus();
        }
        on_open.run(());
    };
    view! {
        <button type="button" class="icon-button" node_ref=button aria-label=label aria-haspopup="dialog" on:click=show>
            <span class="help-mark" aria-hidden="true">"?"</span>
        </button>
    }
}

/// An explanation as a dialog.
#[component]
pub fn HelpSheet(
    /// Title.
    #[prop(into)]
    title: String,
    /// The explanation.
    #[prop(into)]
    text: String,
    /// A drawing below it, or nothing.
    drawing: AnyView,
    /// Target of the link below, as [`crate::route::Route::hash`] writes it.
    #[prop(into)]
    href: String,
    /// Text of the link.
    #[prop(into)]
    link: String,
    /// Called when the user closes it.
    on_close: Callback<()>,
) -> impl IntoView {
    view! {
        <Sheet title on_close>
            <p class="help-text">{text}</p>
            {drawing}
            <div class="button-row"><a class="button quiet" href=href>{link}</a></div>
        </Sheet>
    }
}
