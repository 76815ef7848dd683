//! The frame of a page: heading, back arrow and content.

use super::icon::Icon;
use crate::i18n;
use crate::platform::dom;
use crate::route::Route;
use leptos::prelude::*;

/// A page with its heading.
#[component]
pub fn Page(
    /// The heading, which is also the window title.
    #[prop(into)]
    title: Signal<String>,
    /// Target of the back arrow; `None` on a page of the navigation bar.
    #[prop(optional)]
    up: Option<Route>,
    /// Buttons beside the heading.
    #[prop(optional, into)]
    aside: ViewFn,
    /// CSS class.
    class: &'static str,
    children: Children,
) -> impl IntoView {
    Effect::new(move || dom::set_title(&format!("{} · {}", title.get(), i18n::app_name())));
    view! {
        <article class=format!("page {class}")>
            <header class="page-head">
                {up.map(|route| view! {
                    <a class="head-back" href=route.hash() on:click=move |event| route.go_up(&event) aria-label=i18n::back()><Icon name="back"/></a>
                })}
                <h1 id="heading" tabindex="-1">{title}</h1>
                <div class="head-aside">{aside.run()}</div>
            </header>
            {children()}
        </article>
    }
}
