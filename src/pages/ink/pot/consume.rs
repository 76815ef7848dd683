//! Ink taken out of a pot: used on a run, or thrown away.

use super::ledger_text::scale_step;
use crate::components::{Choice, Sheet};
use crate::forms::{Draft, Field, Kind, bound, submit_dialog};
use crate::i18n;
use crate::platform::ids;
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::form::Problems;
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{PotRun, RemovalForm, likely_run, runs_for_pot, scale_readings};
use leptos::prelude::*;

/// The dialog: what is left after a run, and how many pieces the rest printed.
#[component]
pub fn RunUseSheet(id: Subject, close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let runs = store.shop.with_untracked(|shop| runs_for_pot(shop, id));
    let first = likely_run(&runs);
    let pieces = |run: Option<RunId>| {
        let good = run.and_then(|run| runs.iter().find(|row| row.run == run)).map_or(0, |row| row.good);
        if good > 0 { good.to_string() } else { String::new() }
    };
    let form = RwSignal::new(RemovalForm { total: true, pieces: pieces(first), ..RemovalForm::default() });
    let run = RwSignal::new(first);
    let problems = RwSignal::new(Problems::new());
    let mut options: Vec<(Option<RunId>, String)> = runs.iter().map(|row| (Some(row.run), run_words(row))).collect();
    options.push((None, i18n::pot_no_run().to_owned()));
    let counts = StoredValue::new(runs.iter().map(|row| (row.run, row.good)).collect::<Vec<_>>());
    let pick = Callback::new(move |picked: Option<RunId>| {
        run.set(picked);
        let good =
            counts.with_value(|counts| counts.iter().find(|(run, _)| Some(*run) == picked).map(|(_, good)| *good));
        form.update(|form| {
            form.pieces = good.filter(|good| *good > 0).map(|good| good.to_string()).unwrap_or_default();
        });
    });
    let check = move || {
        store.shop.with_untracked(|shop| {
            form.with_untracked(|form| {
                form.used(shop, id, run.get_untracked(), store.operator().as_deref(), i18n::units())
            })
        })
    };
    let send = submit_dialog(problems, check, move |fact| {
        close.run(());
        store.record_new(vec![(ids::new_id(), Fact::Ink(fact))], i18n::pot_used_notice());
    });
    view! {
        <Sheet title=i18n::pot_used() on_close=close>
            <form on:submit=send novalidate=true>
                <Choice label=i18n::pot_which_run() name="run" options value=run on_pick=pick/>
                <WeighingMethod form/>
                <Weight id form problems/>
                <Field label=i18n::pot_pieces() kind=Kind::Whole bound=bound!(form.pieces) problems hint=i18n::pot_pieces_hint()/>
                <div class="button-row"><button type="submit" class="button primary" id="used-save">{i18n::save()}</button></div>
            </form>
        </Sheet>
    }
}

/// A run, with its number of pieces that no weighing covers yet.
fn run_words(run: &PotRun) -> String {
    if run.good > 0 { format!("{} · {}", run.title, i18n::pieces(run.good)) } else { run.title.clone() }
}

/// The dialog: how much was thrown away, and why.
#[component]
pub fn WasteSheet(id: Subject, close: Callback<()>) -> impl IntoView {
    let store = Store::from_context();
    let form = RwSignal::new(RemovalForm::default());
    let draft = Draft::of_dialog("waste").keep(form);
    // What the pot weighed then is an old reading; what was thrown away is not.
    if form.with_untracked(|form| form.total && !form.grams.is_empty()) {
        form.update(|form| form.grams.clear());
    }
    let problems = RwSignal::new(Problems::new());
    let check = move || {
        store.shop.with_untracked(|shop| {
            form.with_untracked(|form| form.wasted(shop, id, store.operator().as_deref(), i18n::units()))
        })
    };
    let send = submit_dialog(problems, check, move |fact| {
        draft.saved();
        close.run(());
        store.record_new(vec![(ids::new_id(), Fact::Ink(fact))], i18n::pot_wasted_notice());
    });
    view! {
        <Sheet title=i18n::pot_waste() on_close=close>
            <form on:submit=send novalidate=true>
                {draft.line()}
                <WeighingMethod form/>
                <Weight id form problems/>
                <WholeContentButton id form/>
                <Field label=i18n::pot_why() kind=Kind::Words bound=bound!(form.note) problems/>
                <p class="caution">{i18n::pot_waste_caution()}</p>
                <div class="button-row"><button type="submit" class="button primary" id="waste-save">{i18n::save()}</button></div>
            </form>
        </Sheet>
    }
}

/// Whether the pot is weighed afterwards, or the ink that was taken out.
#[component]
pub fn WeighingMethod(form: RwSignal<RemovalForm>) -> impl IntoView {
    let options = vec![(true, i18n::pot_take_total().to_owned()), (false, i18n::pot_take_own().to_owned())];
    let value = Signal::derive(move || form.with(|form| form.total));
    view! { <Choice label=i18n::pot_take_how() name="way" options value on_pick=Callback::new(move |total| form.update(|form| form.total = total))/> }
}

/// The weight, with the current reading of the scale beside it.
#[component]
pub fn Weight(id: Subject, form: RwSignal<RemovalForm>, problems: RwSignal<Problems>) -> impl IntoView {
    let store = Store::from_context();
    let step = scale_step(store);
    let scale = store.shop.with_untracked(|shop| scale_readings(shop, id));
    let grams = |grams| i18n::pot_weight(grams, step);
    let total = Memo::new(move |_| form.with(|form| form.total));
    let label = move || if total.get() { i18n::pot_weighs() } else { i18n::pot_went_out() };
    let hint = i18n::pot_take_now(grams(scale.now), grams(scale.contents()));
    move || view! { <Field label=label() kind=Kind::Decimal unit=i18n::unit_weight() bound=bound!(form.grams) problems hint=hint.clone()/> }
}

/// A button that enters the pot's whole content.
#[component]
pub fn WholeContentButton(id: Subject, form: RwSignal<RemovalForm>) -> impl IntoView {
    let store = Store::from_context();
    let scale = store.shop.with_untracked(|shop| scale_readings(shop, id));
    let all = scale.contents().text(i18n::units());
    view! {
        <button type="button" class="button" id="all-of-it" on:click=move |_| form.update(|form| {
            form.total = false;
            form.grams.clone_from(&all);
        })>{i18n::pot_all_of_it()}</button>
    }
}
