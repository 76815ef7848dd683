//! A new pot: how much, in which vessel, for which run.

use super::batch_suggestion::suggestion;
use super::ledger_text::scale_step;
use crate::components::{Choice, Empty, Icon, NotHere, Page, Swatch, Switch};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, bound};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::platform::ids;
use crate::route::{InkRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::RunId;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{ComponentKind, InkFact, NewPot, PotForm, RunForPot, new_pot_for_revision, new_pot_for_run};
use lastpull_core::units::Grams;
use leptos::prelude::*;

/// A new pot of a revision, for a run, or without a recipe.
#[component]
pub fn NewPotPage(#[prop(into)] of: Option<Subject>, #[prop(into)] run: Option<RunId>) -> impl IntoView {
    let store = Store::from_context();
    let found = store.shop.with_untracked(|shop| match (of, run) {
        (Some(revision), _) => new_pot_for_revision(shop, revision),
        (_, Some(run)) => new_pot_for_run(shop, run),
        _ => Some(NewPot::by_eye(shop)),
    });
    let Some(new) = found else { return view! { <NotHere/> }.into_any() };
    if let (None, Some(run)) = (&new.revision, run) {
        return no_recipe(&new, run).into_any();
    }
    let first = run.or(new.runs.first().map(|first| first.need.run));
    let suggested = move |new: &NewPot, run: Option<RunId>| {
        let row = new.runs.iter().find(|row| Some(row.need.run) == run)?;
        row.need.to_mix.filter(|grams| grams.is_positive()).or(row.batch.map(|batch| batch.grams))
    };
    let text = |weight: Option<Grams>| weight.map(|weight| weight.text(i18n::units())).unwrap_or_default();
    let form = RwSignal::new(PotForm {
        name: new.name.clone(),
        size: text(suggested(&new, first)),
        capacity: text(new.vessel.capacity),
        tare: text(new.vessel.tare),
        ..PotForm::default()
    });
    let picked = RwSignal::new(first);
    let id = ids::new_id();
    let revision = new.revision.as_ref().map(|revision| revision.id);
    let submit = FormSubmit::new(Box::new(move || {
        let run = picked.get_untracked();
        let fields =
            store.shop.with_untracked(|shop| form.with(|form| form.check(shop, None, revision, run, i18n::units())))?;
        Ok(vec![(id, Fact::Ink(InkFact::PotSet(fields)))])
    }))
    .with_draft(form);
    let problems = submit.problems;
    let (by_eye, on_top) = (revision.is_none(), new.on_top);
    let step = scale_step(store);
    let new = StoredValue::new(new);
    let pick = Callback::new(move |run: Option<RunId>| {
        // A batch size typed by the user is kept.
        let [was, will] = [picked.get_untracked(), run].map(|run| new.with_value(|new| text(suggested(new, run))));
        form.update(|form| {
            if form.size.trim().is_empty() || form.size == was {
                form.size = will;
            }
        });
        picked.set(run);
    });
    let row = Memo::new(move |_| {
        new.with_value(|new| new.runs.iter().find(|row| Some(row.need.run) == picked.get()).cloned())
    });
    let title = if by_eye {
        i18n::pot_new_by_eye().to_owned()
    } else {
        i18n::pot_new_of(new.with_value(|new| new.ink.clone()))
    };
    let name = move || {
        view! { <Field label=i18n::pot_name() kind=Kind::Words bound=bound!(form.name) problems/> }
    };
    view! {
        <Page title=Signal::derive(move || title.clone()) up=Route::Ink(InkRoute::Home) aside=help(Term::Batch) class="form pot-new">
            {new.with_value(composition)}
            <form on:submit=move |event| submit.submit(store, &event, Route::Pot(PotRoute::Pot(id))) novalidate=true>
                {submit.draft_line()}
                {by_eye.then(name)}
                {new.with_value(|new| run_choice(&new.runs, picked, pick))}
                {move || row.get().map(|row| for_run(&row, step))}
                {(!by_eye).then(|| view! { <Field label=i18n::pot_size() kind=Kind::Decimal unit=i18n::unit_weight() bound=bound!(form.size) problems/> })}
                {on_top.then(|| view! {
                    <Switch id="of-ink" label=i18n::pot_of_ink() hint=i18n::pot_of_ink_hint() value=Signal::derive(move || form.with(|form| form.of_ink)) on_set=Callback::new(move |on| form.update(|form| form.of_ink = on))/>
                })}
                <div class="field-pair">
                    <Field label=i18n::pot_tare() kind=Kind::Decimal unit=i18n::unit_weight() bound=bound!(form.tare) problems hint=i18n::pot_tare_hint() help=help(Term::Tare)/>
                    <Field label=i18n::pot_capacity() kind=Kind::Decimal unit=i18n::unit_weight() bound=bound!(form.capacity) problems hint=i18n::pot_capacity_hint()/>
                </div>
                {(!by_eye).then(name)}
                <SaveBar problems busy=submit.busy words=if by_eye { i18n::save() } else { i18n::pot_start() }/>
            </form>
        </Page>
    }.into_any()
}

/// The message that the run's ink has no recipe.
fn no_recipe(new: &NewPot, run: RunId) -> AnyView {
    let (title, none) = (i18n::pot_new_of(&new.ink), i18n::pot_no_recipe(&new.ink));
    view! {
        <Page title=Signal::derive(move || title.clone()) up=Route::Ink(InkRoute::Home) class="pot-new">
            <Empty icon="ink" title=none.clone() text=i18n::pot_no_recipe_text()>
                <div class="button-row">
                    <a class="button primary" href=Route::Ink(InkRoute::NewRecipeForRun(run)).hash()>{i18n::ink_new_recipe()}</a>
                    <a class="button" href=Route::Pot(PotRoute::New).hash()>{i18n::pot_new_by_eye()}</a>
                </div>
            </Empty>
        </Page>
    }.into_any()
}

/// The revision, its approval, and its components.
fn composition(new: &NewPot) -> AnyView {
    let Some(revision) = &new.revision else { return view! { <p>{i18n::pot_by_eye_text()}</p> }.into_any() };
    let yes = match (&new.approval, &new.approved) {
        (_, Some(other)) => {
            view! { <span class="badge tight"><Icon name="alert"/>{i18n::pot_yes_is_to(i18n::pot_revision(&other.revision))}</span> }
        }
        (Some(yes), None) if yes.client.is_empty() => {
            view! { <span class="badge good"><Icon name="check"/>{i18n::pot_stage_approved()}</span> }
        }
        (Some(yes), None) => {
            view! { <span class="badge good"><Icon name="check"/>{i18n::pot_stage_approved_by(&yes.client)}</span> }
        }
        (None, None) => view! { <span class="badge"><Icon name="info"/>{i18n::pot_no_yes()}</span> },
    };
    let additive = new.parts.iter().any(|part| part.kind == ComponentKind::Additive);
    view! {
        <section class="pot-what">
            <p class="pot-marks"><Swatch colour=new.colour/><strong id="revision">{i18n::pot_revision(revision)}</strong>{yes}</p>
            {new.newer.then(|| view! { <p class="quiet-line">{i18n::pot_newer_there()}</p> })}
            <ul class="pot-percents">
                {new.parts.iter().map(|part| view! { <li><Swatch colour=part.colour/><span>{part.name.clone()}</span><strong>{i18n::pot_percent(part.percent)}</strong></li> }).collect::<Vec<_>>()}
            </ul>
        </section>
        {additive.then(|| view! { <p class="caution"><Icon name="alert"/>{i18n::caution_additive()}</p> })}
    }.into_any()
}

fn run_choice(runs: &[RunForPot], picked: RwSignal<Option<RunId>>, pick: Callback<Option<RunId>>) -> AnyView {
    if runs.is_empty() {
        return ().into_any();
    }
    let mut options: Vec<(Option<RunId>, String)> =
        runs.iter().map(|row| (Some(row.need.run), row.need.title.clone())).collect();
    options.push((None, i18n::pot_no_run().to_owned()));
    view! { <Choice label=i18n::pot_which_run() name="run" options value=picked on_pick=pick/> }.into_any()
}

/// The ink need of a run, or a link to where it is computed.
fn for_run(row: &RunForPot, step: Grams) -> AnyView {
    let run = row.need.run;
    let grams = |grams: Grams| i18n::pot_weight(grams, step);
    let to_print = |words: &'static str| {
        view! { <a class="button with-icon" id="work-out" href=Route::Pot(PotRoute::PrintUse(run)).hash()><Icon name="edit"/>{words}</a> }
    };
    match &row.batch {
        None => view! {
            <section class="card" id="suggested">
                <p>{i18n::pot_not_computed(i18n::pieces(row.need.pieces))}</p>
                {to_print(i18n::work_it_out())}
            </section>
        }.into_any(),
        Some(batch) => view! {
            <section class="card" id="suggested">
                {suggestion(batch, step)}
                {row.need.in_pots.is_positive().then(|| view! { <p>{i18n::pot_in_pots(grams(row.need.in_pots), grams(row.need.to_mix.unwrap_or_default()))}</p> })}
                {row.need.left_over.is_positive().then(|| view! { <p>{i18n::pot_left_over(grams(row.need.left_over))}</p> })}
                {to_print(i18n::pot_what_print_takes())}
            </section>
        }.into_any(),
    }
}
