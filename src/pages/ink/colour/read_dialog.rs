//! Reading a pot's swatch.

use super::photo_subject::{PhotoOf, keep_picture};
use super::reading::Reading;
use super::reading_field::ReadingField;
use crate::components::Sheet;
use crate::i18n;
use crate::platform::{ids, spawn_local};
use crate::store::Store;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{ColourReading, PhotoSample, match_view, reading_facts};
use leptos::prelude::*;

/// The dialog.
#[component]
pub fn ReadSheet(pot: Subject, on_close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let reading = RwSignal::new(Reading::default());
    let busy = RwSignal::new(false);
    let known = Memo::new(move |_| store.shop.with(|shop| match_view(shop, pot).and_then(|view| view.target)));
    let target: Signal<Option<ColourReading>> = Signal::derive(move || known.get());
    let send = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let given = reading.get_untracked();
        let Some(value) = given.colour().filter(|_| !busy.get_untracked()) else { return };
        busy.set(true);
        let read = PhotoSample { sample: value, target: given.target };
        let event = ids::new_id();
        let [facts, undo] =
            store.shop.with_untracked(|shop| reading_facts(shop, pot, event, read, store.operator().as_deref()));
        spawn_local(async move {
            if store.record_and_wait(facts).await {
                store.notify_with_undo(i18n::reading_noted(), undo);
                keep_picture(store, event, given.photo);
                on_close.run(());
            }
            busy.set(false);
        });
    };
    let waits = Signal::derive(move || busy.get() || reading.with(|reading| reading.colour().is_none()));
    view! {
        <Sheet title=i18n::colour_read_pot() on_close>
            <form on:submit=send novalidate=true>
                <p>{i18n::colour_read_after()}</p>
                <ReadingField name="swatch" label=i18n::colour_read_pot() reading known=target photo=PhotoOf::Swatch/>
                <button type="submit" class="button primary huge" id="reading-save" disabled=waits>{i18n::save()}</button>
            </form>
        </Sheet>
    }
}
