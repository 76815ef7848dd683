//! Settings of the shop, recorded as facts and so the same on every device.

use crate::forms::{Bound, Field, FormSubmit, Kind, SaveBar, bound};
use crate::i18n;
use crate::store::Store;
use lastpull_core::form::Problems;
use lastpull_core::shop::{ShopForm, WEEK_FIELDS};
use leptos::prelude::*;

/// A form with one save button.
#[component]
pub fn ShopSettings() -> impl IntoView {
    let store = Store::from_context();
    let form = RwSignal::new(store.shop.with_untracked(|shop| ShopForm::of(shop, store.device.get_untracked())));
    let submit = FormSubmit::new(Box::new(move || {
        store.shop.with_untracked(|shop| form.with(|form| form.check(shop, store.device.get_untracked())))
    }))
    .with_draft(form);
    let problems = submit.problems;
    let saved = move || store.notify(i18n::settings_saved());
    view! {
        <section class="card">
            <h2>{i18n::settings_shop()}</h2>
            <p class="quiet-line">{i18n::settings_shop_hint()}</p>
            <form on:submit=move |event| submit.submit_then(store, &event, Box::new(saved)) novalidate=true>
                {submit.draft_line()}
                <Field label=i18n::settings_shop_name() kind=Kind::Words bound=bound!(form.name).named("shop_name") problems/>
                <Field label=i18n::settings_device_name() kind=Kind::Words bound=bound!(form.device_name) problems/>
                <Field label=i18n::settings_crew() kind=Kind::Words bound=bound!(form.crew) problems hint=i18n::settings_crew_hint()/>
                <fieldset class="week">
                    <legend>{i18n::settings_closing()}</legend>
                    <p class="quiet-line">{i18n::settings_closing_hint()}</p>
                    <div class="week-days">
                        {(0..7).map(|day| view! { <Weekday day form problems/> }).collect_view()}
                    </div>
                </fieldset>
                <Field label=i18n::settings_set_up() kind=Kind::Decimal unit=i18n::unit_minutes() bound=bound!(form.set_up) problems hint=i18n::settings_set_up_hint()/>
                <SaveBar problems busy=submit.busy/>
            </form>
        </section>
    }
}

#[component]
fn Weekday(day: usize, form: RwSignal<ShopForm>, problems: RwSignal<Problems>) -> impl IntoView {
    let closing = Bound::new(
        WEEK_FIELDS[day],
        form,
        move |form| form.week[day].clone(),
        move |form, typed| form.week[day] = typed,
    );
    view! { <Field label=i18n::weekday(day) kind=Kind::Time bound=closing problems/> }
}
