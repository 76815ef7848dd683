//! Taking a batch out of the bath, or recording one that is out already.

use super::contents::labels;
use crate::components::{Checkboxes, Choice, Icon, Sheet};
use crate::forms::{Draft, Field, Kind, bound, field_name, submit_dialog};
use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use lastpull_core::screen::{BatchOutForm, BatchTimeKind, BathView, delete_batch, take_out};
use lastpull_core::time::Millis;
use leptos::prelude::*;

/// The dialog: which of the batch's screens are clean, and how long it took.
#[component]
pub fn TakeOut(batch: Subject, bath: Memo<BathView>, close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let form = RwSignal::new(BatchOutForm::default());
    let draft = Draft::of_dialog(format!("out-{batch}")).keep(form);
    let problems = RwSignal::new(Problems::new());
    let row = bath.with_untracked(|bath| bath.in_bath.iter().find(|row| row.id == batch).cloned());
    let screens = row.as_ref().map(|row| row.screens.clone()).unwrap_or_default();
    let count = row.as_ref().map(|row| row.count).unwrap_or_default();
    let elapsed = Memo::new(move |_| {
        bath.with(|bath| bath.in_bath.iter().find(|row| row.id == batch).map_or(Millis::ZERO, |row| row.elapsed))
    });
    let named = store.shop.with_untracked(|shop| labels(shop, &screens));
    let all_named = usize::from(count) == named.len();
    let options = screens.iter().copied().zip(named).map(|(id, label)| (id, label, String::new())).collect::<Vec<_>>();
    let clean = {
        let screens = screens.clone();
        Signal::derive(move || {
            form.with(|form| screens.iter().copied().filter(|id| !form.not_clean.contains(id)).collect())
        })
    };
    let tick = Callback::new(move |(id, on): (Subject, bool)| {
        form.update(|form| {
            form.not_clean.retain(|other| *other != id);
            if !on {
                form.not_clean.push(id);
            }
        });
    });
    let none_clean =
        move || all_named && problems.with(|problems| problems.contains_key(field_name!(BatchOutForm.count)));
    let forget = move |_| {
        let step = store.shop.with_untracked(|shop| delete_batch(shop, batch, store.operator().as_deref()));
        close.run(());
        store.record_with_undo(step.facts, step.undo, i18n::bath_batch_deleted());
    };
    view! {
        <Sheet title=i18n::bath_out_title() on_close=close>
            <form novalidate=true on:submit=send(store, batch, form, problems, draft, close)>
                {draft.line()}
                {(!options.is_empty()).then(|| view! {
                    <div class="stencil-hinted">
                        <Checkboxes label=i18n::bath_out_clean() name="clean" options ticked=clean on_tick=tick/>
                        <p class="field-help">
                            <span>{i18n::bath_out_clean_hint()}</span>
                            {move || none_clean().then(|| view! { " " <span class="problem" role="alert">{i18n::bath_out_none_clean()}</span> })}
                        </p>
                    </div>
                })}
                {(!all_named).then(|| view! {
                    <Field label=i18n::bath_out_count() kind=Kind::Whole bound=bound!(form.count) problems hint=i18n::bath_out_count_hint(count)/>
                })}
                <Time form problems kinds=&[BatchTimeKind::Elapsed, BatchTimeKind::Whole, BatchTimeKind::EachScreen] elapsed=i18n::duration(elapsed.get_untracked())/>
                <p class="caution"><Icon name="alert"/>{i18n::caution_open_tank()}</p>
                <button type="submit" class="button primary huge" id="out-now">{i18n::bath_out_button()}</button>
            </form>
            <button type="button" class="button quiet with-icon" id="forget" on:click=forget><Icon name="bin"/>{i18n::bath_out_forget()}</button>
        </Sheet>
    }
}

/// The dialog for a batch that was not recorded when it went in: number of screens and minutes.
#[component]
pub fn NoteOut(close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let form = RwSignal::new(BatchOutForm { kind: BatchTimeKind::Whole, ..BatchOutForm::default() });
    let draft = Draft::of_dialog("out").keep(form);
    let problems = RwSignal::new(Problems::new());
    // One id per dialog, so that pressing twice creates one record.
    let batch = ids::new_id();
    view! {
        <Sheet title=i18n::bath_out_title() on_close=close>
            <form novalidate=true on:submit=send(store, batch, form, problems, draft, close)>
                {draft.line()}
                <Field label=i18n::bath_out_count() kind=Kind::Whole bound=bound!(form.count) problems/>
                <Time form problems kinds=&[BatchTimeKind::Whole, BatchTimeKind::EachScreen] elapsed=String::new()/>
                <button type="submit" class="button primary huge" id="out-now">{i18n::bath_out_button()}</button>
            </form>
        </Sheet>
    }
}

/// How long it took: as timed, or as typed.
#[component]
fn Time(
    form: RwSignal<BatchOutForm>,
    problems: RwSignal<Problems>,
    kinds: &'static [BatchTimeKind],
    elapsed: String,
) -> impl IntoView {
    let options = kinds.iter().map(|kind| (*kind, i18n::bath_time_kind(*kind, &elapsed))).collect();
    let kind = Memo::new(move |_| form.with(|form| form.kind));
    view! {
        <Choice label=i18n::bath_out_time() name="time-kind" options value=kind on_pick=Callback::new(move |kind| form.update(|form| form.kind = kind))/>
        {move || (kind.get() != BatchTimeKind::Elapsed).then(|| view! {
            <Field label=i18n::bath_out_minutes() kind=Kind::Decimal unit=i18n::unit_minutes() bound=bound!(form.minutes) problems/>
        })}
    }
}

fn send(
    store: Store,
    batch: Subject,
    form: RwSignal<BatchOutForm>,
    problems: RwSignal<Problems>,
    draft: Draft,
    close: Callback<()>,
) -> impl Fn(leptos::ev::SubmitEvent) + 'static {
    let check = move || {
        let by = store.operator();
        store.shop.with_untracked(|shop| form.with_untracked(|form| take_out(shop, batch, form, by.as_deref())))
    };
    submit_dialog(problems, check, move |step| {
        draft.saved();
        close.run(());
        store.record_with_undo(step.facts, step.undo, i18n::bath_out_done());
    })
}
