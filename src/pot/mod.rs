//! One pot of ink: weighed in, corrected until it matches, labelled, used.

mod add;
mod chosen;
mod edit;
mod event;
mod happened;
mod holding;
mod keypad;
mod label;
mod ledger;
mod moved;
mod new;
mod now;
mod over_pour;
mod place;
mod print;
mod remark;
mod saved;
mod suggestion;
mod taken;
mod top_up;
mod weigh_in;

pub use chosen::note_match;
pub use place::PotPlace;

use leptos::prelude::*;

/// Draws one of these screens.
pub fn screen(place: PotPlace) -> AnyView {
    match place {
        PotPlace::New => view! { <new::NewPotScreen of=None run=None/> }.into_any(),
        PotPlace::NewOf(revision) => view! { <new::NewPotScreen of=revision run=None/> }.into_any(),
        PotPlace::NewFor(run) => view! { <new::NewPotScreen of=None run=run/> }.into_any(),
        PotPlace::Pot(pot) => view! { <holding::PotScreen id=pot/> }.into_any(),
        PotPlace::Add(pot) => view! { <add::AddScreen id=pot/> }.into_any(),
        PotPlace::Event(pot, event) => view! { <event::EventScreen pot event/> }.into_any(),
        PotPlace::Edit(pot) => view! { <edit::EditScreen id=pot/> }.into_any(),
        PotPlace::Label(pot) => view! { <label::LabelScreen id=pot/> }.into_any(),
        PotPlace::Print(run) => view! { <print::PrintScreen run/> }.into_any(),
    }
}
