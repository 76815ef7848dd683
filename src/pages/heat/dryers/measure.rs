//! Entering the temperature at the print, measured with a probe or a strip.

use super::list::reading_words;
use crate::components::{Choice, Icon, NotHere, Page};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, bound};
use crate::i18n::{self, Term};
use crate::pages::help::help;
use crate::route::{HeatRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::heat::{HeatFact, SensorForm, SensorMethod};
use lastpull_core::ids::Subject;
use leptos::prelude::*;

/// The form of a measurement, and the earlier ones.
#[component]
pub fn MeasureDryerPage(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let unit = Memo::new(move |_| {
        store.shop.with(|shop| shop.heat.heater(id).filter(|unit| unit.known && !unit.deleted).cloned())
    });
    let Some(name) = unit.with_untracked(|unit| unit.as_ref().map(|unit| unit.name.clone())) else {
        return view! { <NotHere/> }.into_any();
    };
    let form = RwSignal::new(SensorForm::default());
    let submit = FormSubmit::new(Box::new(move || {
        form.with(|form| form.check(i18n::units())).map(|fact| vec![(id, Fact::Heat(fact))])
    }))
    .with_draft(form);
    let problems = submit.problems;
    let method = Signal::derive(move || form.with(|form| form.method));
    let methods = [SensorMethod::Probe, SensorMethod::Strip, SensorMethod::Infrared]
        .map(|method| (method, i18n::sensor_method(method).to_owned()));
    let undo = move |_| {
        store.record(id, Fact::Heat(HeatFact::SensorUnread));
        store.notify(i18n::measure_undone());
    };
    let up = Route::Heat(HeatRoute::Dryers);
    view! {
        <Page title=Signal::derive(move || i18n::measure_title(name.clone())) up aside=help(Term::DryerOffset) class="form">
            <p>{i18n::measure_text()}</p>
            <form on:submit=move |event| submit.submit(store, &event, up) novalidate=true>
                {submit.draft_line()}
                <div class="field-pair">
                    <Field label=i18n::measure_setting() kind=Kind::Decimal unit=i18n::unit_temperature() bound=bound!(form.setting) problems/>
                    <Field label=i18n::measure_found() kind=Kind::Decimal unit=i18n::unit_temperature() bound=bound!(form.found) problems/>
                </div>
                <Choice label=i18n::measure_method() name="method" options=methods.to_vec() value=method on_pick=Callback::new(move |method| form.update(|form| form.method = method))/>
                {move || (method.get() == SensorMethod::Infrared).then(|| view! { <p class="caution"><Icon name="info"/>{i18n::method_infrared_hint()}</p> })}
                <p class="caution"><Icon name="heat"/>{i18n::heat_caution()}</p>
                <SaveBar problems busy=submit.busy/>
            </form>
            {move || unit.with(|unit| unit.as_ref().filter(|unit| !unit.readings.is_empty()).map(|unit| view! {
                <section class="heat-log">
                    <h2>{i18n::measured_before()}</h2>
                    <ul class="heat-list">
                        {unit.readings.iter().rev().map(|reading| {
                            let (error, how) = reading_words(reading);
                            view! { <li><span><strong>{error}</strong><small class="muted">{how}</small></span></li> }
                        }).collect::<Vec<_>>()}
                    </ul>
                    <button type="button" class="button" id="measure-undo" on:click=undo>{i18n::measure_undo()}</button>
                </section>
            }))}
        </Page>
    }.into_any()
}
