//! Entering a delivery or a stock count of a component.

use crate::components::Sheet;
use crate::forms::{Draft, Field, Kind, bound, submit_dialog};
use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{InkFact, StockForm};
use leptos::prelude::*;

/// Which of the two is entered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StockEntry {
    /// A delivery.
    Delivery,
    /// A count: what is left was weighed.
    Count,
}

/// The dialog, while it is open.
#[component]
pub fn StockSheet(id: Subject, ask: RwSignal<Option<StockEntry>>) -> impl IntoView {
    let asked = Memo::new(move |_| ask.get());
    move || asked.get().map(|what| view! { <StockEntrySheet id what ask/> })
}

#[component]
fn StockEntrySheet(id: Subject, what: StockEntry, ask: RwSignal<Option<StockEntry>>) -> impl IntoView {
    let store = Store::from_context();
    let name =
        store.shop.with_untracked(|shop| shop.ink.component(id).map(|found| found.name.clone()).unwrap_or_default());
    let form = RwSignal::new(StockForm::default());
    // A count is a reading of the scale.
    let draft = (what == StockEntry::Delivery).then(|| Draft::of_dialog("delivery").keep(form));
    let problems = RwSignal::new(Problems::new());
    let event = ids::new_id();
    let title = match what {
        StockEntry::Delivery => i18n::ink_came_in_title(&name),
        StockEntry::Count => i18n::ink_count_title(&name),
    };
    let check = move || {
        let (by, units) = (store.operator(), i18n::units());
        form.with(|form| match what {
            StockEntry::Delivery => form.delivered(id, by.as_deref(), units),
            StockEntry::Count => form.counted(id, by.as_deref(), units),
        })
    };
    let send = submit_dialog(problems, check, move |fact| {
        let message = if let InkFact::Delivered { grams, .. } = &fact {
            i18n::ink_delivered_notice(i18n::weight_fine(*grams), &name)
        } else if let InkFact::Counted { grams, .. } = &fact {
            i18n::ink_counted_notice(i18n::weight_fine(*grams), &name)
        } else {
            String::new()
        };
        draft.inspect(|draft| draft.saved());
        store.record_new(vec![(event, Fact::Ink(fact))], message);
        ask.set(None);
    });
    let hint = if what == StockEntry::Count { i18n::ink_count_hint() } else { "" };
    view! {
        <Sheet title on_close=Callback::new(move |()| ask.set(None))>
            <form on:submit=send novalidate=true>
                {draft.map(Draft::line)}
                <Field label=i18n::ink_how_much() kind=Kind::Decimal unit=i18n::unit_weight() bound=bound!(form.grams) problems hint/>
                {(what == StockEntry::Delivery).then(|| view! {
                    <Field label=i18n::ink_lot_note() kind=Kind::Words bound=bound!(form.note) problems/>
                })}
                <button type="submit" class="button primary huge">{i18n::save()}</button>
            </form>
        </Sheet>
    }
}
