//! Settings of the screen room: age limits of screens, and the time each step takes.

use crate::components::Page;
use crate::forms::{Bound, Field, FormSubmit, Kind, SaveBar, bound};
use crate::i18n;
use crate::route::{Route, ScreensRoute};
use crate::store::Store;
use lastpull_core::screen::{BurnStep, ScreenSettingsForm};
use leptos::prelude::*;

/// A form with one save button.
#[component]
pub fn ScreenRoomSettingsPage() -> impl IntoView {
    let store = Store::from_context();
    let form = RwSignal::new(store.shop.with_untracked(ScreenSettingsForm::of));
    let submit =
        FormSubmit::new(Box::new(move || store.shop.with_untracked(|shop| form.with(|form| form.check(shop)))))
            .with_draft(form);
    let problems = submit.problems;
    let saved = move || {
        store.notify(i18n::settings_saved());
        Route::Screens(ScreensRoute::Home).replace();
    };
    let minutes = move |step: BurnStep, field: Bound| {
        view! { <Field label=i18n::burn_step(step) kind=Kind::Decimal unit=i18n::unit_minutes() bound=field problems/> }
    };
    view! {
        <Page title=Signal::derive(|| i18n::screen_room_title().to_owned()) up=Route::Screens(ScreensRoute::Home) class="form">
            <form on:submit=move |event| submit.submit_then(store, &event, Box::new(saved)) novalidate=true>
                {submit.draft_line()}
                <fieldset class="group">
                    <legend>{i18n::screen_room_limits()}</legend>
                    <p class="quiet-line">{i18n::screen_room_limits_hint()}</p>
                    <div class="field-pair">
                        <Field label=i18n::screen_room_coated() kind=Kind::Whole unit=i18n::unit_screen_days() bound=bound!(form.coated_days) problems/>
                        <Field label=i18n::screen_room_exposed() kind=Kind::Whole unit=i18n::unit_screen_days() bound=bound!(form.exposed_days) problems/>
                    </div>
                </fieldset>
                <fieldset class="group">
                    <legend>{i18n::screen_room_times()}</legend>
                    <p class="quiet-line">{i18n::screen_room_times_hint()}</p>
                    <p class="quiet-line">{i18n::screen_room_each()}</p>
                    <div class="field-pair">
                        {minutes(BurnStep::Reclaim, bound!(form.reclaim))}
                        {minutes(BurnStep::Coat, bound!(form.coat))}
                        {minutes(BurnStep::Dry, bound!(form.dry))}
                        {minutes(BurnStep::Expose, bound!(form.expose))}
                        {minutes(BurnStep::WashDry, bound!(form.wash_dry))}
                        {minutes(BurnStep::Tape, bound!(form.tape))}
                    </div>
                </fieldset>
                <SaveBar problems busy=submit.busy/>
            </form>
        </Page>
    }
}
