//! The frame of a screen: its heading, a way back, what it holds.

use super::Icon;
use crate::place::Place;
use crate::{platform::dom, words};
use leptos::prelude::*;

/// A screen with its heading. `up` is the place its back arrow leads to.
#[component]
pub fn Page(
    /// The heading, which is also the title of the window.
    #[prop(into)]
    title: Signal<String>,
    /// Where back leads; none on a place of the bar.
    #[prop(optional)]
    up: Option<Place>,
    /// Buttons beside the heading.
    #[prop(optional, into)]
    aside: ViewFn,
    /// A name for the style sheet.
    class: &'static str,
    children: Children,
) -> impl IntoView {
    Effect::new(move || dom::set_title(&format!("{} · {}", title.get(), words::app_name())));
    view! {
        <article class=format!("page {class}")>
            <header class="page-head">
                {up.map(|place| view! {
                    <a class="head-back" href=place.hash() aria-label=words::back()><Icon name="back"/></a>
                })}
                <h1 id="heading" tabindex="-1">{title}</h1>
                <div class="head-aside">{aside.run()}</div>
            </header>
            {children()}
        </article>
    }
}
