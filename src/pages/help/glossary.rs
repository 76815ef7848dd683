//! The glossary: every term that the app explains.

use super::drawing;
use crate::components::Page;
use crate::i18n::{self, Term};
use crate::platform::{clock, dom, history};
use crate::route::{MoreRoute, Route};
use leptos::prelude::*;
use std::time::Duration;

fn element_id(number: u8) -> String {
    format!("term-{number}")
}

/// The page, from its top or at the term with this number.
#[component]
pub fn GlossaryPage(#[prop(into)] at: Option<u8>) -> impl IntoView {
    // Opened from a "?", it leads back to the page of that.
    let up = at.and_then(|_| Route::before()).unwrap_or(Route::More(MoreRoute::Menu));
    if let Some(place) = at.map(element_id).filter(|_| !history::returned()) {
        // After the page has been scrolled to its top.
        clock::after(Duration::ZERO, || {
            clock::after(Duration::ZERO, move || {
                dom::focus(&place);
                dom::scroll_to(&place);
            });
        });
    }
    let row = |term: Term| {
        view! {
            <li>
                <h2 id=element_id(term.number()) tabindex="-1">{term.name()}</h2>
                <p>{term.text()}</p>
                {drawing::of(term)}
            </li>
        }
    };
    view! {
        <Page title=Signal::derive(|| i18n::glossary_title().to_owned()) up class="glossary">
            <ul class="glossary-terms">{Term::all().into_iter().map(row).collect_view()}</ul>
        </Page>
    }
}
