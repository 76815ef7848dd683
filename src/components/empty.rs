//! Placeholder for an empty list: what belongs here and how to add it.

use super::icon::Icon;
use super::page::Page;
use crate::i18n;
use crate::route::Route;
use leptos::prelude::*;

/// Placeholder for an empty list.
#[component]
pub fn Empty(
    /// Icon name.
    icon: &'static str,
    /// What is missing.
    #[prop(into)]
    title: String,
    /// What to do about it.
    #[prop(into)]
    text: String,
    /// A button or link that does it.
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

/// A page for something that does not exist or was deleted.
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
