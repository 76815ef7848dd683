//! One pot of ink: weighed in, adjusted until it matches, labelled, used.

mod actions;
mod add;
mod approve;
mod batch_suggestion;
mod consume;
mod edit;
mod event;
mod event_note;
mod label;
mod ledger;
mod ledger_text;
mod new_pot;
mod over_pour;
mod page;
mod print_use;
mod top_up;
mod transfer;
mod weigh_in;
mod weigh_step;

use crate::route::PotRoute;
use leptos::prelude::*;

/// Draws the page of a route.
pub fn page(route: PotRoute) -> AnyView {
    match route {
        PotRoute::New => view! { <new_pot::NewPotPage of=None run=None/> }.into_any(),
        PotRoute::NewFromRevision(revision) => view! { <new_pot::NewPotPage of=revision run=None/> }.into_any(),
        PotRoute::NewForRun(run) => view! { <new_pot::NewPotPage of=None run=run/> }.into_any(),
        PotRoute::Pot(pot) => view! { <page::PotPage id=pot/> }.into_any(),
        PotRoute::Add(pot) => view! { <add::AddToPotPage id=pot/> }.into_any(),
        PotRoute::Event(pot, event) => view! { <event::PotEventPage pot event/> }.into_any(),
        PotRoute::Edit(pot) => view! { <edit::EditPotPage id=pot/> }.into_any(),
        PotRoute::Label(pot) => view! { <label::LabelPage id=pot/> }.into_any(),
        PotRoute::PrintUse(run) => view! { <print_use::PrintUsePage run/> }.into_any(),
    }
}
