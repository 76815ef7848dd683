//! The settings of the reclaim bath.

use crate::components::{Icon, Page};
use crate::forms::{Field, FormSubmit, Kind, SaveBar, TextArea, bound, set};
use crate::i18n;
use crate::route::{ExposureRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::SHOP;
use lastpull_core::screen::{BathForm, DEFAULT_RECHARGE_PERCENT, StencilFact};
use leptos::prelude::*;

/// The form.
#[component]
pub fn BathSettingsPage() -> impl IntoView {
    let store = Store::from_context();
    let form = RwSignal::new(store.shop.with_untracked(|shop| BathForm::of(&shop.exposure_log.bath)));
    let submit = FormSubmit::new(Box::new(move || {
        let fields = store.shop.with_untracked(|shop| form.with(|form| form.check(&shop.exposure_log.bath)))?;
        Ok(set(SHOP, fields, |fields| Fact::Stencil(StencilFact::Bath(fields))))
    }))
    .with_draft(form);
    let problems = submit.problems;
    let saved = move || {
        store.notify(i18n::settings_saved());
        Route::Exposure(ExposureRoute::Bath).replace();
    };
    let own = i18n::number(f64::from(DEFAULT_RECHARGE_PERCENT) / 100.0, 2);
    view! {
        <Page title=Signal::derive(|| i18n::bath_settings().to_owned()) up=Route::Exposure(ExposureRoute::Bath) class="form">
            <form on:submit=move |event| submit.submit_then(store, &event, Box::new(saved)) novalidate=true>
                {submit.draft_line()}
                <Field label=i18n::bath_capacity() kind=Kind::Whole bound=bound!(form.capacity) problems/>
                <Field label=i18n::bath_recharge_at() kind=Kind::Decimal unit=i18n::bath_recharge_at_unit() bound=bound!(form.recharge_at) problems hint=i18n::bath_recharge_at_hint(own)/>
                <TextArea label=i18n::bath_note() bound=bound!(form.note) problems/>
                <p class="caution"><Icon name="alert"/>{i18n::bath_caution()}</p>
                <SaveBar problems busy=submit.busy/>
            </form>
        </Page>
    }
}
