//! A list row that links to another page.

use super::icon::Icon;
use leptos::prelude::*;

/// A list row that links to another page: icon, title and a secondary text.
#[component]
pub fn MenuRow(
    /// Target of the link, as [`crate::route::Route::hash`] writes it.
    #[prop(into)]
    href: String,
    /// Icon name.
    icon: &'static str,
    /// Title.
    #[prop(into)]
    title: String,
    /// Secondary text.
    #[prop(into)]
    text: String,
    /// Element id, unique on the page.
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
