//! An addition to a pot: what, how much, why, and the resulting composition.

use super::event_note::AdditionRecorded;
use super::ledger_text::scale_step;
use crate::components::{Empty, Icon, Keypad, NotHere, Page, Swatch};
use crate::forms::{Bound, Draft, Field, FormSubmit, Kind, field_name, problem_text};
use crate::i18n;
use crate::platform::{clock, dom, ids, wake_lock};
use crate::route::{InkRoute, PotRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::form::Problems;
use lastpull_core::ids::Subject;
use lastpull_core::ink::{
    AfterAddition, ComponentKind, InkFact, PartRow, PourForm, PourStep, after_addition, components_to_add, last_added,
    pot_state, scale_readings,
};
use lastpull_core::units::Grams;
use leptos::prelude::*;
use std::time::Duration;

/// The page.
#[component]
pub fn AddToPotPage(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let name =
        store.shop.with_untracked(|shop| shop.ink.pot(id).filter(|pot| !pot.deleted).map(|pot| pot.name.clone()));
    let Some(name) = name else { return view! { <NotHere/> }.into_any() };
    wake_lock::stay_awake();
    on_cleanup(wake_lock::let_sleep);
    let step = scale_step(store);
    let rows = Memo::new(move |_| store.shop.with(|shop| components_to_add(shop, id)));
    if rows.with_untracked(Vec::is_empty) {
        return no_components(id).into_any();
    }
    // An addition is mostly more of the last component.
    let likely = store.shop.with_untracked(|shop| last_added(shop, id));
    let (picked, grams, total) = (RwSignal::new(likely), RwSignal::new(String::new()), RwSignal::new(false));
    let added = RwSignal::new(None::<Subject>);
    let note = RwSignal::new(String::new());
    let form = move || PourForm {
        component: picked.get(),
        grams: grams.get(),
        total: total.get(),
        note: note.get(),
        ..PourForm::default()
    };
    let checked = move || {
        let form = form();
        store.shop.with_untracked(|shop| {
            form.check(shop, id, PourStep::Correction, store.operator().as_deref(), i18n::units())
        })
    };
    let after = Memo::new(move |_| {
        let Ok(InkFact::Poured { component, grams, .. }) = checked() else { return None };
        Some((component, grams, store.shop.with(|shop| after_addition(shop, id, &[(component, grams)]))))
    });
    let submit = FormSubmit::new(Box::new(move || Ok(vec![(ids::new_id(), Fact::Ink(checked()?))])));
    // The note only: what the scale showed is worth nothing later.
    let draft = Draft::of_dialog("why").keep(note);
    let problems = submit.problems;
    // What is shown next begins at the top of the page, and so does the keyboard focus.
    let show = move |event: Option<Subject>| {
        added.set(event);
        clock::after(Duration::ZERO, || dom::focus("heading"));
    };
    let send = Callback::new(move |()| {
        let Some(facts) = submit.validate() else { return };
        let event = facts.first().map(|(event, _)| *event);
        store.record_new(facts, i18n::pot_added_notice());
        grams.set(String::new());
        note.set(String::new());
        draft.saved();
        show(event);
    });
    // The addition just recorded, until the user continues or undoes it.
    let just = Memo::new(move |_| {
        added.get().filter(|event| store.shop.with(|shop| shop.ink.event(*event).is_some_and(|row| !row.deleted)))
    });
    let same = Callback::new(move |()| show(None));
    let other = Callback::new(move |()| {
        picked.set(None);
        show(None);
    });
    // Once a component is chosen, the keypad replaces the list.
    let choosing = RwSignal::new(false);
    let pick = Callback::new(move |component: Subject| {
        picked.set(Some(component));
        choosing.set(false);
    });
    let picked_row = Memo::new(move |_| {
        picked.get().and_then(|id| rows.with(|rows| rows.iter().find(|row| row.component == id).cloned()))
    });
    let additive = move || picked_row.with(|row| row.as_ref().is_some_and(|row| row.kind == ComponentKind::Additive));
    let shows = move || store.shop.with(|shop| scale_readings(shop, id)).now;
    let bound = Bound::of(field_name!(PourForm.note), note);
    let title = i18n::pot_add_to(name);
    let entry = move || {
        view! {
            <div class="pot-add-what">
                {move || match picked_row.get().filter(|_| !choosing.get()) {
                    Some(row) => view! {
                        <button type="button" class="pot-picked" id="picked" on:click=move |_| choosing.set(true)>
                            <Swatch colour=row.colour/><strong>{row.name.clone()}</strong><span>{i18n::pot_pick_other()}</span>
                        </button>
                    }.into_any(),
                    None => view! {
                        <fieldset class="choice" id="component">
                            <legend>{i18n::pot_which_component()}</legend>
                            <div class="choice-row">{rows.with(|rows| rows.iter().enumerate().map(|(at, row)| component(at, row, pick)).collect::<Vec<_>>())}</div>
                            {problem(problems, field_name!(PourForm.component))}
                        </fieldset>
                    }.into_any(),
                }}
                <section class="pot-after" id="after" aria-live="polite">
                    {move || match after.get() {
                        None => view! { <p class="muted">{i18n::pot_after_wait()}</p> }.into_any(),
                        Some((component, grams, after)) => preview(store, id, component, grams, &after, step).into_any(),
                    }}
                </section>
            </div>
            <section class="pot-entry">
                <button type="button" class="pot-way" id="way" aria-pressed=move || total.get().to_string() on:click=move |_| total.update(|total| *total = !*total)>
                    {move || if total.get() { i18n::pot_shows_total(i18n::pot_weight(shows(), step)) } else { i18n::pot_goes_in().to_owned() }}
                    <Icon name="repeat"/>
                </button>
                <p class="pot-typed" class:none=move || grams.with(String::is_empty) id="typed" aria-live="polite">
                    <strong>{move || if grams.with(String::is_empty) { "0".to_owned() } else { i18n::with_mark(grams.get()) }}</strong>
                    <span>{i18n::unit_weight()}</span>
                </p>
                {problem(problems, field_name!(PourForm.grams))}
                <Keypad text=grams label=i18n::pot_keypad() enter=i18n::pot_add_it() on_enter=send/>
            </section>
            <section class="pot-why">
                <p class="pot-chips">
                    {move || chips(picked_row.get().map(|row| row.name)).into_iter().map(|chip| {
                        let text = chip.clone();
                        view! { <button type="button" class="button" on:click=move |_| note.set(text.clone())>{chip}</button> }
                    }).collect::<Vec<_>>()}
                </p>
                {draft.line()}
                <Field label=i18n::pot_why() kind=Kind::Words bound problems/>
                <p class="quiet-line">{i18n::pot_photo_after()}</p>
                {move || additive().then(|| view! { <p class="caution"><Icon name="alert"/>{i18n::caution_additive()}</p> })}
            </section>
        }
    };
    view! {
        <Page title=Signal::derive(move || title.clone()) up=Route::Pot(PotRoute::Pot(id)) class="pot-add">
            {move || match just.get() {
                Some(event) => view! { <AdditionRecorded pot=id event same other/> }.into_any(),
                None => entry().into_any(),
            }}
        </Page>
    }
    .into_any()
}

/// Frequent notes for an addition.
fn chips(name: Option<String>) -> Vec<String> {
    let touch = name.map(i18n::pot_touch_more);
    let plain = [i18n::pot_too_light(), i18n::pot_too_dark(), i18n::pot_too_dull(), i18n::pot_too_thick()];
    touch.into_iter().chain(plain.map(str::to_owned)).collect()
}

fn component(at: usize, row: &PartRow, pick: Callback<Subject>) -> AnyView {
    let id = row.component;
    view! {
        <button type="button" class="button pot-component" id=format!("component-{at}") on:click=move |_| pick.run(id)>
            <Swatch colour=row.colour/><span>{row.name.clone()}{(row.percent > 0.0).then(|| view! { <small>{i18n::pot_percent(row.percent)}</small> })}</span>
        </button>
    }.into_any()
}

fn problem(problems: RwSignal<Problems>, field: &'static str) -> AnyView {
    view! {
        <p class="problem" role="alert">{move || problem_text(problems, field)}</p>
    }
    .into_any()
}

/// The composition after the addition, compared with the current one.
fn preview(store: Store, id: Subject, added: Subject, grams: Grams, after: &AfterAddition, step: Grams) -> AnyView {
    let before = store.shop.with(|shop| pot_state(shop, id).contents.percentages());
    let weight = |grams: Grams| i18n::pot_weight(grams, step);
    let was = |component: Subject| before.iter().find(|(id, _)| *id == component).map_or(0.0, |(_, percent)| *percent);
    let name = |component: Subject| {
        after.parts.iter().find(|part| part.component == component).map(|part| part.name.clone()).unwrap_or_default()
    };
    view! {
        <h2>{i18n::pot_then_holds(weight(after.total))}<small>{i18n::pot_more(weight(grams))}</small></h2>
        <ul class="pot-percents">
            {after.parts.iter().map(|part| view! {
                <li class:added=part.component == added>
                    <Swatch colour=part.colour/><span>{part.name.clone()}</span>
                    <small>{i18n::pot_was(i18n::pot_percent(was(part.component)))}</small>
                    <strong>{i18n::pot_percent(part.percent)}</strong>
                </li>
            }).collect::<Vec<_>>()}
        </ul>
        {after.spills.is_positive().then(|| view! { <p class="caution"><Icon name="alert"/>{i18n::pot_will_spill(weight(after.spills))}</p> })}
        {after.lacks.iter().map(|(component, grams)| view! { <p class="caution"><Icon name="alert"/>{i18n::pot_lacks_of(weight(*grams), name(*component))}</p> }).collect::<Vec<_>>()}
        {after.limits.iter().map(|limit| view! { <p class="caution"><Icon name="alert"/>{i18n::pot_limit(limit)}</p> }).collect::<Vec<_>>()}
    }.into_any()
}

fn no_components(id: Subject) -> AnyView {
    let title = i18n::pot_add();
    view! {
        <Page title=Signal::derive(move || title.to_owned()) up=Route::Pot(PotRoute::Pot(id)) class="pot-add">
            <Empty icon="ink" title=i18n::pot_no_components() text=i18n::pot_no_components_text()>
                <a class="button primary" href=Route::Ink(InkRoute::NewComponent).hash()>{i18n::pot_new_component()}</a>
            </Empty>
        </Page>
    }
    .into_any()
}
