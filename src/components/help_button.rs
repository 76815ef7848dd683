//! A "?" button that explains something in place.

use super::sheet::Sheet;
use leptos::html;
use leptos::prelude::*;

/// A "?" button. The sheet that it opens gives the focus back to it.
#[component]
pub fn HelpButton(
    /// What is explained, as a question: the name of the button.
    #[prop(into)]
    label: String,
    /// Title of the explanation.
    #[prop(into)]
    title: String,
    /// The explanation.
    #[prop(into)]
    text: String,
    /// A drawing below it, or nothing.
    #[prop(into)]
    drawing: ViewFn,
    /// Target of the link below, as [`crate::route::Route::hash`] writes it.
    #[prop(into)]
    href: String,
    /// Text of the link.
    #[prop(into)]
    link: String,
) -> impl IntoView {
    let open = RwSignal::new(false);
    let button = NodeRef::<html::Button>::new();
    let close = Callback::new(move |()| open.set(false));
    let show = move |_| {
        // Some browsers give no focus to a button that is tapped, and the sheet gives it back to what had it.
        if let Some(button) = button.get_untracked() {
            let _ = button.focus();
        }
        open.set(true);
    };
    view! {
        <div class="help">
            <button type="button" class="icon-button" node_ref=button aria-label=label aria-haspopup="dialog" on:click=show>
                <span class="help-mark" aria-hidden="true">"?"</span>
            </button>
            {move || open.get().then(|| {
                let drawn = drawing.run();
                let (text, href, link) = (text.clone(), href.clone(), link.clone());
                view! {
                    <Sheet title=title.clone() on_close=close>
                        <p class="help-text">{text}</p>
                        {drawn}
                        <div class="button-row"><a class="button quiet" href=href>{link}</a></div>
                    </Sheet>
                }
            })}
        </div>
    }
}
