//! Choosing the screens to put into the bath.

use crate::components::{Checkboxes, Icon, Sheet};
use crate::forms::{Field, Kind, bound, submit_dialog};
use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{BatchInForm, ScreenFilter, ScreenState, StencilFact, put_in, screen_board};
use leptos::prelude::*;

/// The dialog: the waiting screens to choose from, or a number.
#[component]
pub fn PutIn(close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    // One id per dialog, so that pressing twice creates one record.
    let batch = ids::new_id();
    let form = RwSignal::new(BatchInForm::default());
    let problems = RwSignal::new(Problems::new());
    let (waiting, capacity) = store.shop.with_untracked(|shop| {
        let filter = ScreenFilter { state: Some(ScreenState::ToReclaim), ..ScreenFilter::default() };
        let board = screen_board(shop, &filter, store.clock.get_untracked().now);
        let rows = board.groups.into_iter().flat_map(|group| group.rows);
        let option = |row: lastpull_core::screen::ScreenRow| {
            let mesh = row.mesh.map(|sheet| i18n::cloth_short(&sheet.cloth())).unwrap_or_default();
            (row.id, row.label, mesh)
        };
        (rows.map(option).collect::<Vec<_>>(), shop.exposure_log.bath.capacity)
    });
    let ticked = Signal::derive(move || form.with(|form| form.screens.clone()));
    let tick = Callback::new(move |(id, on): (Subject, bool)| {
        form.update(|form| {
            form.screens.retain(|other| *other != id);
            if on {
                form.screens.push(id);
            }
        });
    });
    let over = Memo::new(move |_| {
        let count = form.with(BatchInForm::check).ok().and_then(|fact| screens_put_in(&fact));
        count.zip(capacity).and_then(|(count, most)| (count > most).then_some(most))
    });
    let check = move || {
        store
            .shop
            .with_untracked(|shop| form.with_untracked(|form| put_in(shop, batch, form, store.operator().as_deref())))
    };
    let send = submit_dialog(problems, check, move |step| {
        let count = step.facts.iter().find_map(|(_, fact)| {
            if let Fact::Stencil(fact) = fact { screens_put_in(fact).map(u32::from) } else { None }
        });
        close.run(());
        store.record_with_undo(step.facts, step.undo, i18n::bath_put_in_done(count.unwrap_or_default()));
    });
    let none = waiting.is_empty();
    let (label, hint) =
        if none { (i18n::bath_count_plain(), "") } else { (i18n::bath_count(), i18n::bath_count_hint()) };
    view! {
        <Sheet title=i18n::bath_put_in() on_close=close>
            <form novalidate=true on:submit=send>
                {(!none).then(|| view! { <Checkboxes label=i18n::bath_pick() name="into" options=waiting ticked on_tick=tick/> })}
                <Field label kind=Kind::Whole bound=bound!(form.count) problems hint/>
                {move || over.get().map(|most| view! { <p class="quiet-line" id="over-capacity">{i18n::bath_capacity_over(most)}</p> })}
                <p class="caution"><Icon name="alert"/>{i18n::caution_open_tank()}</p>
                <button type="submit" class="button primary huge" id="put-in-now">{i18n::bath_put_in_these()}</button>
            </form>
        </Sheet>
    }
}

/// Number of screens that a fact puts into the bath.
fn screens_put_in(fact: &StencilFact) -> Option<u16> {
    if let StencilFact::BatchIn { count, .. } = fact { Some(*count) } else { None }
}
