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
use crate::live::Drawn;
use crate::live::view;

/// Draws one of these screens.
pub fn screen(place: PotPlace) -> Drawn {
    match place {
        PotPlace::New => view! { <new::NewPotScreen of=None run=None/> },
        PotPlace::NewOf(revision) => view! { <new::NewPotScreen of=revision run=None/> },
        PotPlace::NewFor(run) => view! { <new::NewPotScreen of=None run=run/> },
        PotPlace::Pot(pot) => view! { <holding::PotScreen id=pot/> },
        PotPlace::Add(pot) => view! { <add::AddScreen id=pot/> },
        PotPlace::Event(pot, event) => view! { <event::EventScreen pot event/> },
        PotPlace::Edit(pot) => view! { <edit::EditScreen id=pot/> },
        PotPlace::Label(pot) => view! { <label::LabelScreen id=pot/> },
        PotPlace::Print(run) => view! { <print::PrintScreen run/> },
    }
}
