//! A "?" on a page of the first load. What the terms mean is in a chunk, since it would be most of the first load's
//! texts.

use super::explanation;
use crate::components::HelpButton;
use crate::i18n::{self, Term};
use crate::lazy::{ChunkLoadError, chunk};
use crate::platform::{spawn_local, stylesheet};
use crate::route::{MoreRoute, Route};
use leptos::prelude::*;

/// Draws what a term means, as a dialog.
type Draw = fn(Term, Callback<()>) -> AnyView;

chunk! {
    shop_floor: fn split_explanation() -> Result<Draw, ChunkLoadError> {
        Ok(explanation)
    }
}

/// A "?" button beside a term, on a page of the first load.
#[component]
pub fn LazyHelp(
    term: Term,
    /// The term as it is written there.
    name: &'static str,
) -> impl IntoView {
    let draw = RwSignal::new(None::<Draw>);
    let close = Callback::new(move |()| draw.set(None));
    let open = Callback::new(move |()| {
        spawn_local(async move {
            let style = stylesheet::load_lazy();
            let loaded = split_explanation().await.ok();
            let styled = style.await;
            if let Some(loaded) = loaded.filter(|_| styled) {
                // Not if the page was left meanwhile.
                let _ = draw.try_set(Some(loaded));
            } else {
                // The glossary's page says that it is not there, and tries again.
                Route::More(MoreRoute::GlossaryTerm(term.number())).navigate();
            }
        });
    });
    view! {
        <div class="help">
            <HelpButton label=i18n::help_question(name) on_open=open/>
            {move || draw.get().map(|draw| draw(term, close))}
        </div>
    }
}
