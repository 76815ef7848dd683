//! What an empty list says: what belongs here and what to do.

use super::icon::Icon;
use super::page::Page;
use crate::i18n;
use crate::route::Route;
use leptos::prelude::*;

/// An empty list.
#[component]
pub fn Empty(
    /// A picture.
    icon: &'static str,
    /// What is not here.
    #[prop(into)]
    title: String,
    /// What to do about it.
    #[prop(into)]
    text: String,
    /// The button that does it.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    view! {
        <div class="empty">
            <Icon name=icon/>
            <h2>{title}</h2>
            <p>{text}</p>
            {children.map(|children| children())}
        </div>
    }
}

/// A page about something that is not here.
#[component]
pub fn NotHere() -> impl IntoView {
    view! {
        <Page title=i18n::not_here_title().to_owned() class="not-here">
            <Empty icon="box" title=i18n::not_here_title() text=i18n::not_here_text()>
                <a class="button" href=Route::Day.hash()>{i18n::to_day()}</a>
            </Empty>
        </Page>
    }
}
