//! How long the dryers took from one temperature to another.

use crate::components::{Choice, Icon, Page};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, bound};
use crate::i18n;
use crate::platform::ids;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::heat::{Settling, SettlingForm, Transition, heater_list, is_possible_time, settling_log};
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// The list of settling times, and the form for one that was not timed with the app.
#[component]
pub fn SettlingTimesPage() -> impl IntoView {
    let store = Store::from_context();
    let log = Memo::new(move |_| {
        store.shop.with(|shop| settling_log(shop).into_iter().map(|(id, one)| (id, *one)).collect::<Vec<_>>())
    });
    view! {
        <Page title=Signal::derive(|| i18n::settlings_title().to_owned()) up=Route::Heat(HeatRoute::Home) class="form">
            <p>{i18n::settlings_text()}</p>
            {move || log.with(|log: &Vec<(Subject, Settling)>| if log.is_empty() {
                view! { <p class="quiet-line">{i18n::settlings_none()}</p> }.into_any()
            } else {
                view! { <ul class="heat-list">{log.iter().map(|(id, one)| line(store, *id, one)).collect::<Vec<_>>()}</ul> }.into_any()
            })}
            <UntimedSettlingForm/>
        </Page>
    }
}

fn line(store: Store, id: Subject, settling: &Settling) -> AnyView {
    let Some(Transition { dryer, from, to }) = settling.transition else { return ().into_any() };
    let name = store.shop.with_untracked(|shop| shop.heat.heater(dryer).map(|unit| unit.name.clone()));
    let way = i18n::settling_way(i18n::temperature(from), i18n::temperature(to));
    let took = match settling.took {
        None => i18n::settling_running().to_owned(),
        Some(took) if took.milliseconds() == 0 => i18n::settling_untimed().to_owned(),
        Some(took) => i18n::duration(took.into()),
    };
    let possible = settling.took.is_none_or(|took| took.milliseconds() == 0) || is_possible_time(settling);
    let label = format!("{}: {way}", i18n::delete());
    let delete = move |_| {
        store.delete_with_undo(id, i18n::settling_deleted());
    };
    view! {
        <li>
            <span>
                <strong>{way}</strong>
                <small class="muted">{name.map(|name| format!("{name} · "))}{i18n::moment(settling.at)}</small>
            </span>
            <span><strong>{took}</strong>{(!possible).then(|| view! { <small class="muted">{i18n::settling_not_counted()}</small> })}</span>
            <button type="button" class="icon-button" aria-label=label on:click=delete><Icon name="bin"/></button>
        </li>
    }
    .into_any()
}

/// The form for a settling time measured without the app. Renders nothing if the shop has no dryer.
#[component]
fn UntimedSettlingForm() -> impl IntoView {
    let store = Store::from_context();
    let dryers: Vec<(Subject, String)> = store.shop.with_untracked(|shop| {
        let dryers = heater_list(shop).into_iter().filter(|(_, unit)| unit.is_dryer());
        dryers.map(|(id, unit)| (id, unit.name.clone())).collect()
    });
    let Some((first, _)) = dryers.first().cloned() else {
        return view! { <a class="button" href=HeatRoute::NewDryer.hash()>{i18n::fix_dryer()}</a> }.into_any();
    };
    let form = RwSignal::new(SettlingForm::default());
    let dryer = RwSignal::new(first);
    let id = RwSignal::new(ids::new_id());
    let submit = FormSubmit::new(Box::new(move || {
        let fact = form.with(|form| form.check(dryer.get(), i18n::units()))?;
        Ok(vec![(id.get_untracked(), Fact::Heat(fact))])
    }))
    .with_draft(form);
    let problems = submit.problems;
    // Once it is recorded, the form is empty again, with a new id.
    let noted = move || {
        id.set(ids::new_id());
        form.set(SettlingForm::default());
    };
    view! {
        <section class="card">
            <h2>{i18n::settling_add()}</h2>
            <form on:submit=move |event| submit.submit_then(store, &event, Box::new(noted)) novalidate=true>
                {submit.draft_line()}
                {(dryers.len() > 1).then(|| view! {
                    <Choice label=i18n::settling_dryer() name="settling-dryer" options=dryers value=dryer on_pick=Callback::new(move |one| dryer.set(one))/>
                })}
                <div class="field-pair">
                    <Field label=i18n::settling_from() kind=Kind::Decimal unit=i18n::unit_temperature() bound=bound!(form.from) problems/>
                    <Field label=i18n::settling_to() kind=Kind::Decimal unit=i18n::unit_temperature() bound=bound!(form.to) problems/>
                </div>
                <Field label=i18n::settling_minutes() kind=Kind::Decimal unit=i18n::unit_minutes() bound=bound!(form.minutes) problems/>
                <SaveBar problems busy=submit.busy/>
            </form>
        </section>
    }.into_any()
}
