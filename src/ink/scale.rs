//! The scale that ink is weighed on.

use crate::parts::{Field, Kind, Page, SaveBar, Sending, bound};
use crate::place::{InkPlace, Place};
use crate::store::Store;
use crate::words;
use lastpull_core::ink::ScaleForm;
use lastpull_core::journal::Fact;
use leptos::prelude::*;
use uuid::Uuid;

const STOCK: Place = Place::Ink(InkPlace::Stock);

/// Its form.
#[component]
pub fn ScaleScreen() -> impl IntoView {
    let store = Store::from_context();
    let form = RwSignal::new(store.shop.with_untracked(|shop| ScaleForm::of(&shop.ink.scale)));
    let sending = Sending::new(Box::new(move || {
        let fact = form.with(ScaleForm::check)?;
        Ok(vec![(Uuid::nil(), Fact::Ink(fact))])
    }));
    let problems = sending.problems;
    view! {
        <Page title=Signal::derive(|| words::ink_scale().to_owned()) up=STOCK class="form">
            <form on:submit=move |event| sending.send(store, &event, STOCK) novalidate=true>
                <Field name="step" label=words::ink_scale_step() kind=Kind::Decimal unit="g" bound=bound(form, |f| &mut f.step) problems hint=words::ink_scale_step_hint()/>
                <Field name="most" label=words::ink_scale_most() kind=Kind::Decimal unit="g" bound=bound(form, |f| &mut f.most) problems hint=words::ink_scale_most_hint()/>
                <SaveBar problems busy=sending.busy/>
            </form>
        </Page>
    }
}
