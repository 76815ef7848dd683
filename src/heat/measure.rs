//! What reaches the print, measured with a probe or a strip.

use super::HeatPlace;
use super::units::reading_words;
use crate::parts::{Choice, Field, Icon, Kind, NotHere, Page, SaveBar, Sending, bound};
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::heat::{HeatFact, SensorForm, SensorMethod};
use lastpull_core::journal::{Fact, Subject};
use leptos::prelude::*;

/// The form of a measurement, and those before.
#[component]
pub fn MeasureScreen(id: Subject) -> impl IntoView {
    let store = Store::from_context();
    let unit = Memo::new(move |_| {
        store.shop.with(|shop| shop.heat.heater(id).filter(|unit| unit.known && !unit.deleted).cloned())
    });
    let Some(name) = unit.with_untracked(|unit| unit.as_ref().map(|unit| unit.name.clone())) else {
        return view! { <NotHere/> }.into_any();
    };
    let form = RwSignal::new(SensorForm::default());
    let sending = Sending::new(Box::new(move || {
        form.with(|form| form.check(words::units())).map(|fact| vec![(id, Fact::Heat(fact))])
    }));
    let problems = sending.problems;
    let method = Signal::derive(move || form.with(|form| form.method));
    let methods = [SensorMethod::Probe, SensorMethod::Strip, SensorMethod::Infrared]
        .map(|method| (method, words::sensor_method(method).to_owned()));
    let undo = move |_| {
        store.record(id, Fact::Heat(HeatFact::SensorUnread));
        store.tell(words::measure_undone());
    };
    let up = Place::Heat(HeatPlace::Units);
    view! {
        <Page title=Signal::derive(move || words::measure_title(name.clone())) up class="form">
            <p>{words::measure_text()}</p>
            <form on:submit=move |event| sending.send(store, &event, up) novalidate=true>
                <div class="field-pair">
                    <Field name="setting" label=words::measure_setting() kind=Kind::Decimal unit=words::unit_temperature() bound=bound(form, |f| &mut f.setting) problems/>
                    <Field name="found" label=words::measure_found() kind=Kind::Decimal unit=words::unit_temperature() bound=bound(form, |f| &mut f.found) problems/>
                </div>
                <Choice label=words::measure_method() name="method" options=methods.to_vec() value=method on_pick=Callback::new(move |method| form.update(|form| form.method = method))/>
                {move || (method.get() == SensorMethod::Infrared).then(|| view! { <p class="caution"><Icon name="info"/>{words::method_infrared_hint()}</p> })}
                <p class="caution"><Icon name="heat"/>{words::heat_caution()}</p>
                <SaveBar problems busy=sending.busy/>
            </form>
            {move || unit.with(|unit| unit.as_ref().filter(|unit| !unit.readings.is_empty()).map(|unit| view! {
                <section class="heat-log">
                    <h2>{words::measured_before()}</h2>
                    <ul class="heat-list">
                        {unit.readings.iter().rev().map(|reading| {
                            let (error, how) = reading_words(reading);
                            view! { <li><span><strong>{error}</strong><small class="muted">{how}</small></span></li> }
                        }).collect::<Vec<_>>()}
                    </ul>
                    <button type="button" class="button" id="measure-undo" on:click=undo>{words::measure_undo()}</button>
                </section>
            }))}
        </Page>
    }.into_any()
}
