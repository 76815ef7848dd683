//! Reading a pot's swatch.

use super::photo_subject::{PhotoOf, keep_picture};
use super::reading::{CompleteReading, Reading};
use super::reading_field::ReadingField;
use crate::components::Sheet;
use crate::forms::FormSubmit;
use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::facts::FactsWithUndo;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{ColourReading, match_view, reading_facts};
use leptos::prelude::*;

/// The dialog.
#[component]
pub fn ReadSheet(pot: Subject, on_close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let reading = RwSignal::new(Reading::default());
    let submit = FormSubmit::new(Box::new(move || reading.with(|reading| reading.check("swatch"))));
    let known = Memo::new(move |_| store.shop.with(|shop| match_view(shop, pot).and_then(|view| view.target)));
    let target: Signal<Option<ColourReading>> = Signal::derive(move || known.get());
    let send = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let Some(CompleteReading { sample, photo }) = submit.validate() else { return };
        let event = ids::new_id();
        let FactsWithUndo { facts, undo } =
            store.shop.with_untracked(|shop| reading_facts(shop, pot, event, sample, store.operator().as_deref()));
        let noted = move || {
            store.notify_with_undo(i18n::reading_noted(), undo);
            keep_picture(store, event, photo);
            on_close.run(());
        };
        submit.save(store, facts, Box::new(noted));
    };
    let waits = Signal::derive(move || submit.busy.get() || reading.with(|reading| reading.colour().is_none()));
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
