//! How much to make: a weight, or the pieces of a run.

use crate::components::Choice;
use crate::forms::{Field, Kind, bound, field_name};
use crate::i18n;
use crate::route::{PotRoute, Route};
use crate::store::Store;
use lastpull_core::form::{FormProblem, Problems};
use lastpull_core::ids::{RunId, Subject};
use lastpull_core::ink::{BatchSizeForm, RequestedBatch, batch_targets, best_revision};
use leptos::prelude::*;

/// The size as typed, or its problems.
pub(super) type SizeResult = Result<RequestedBatch, Problems>;

/// Name of the run's field: it is missing while what its print takes is unknown.
const RUN: &str = field_name!(BatchSizeForm.run);

/// The fields.
#[component]
pub fn BatchSizeFields(id: Subject, form: RwSignal<BatchSizeForm>, sized: Memo<SizeResult>) -> impl IntoView {
    let by_pieces = Memo::new(move |_| form.with(|form| form.by_pieces));
    let ways = vec![(false, i18n::ink_by_weight().to_owned()), (true, i18n::ink_by_pieces().to_owned())];
    let pick = Callback::new(move |pieces: bool| form.update(|form| form.by_pieces = pieces));
    // A field that is still empty is no mistake: the button waits for it.
    let problems = Signal::derive(move || {
        let mut found = sized.with(|sized| sized.as_ref().err().cloned().unwrap_or_default());
        found.retain(|field, problem| *field == RUN || *problem != FormProblem::Missing);
        found
    });
    view! {
        <div class="ink-how-much">
            <Choice label=i18n::ink_by() name="by" options=ways value=by_pieces on_pick=pick/>
            {move || if by_pieces.get() {
                view! { <Pieces id form sized problems/> }.into_any()
            } else {
                view! { <Weight id form problems/> }.into_any()
            }}
        </div>
    }
}

#[component]
fn Weight(id: Subject, form: RwSignal<BatchSizeForm>, problems: Signal<Problems>) -> impl IntoView {
    let store = Store::from_context();
    // The two weights are equal unless additives come on top.
    let on_top = store.shop.with_untracked(|shop| {
        let revision = best_revision(shop, id).and_then(|revision| shop.ink.revision(revision));
        revision.is_some_and(|revision| revision.parts.iter().any(|part| part.on_top))
    });
    let means = vec![(false, i18n::ink_size_whole().to_owned()), (true, i18n::ink_size_ink().to_owned())];
    let of_ink = Signal::derive(move || form.with(|form| form.of_ink));
    view! {
        <Field label=i18n::ink_again_grams() kind=Kind::Decimal unit=i18n::unit_weight() bound=bound!(form.grams) problems/>
        {on_top.then(|| view! {
            <Choice label=i18n::ink_size_means() name="of-ink" options=means value=of_ink on_pick=Callback::new(move |of_ink| form.update(|form| form.of_ink = of_ink))/>
        })}
    }
}

#[component]
fn Pieces(
    id: Subject,
    form: RwSignal<BatchSizeForm>,
    sized: Memo<SizeResult>,
    problems: Signal<Problems>,
) -> impl IntoView {
    let store = Store::from_context();
    let runs = Memo::new(move |_| {
        store.shop.with(|shop| {
            batch_targets(shop, id).into_iter().map(|row| (row.run, row.title, row.pieces)).collect::<Vec<_>>()
        })
    });
    let run = Signal::derive(move || form.with(|form| form.run));
    let pick = Callback::new(move |run: Option<RunId>| {
        let pieces = runs.with_untracked(|runs| runs.iter().find(|row| Some(row.0) == run).map(|row| row.2));
        form.update(|form| {
            form.run = run;
            if let Some(pieces) = pieces {
                form.pieces = pieces.to_string();
            }
        });
    });
    view! {
        {move || {
            let rows = runs.get();
            if rows.is_empty() {
                return view! { <p class="quiet-line">{i18n::ink_no_runs()}</p> }.into_any();
            }
            let options = rows.into_iter().map(|(run, title, _)| (Some(run), title)).collect();
            view! { <Choice label=i18n::ink_again_run() name="run" options value=run on_pick=pick/> }.into_any()
        }}
        <Field label=i18n::pieces_how_many() kind=Kind::Whole bound=bound!(form.pieces) problems/>
        {move || {
            let missing = problems.with(|problems| problems.contains_key(RUN));
            let run = form.with(|form| form.run);
            run.filter(|_| missing).map(|run| view! {
                <div class="ink-choose tight">
                    <p>{i18n::ink_no_print()}</p>
                    <a class="button" href=Route::Pot(PotRoute::PrintUse(run)).hash()>{i18n::work_it_out()}</a>
                </div>
            })
        }}
        {move || sized.with(|sized| {
            let batch = sized.as_ref().ok().and_then(|made| made.batch)?;
            let from = batch.experience.map_or_else(|| i18n::ink_by_formula().to_owned(), |learned| i18n::ink_learned_from(learned.weighings));
            let charge = batch.is_charge().then(|| format!(" {}", i18n::ink_screen_decides(i18n::weight(batch.used))));
            Some(view! { <p class="quiet-line" id="batch"><strong>{i18n::weight(batch.grams)}</strong>". "{from}{charge}</p> })
        })}
    }
}
