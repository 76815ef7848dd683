//! The settings of the ink scale.

use crate::components::Page;
use crate::forms::{Field, FormSubmit, Kind, SaveBar, bound};
use crate::i18n;
use crate::route::{InkRoute, Route};
use crate::store::Store;
use lastpull_core::facts::Fact;
use lastpull_core::ids::SHOP;
use lastpull_core::ink::ScaleForm;
use lastpull_core::units::Grams;
use leptos::prelude::*;

const STOCK: Route = Route::Ink(InkRoute::Stock);

/// The form.
#[component]
pub fn ScaleSettingsPage() -> impl IntoView {
    let store = Store::from_context();
    let form = RwSignal::new(store.shop.with_untracked(|shop| ScaleForm::of(&shop.ink.scale)));
    let submit = FormSubmit::new(Box::new(move || {
        let fact = form.with(ScaleForm::check)?;
        Ok(vec![(SHOP, Fact::Ink(fact))])
    }))
    .with_draft(form);
    let problems = submit.problems;
    view! {
        <Page title=Signal::derive(|| i18n::ink_scale().to_owned()) up=STOCK class="form">
            <form on:submit=move |event| submit.submit(store, &event, STOCK) novalidate=true>
                {submit.draft_line()}
                <Field label=i18n::ink_scale_step() kind=Kind::Decimal unit="g" bound=bound!(form.step) problems hint=i18n::ink_scale_step_hint(i18n::grams(Grams::from_grams(0.1)))/>
                <Field label=i18n::ink_scale_most() kind=Kind::Decimal unit="g" bound=bound!(form.most) problems hint=i18n::ink_scale_most_hint()/>
                <SaveBar problems busy=submit.busy/>
            </form>
        </Page>
    }
}
