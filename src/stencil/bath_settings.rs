//! How the shop uses its bath.

use super::StencilPlace;
use crate::parts::{Field, Icon, Kind, Page, SaveBar, Sending, TextArea, bound, set};
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::journal::Fact;
use lastpull_core::screen::{BathForm, RECHARGE_AT, StencilFact};
use leptos::prelude::*;
use uuid::Uuid;

/// The form.
#[component]
pub fn BathSettingsScreen() -> impl IntoView {
    let store = Store::from_context();
    let form = RwSignal::new(store.shop.with_untracked(|shop| BathForm::of(&shop.stencils.bath)));
    let sending = Sending::new(Box::new(move || {
        let fields = store.shop.with_untracked(|shop| form.with(|form| form.check(&shop.stencils.bath)))?;
        Ok(set(Uuid::nil(), fields, |fields| Fact::Stencil(StencilFact::Bath(fields))))
    }));
    let problems = sending.problems;
    let saved = move || {
        store.tell(words::settings_saved());
        Place::Stencil(StencilPlace::Bath).go();
    };
    let own = words::number(f64::from(RECHARGE_AT) / 100.0, 2);
    view! {
        <Page title=Signal::derive(|| words::bath_settings().to_owned()) up=Place::Stencil(StencilPlace::Bath) class="form">
            <form on:submit=move |event| sending.send_then(store, &event, Box::new(saved)) novalidate=true>
                <Field name="capacity" label=words::bath_capacity() kind=Kind::Whole bound=bound(form, |f| &mut f.capacity) problems/>
                <Field name="recharge_at" label=words::bath_recharge_at() kind=Kind::Decimal unit=words::bath_recharge_at_unit() bound=bound(form, |f| &mut f.recharge_at) problems hint=words::bath_recharge_at_hint(own)/>
                <TextArea name="note" label=words::bath_note() bound=bound(form, |f| &mut f.note) problems/>
                <p class="caution"><Icon name="alert"/>{words::bath_caution()}</p>
                <SaveBar problems busy=sending.busy/>
            </form>
        </Page>
    }
}
