//! The screen room's settings: when stock is old, and how long each step takes here.

use crate::parts::{Bound, Field, Kind, Page, SaveBar, Sending, bound};
use crate::place::{Place, ScreensPlace};
use crate::store::Store;
use crate::words;
use lastpull_core::screen::{BurnStep, ScreenRoomForm};
use leptos::prelude::*;

/// The settings: a form with one save.
#[component]
pub fn ScreenRoom() -> impl IntoView {
    let store = Store::from_context();
    let form = RwSignal::new(store.shop.with_untracked(ScreenRoomForm::of));
    let sending = Sending::new(Box::new(move || store.shop.with_untracked(|shop| form.with(|form| form.check(shop)))));
    let problems = sending.problems;
    let saved = move || {
        store.tell(words::settings_saved());
        Place::Screens(ScreensPlace::Home).go();
    };
    let minutes = move |name: &'static str, step: BurnStep, field: Bound| {
        view! { <Field name label=words::burn_step(step) kind=Kind::Decimal unit=words::unit_minutes() bound=field problems/> }
    };
    view! {
        <Page title=Signal::derive(|| words::screen_room_title().to_owned()) up=Place::Screens(ScreensPlace::Home) class="form">
            <form on:submit=move |event| sending.send_then(store, &event, Box::new(saved)) novalidate=true>
                <fieldset class="group">
                    <legend>{words::screen_room_limits()}</legend>
                    <p class="quiet-line">{words::screen_room_limits_hint()}</p>
                    <div class="field-pair">
                        <Field name="coated_days" label=words::screen_room_coated() kind=Kind::Whole unit=words::unit_screen_days() bound=bound(form, |f| &mut f.coated_days) problems/>
                        <Field name="exposed_days" label=words::screen_room_exposed() kind=Kind::Whole unit=words::unit_screen_days() bound=bound(form, |f| &mut f.exposed_days) problems/>
                    </div>
                </fieldset>
                <fieldset class="group">
                    <legend>{words::screen_room_times()}</legend>
                    <p class="quiet-line">{words::screen_room_times_hint()}</p>
                    <p class="quiet-line">{words::screen_room_each()}</p>
                    <div class="field-pair">
                        {minutes("reclaim", BurnStep::Reclaim, bound(form, |f| &mut f.reclaim))}
                        {minutes("coat", BurnStep::Coat, bound(form, |f| &mut f.coat))}
                        {minutes("dry", BurnStep::Dry, bound(form, |f| &mut f.dry))}
                        {minutes("expose", BurnStep::Expose, bound(form, |f| &mut f.expose))}
                        {minutes("wash_dry", BurnStep::WashDry, bound(form, |f| &mut f.wash_dry))}
                        {minutes("tape", BurnStep::Tape, bound(form, |f| &mut f.tape))}
                    </div>
                </fieldset>
                <SaveBar problems busy=sending.busy/>
            </form>
        </Page>
    }
}
