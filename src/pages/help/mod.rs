//! What the terms mean: a "?" beside a term, and the glossary.

mod drawing;
mod glossary;
mod lazy;

pub use glossary::GlossaryPage;
pub use lazy::LazyHelp;

use crate::components::{HelpButton, HelpSheet};
use crate::i18n::{self, Term};
use crate::route::MoreRoute;
use leptos::prelude::*;

/// A "?" button beside a term. Not on pages of the first load: there it is [`LazyHelp`].
#[component]
pub fn Help(term: Term) -> impl IntoView {
    let open = RwSignal::new(false);
    let close = Callback::new(move |()| open.set(false));
    view! {
        <div class="help">
            <HelpButton label=term.question() on_open=Callback::new(move |()| open.set(true))/>
            {move || open.get().then(|| explanation(term, close))}
        </div>
    }
}

/// The same, for what takes a view to draw.
pub fn help(term: Term) -> ViewFn {
    (move || view! { <Help term/> }).into()
}

fn explanation(term: Term, on_close: Callback<()>) -> AnyView {
    view! {
        <HelpSheet
            title=term.name()
            text=term.text()
            drawing=drawing::of(term)
            href=MoreRoute::GlossaryTerm(term.number()).hash()
            link=i18n::help_all_terms()
            on_close
        />
    }
    .into_any()
}
