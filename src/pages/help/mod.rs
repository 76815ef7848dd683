//! What the terms mean: a "?" beside a term, and the glossary.

mod drawing;
mod glossary;

pub use glossary::GlossaryPage;

use crate::components::HelpButton;
use crate::i18n::{self, Term};
use crate::route::MoreRoute;
use leptos::prelude::*;

/// A "?" button beside a term.
#[component]
pub fn Help(term: Term) -> impl IntoView {
    view! {
        <HelpButton
            label=term.question()
            title=term.name()
            text=term.text()
            drawing=move || drawing::of(term)
            href=MoreRoute::GlossaryTerm(term.number()).hash()
            link=i18n::help_all_terms()
        />
    }
}

/// The same, for what takes a view to draw.
pub fn help(term: Term) -> ViewFn {
    (move || view! { <Help term/> }).into()
}
