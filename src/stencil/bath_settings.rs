//! How the shop uses its bath.

use super::StencilPlace;
use crate::kept::{RwSignal, Signal};
use crate::live::Drawn;
use crate::parts::{Field, Icon, Kind, Page, SaveBar, TextArea, bound};
use crate::place::Place;
use crate::platform::spawn_local;
use crate::store::Store;
use crate::words;
use lastpull_core::job::Problems;
use lastpull_core::journal::Fact;
use lastpull_core::screen::{BathForm, RECHARGE_AT, StencilFact};
use lastpull_view::view;
use leptos::prelude::*;
use uuid::Uuid;

/// The form.
#[component(transparent)]
pub fn BathSettingsScreen() -> Drawn {
    let store = Store::from_context();
    let form = RwSignal::new(store.shop.with_untracked(|shop| BathForm::of(&shop.stencils.bath)));
    let problems = RwSignal::new(Problems::new());
    let busy = RwSignal::new(false);
    let check = move || store.shop.with_untracked(|shop| form.with(|form| form.check(&shop.stencils.bath)));
    Effect::new(move || {
        let result = check();
        if problems.with_untracked(|problems| !problems.is_empty()) {
            problems.set(result.err().unwrap_or_default());
        }
    });
    let save = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        match check() {
            Err(found) => problems.set(found),
            Ok(fields) => {
                busy.set(true);
                spawn_local(async move {
                    let facts = vec![(Uuid::nil(), Fact::Stencil(StencilFact::Bath(fields.clone())))];
                    let saved = fields.is_empty() || store.record_and_wait(facts).await;
                    busy.set(false);
                    if saved {
                        store.tell(words::bath_settings_saved());
                        Place::Stencil(StencilPlace::Bath).go();
                    }
                });
            }
        }
    };
    let own = words::number(f64::from(RECHARGE_AT) / 100.0, 2);
    view! {
        <Page title=Signal::derive(|| words::bath_settings().to_owned()) up=Place::Stencil(StencilPlace::Bath) class="form">
            <form on:submit=save novalidate=true>
                <Field name="capacity" label=words::bath_capacity() kind=Kind::Whole bound=bound(form, |f| &mut f.capacity) problems/>
                <Field name="recharge_at" label=words::bath_recharge_at() kind=Kind::Decimal unit=words::bath_recharge_at_unit() bound=bound(form, |f| &mut f.recharge_at) problems hint=words::bath_recharge_at_hint(own)/>
                <TextArea name="note" label=words::bath_note() bound=bound(form, |f| &mut f.note) problems/>
                <p class="caution"><Icon name="alert"/>{words::bath_caution()}</p>
                <SaveBar problems busy/>
            </form>
        </Page>
    }
}
