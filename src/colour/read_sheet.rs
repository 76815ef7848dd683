//! Reading a pot's swatch.

use super::crew;
use super::{Reading, ReadingField};
use crate::kept::{Memo, RwSignal, Signal};
use crate::live::Drawn;
use crate::parts::Sheet;
use crate::platform::{ids, spawn_local};
use crate::store::Store;
use crate::words;
use lastpull_core::ink::{ColourReading, InkFact, RecipeField, match_view};
use lastpull_core::journal::{Fact, Subject};
use lastpull_view::view;
use leptos::prelude::*;

/// The sheet.
#[component(transparent)]
pub fn ReadSheet(pot: Subject, on_close: Callback<()>) -> Drawn {
    let store = Store::from_context();
    let reading = RwSignal::new(Reading::default());
    let busy = RwSignal::new(false);
    let known = Memo::new(move |_| {
        store.shop.with(|shop| match_view(shop, pot).map(|view| (view.recipe, view.target)).unwrap_or_default())
    });
    let target: Signal<Option<ColourReading>> = Signal::derive(move || known.get().1);
    let send = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let given = reading.get_untracked();
        let Some(value) = given.value.filter(|_| !given.wrong && !busy.get_untracked()) else { return };
        busy.set(true);
        let read = InkFact::SwatchRead { pot, reading: value, note: String::new(), by: crew(store) };
        let event = ids::new_id();
        let mut facts = vec![(event, Fact::Ink(read))];
        // A photo of target and sample without a known target brings both.
        let (recipe, _) = known.get_untracked();
        if let (Some(recipe), Some(target)) = (recipe, given.target) {
            facts.insert(0, (recipe, Fact::Ink(InkFact::RecipeSet(vec![RecipeField::Target(Some(target))]))));
        }
        spawn_local(async move {
            if store.record_and_wait(facts).await {
                store.tell_with_undo(words::reading_noted(), vec![(event, Fact::Deleted)]);
                on_close.run(());
            }
            busy.set(false);
        });
    };
    let waits = Signal::derive(move || busy.get() || reading.with(|reading| reading.value.is_none() || reading.wrong));
    view! {
        <Sheet title=words::colour_read_pot() on_close>
            <form on:submit=send novalidate=true>
                <p>{words::colour_read_after()}</p>
                <ReadingField name="swatch" label=words::colour_read_pot() reading target photo=true/>
                <button type="submit" class="button primary huge" id="reading-save" disabled=waits>{words::save()}</button>
            </form>
        </Sheet>
    }
}
