//! A row that leads elsewhere.

use super::icon::Icon;
use leptos::prelude::*;

/// A row of a list of ways on: an icon, where it leads, and a word about it.
#[component]
pub fn MenuRow(
    /// The place it leads to, as [`crate::route::Route::hash`] writes it.
    #[prop(into)]
    href: String,
    /// Icon in front.
    icon: &'static str,
    /// Where it leads.
    #[prop(into)]
    title: String,
    /// A word about it.
    #[prop(into)]
    text: String,
    /// An id, unique on the screen.
    #[prop(optional)]
    id: &'static str,
) -> impl IntoView {
    view! {
        <li>
            <a class="menu-row" id=(!id.is_empty()).then_some(id) href=href>
                <Icon name=icon/>
                <span class="row-words"><strong>{title}</strong><span class="muted">{text}</span></span>
                <Icon name="next"/>
            </a>
        </li>
    }
}
