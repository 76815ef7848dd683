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
        FormSubmit::new(Box::new(move || store.shop.with_untracked(|shop| form.with(|form| form.check(shop)))));
    let problems = submit.problems;
    let saved = move || {
        store.notify(i18n::settings_saved());
        Route::Screens(ScreensRoute::Home).navigate();
    };
    let minutes = move |name: &'static str, step: BurnStep, field: Bound| {
        view! { <Field name label=i18n::burn_step(step) kind=Kind::Decimal unit=i18n::unit_minutes() bound=field problems/> }
    };
    view! {
        <Page title=Signal::derive(|| i18n::screen_room_title().to_owned()) up=Route::Screens(ScreensRoute::Home) class="form">
            <form on:submit=move |event| submit.submit_then(store, &event, Box::new(saved)) novalidate=true>
                <fieldset class="group">
                    <legend>{i18n::screen_room_limits()}</legend>
                    <p class="quiet-line">{i18n::screen_room_limits_hint()}</p>
                    <div class="field-pair">
                        <Field name="coated_days" label=i18n::screen_room_coated() kind=Kind::Whole unit=i18n::unit_screen_days() bound=bound(form, |f| &mut f.coated_days) problems/>
                        <Field name="exposed_days" label=i18n::screen_room_exposed() kind=Kind::Whole unit=i18n::unit_screen_days() bound=bound(form, |f| &mut f.exposed_days) problems/>
                    </div>
                </fieldset>
                <fieldset class="group">
                    <legend>{i18n::screen_room_times()}</legend>
                    <p class="quiet-line">{i18n::screen_room_times_hint()}</p>
                    <p class="quiet-line">{i18n::screen_room_each()}</p>
                    <div class="field-pair">
                        {minutes("reclaim", BurnStep::Reclaim, bound(form, |f| &mut f.reclaim))}
                        {minutes("coat", BurnStep::Coat, bound(form, |f| &mut f.coat))}
                        {minutes("dry", BurnStep::Dry, bound(form, |f| &mut f.dry))}
                        {minutes("expose", BurnStep::Expose, bound(form, |f| &mut f.expose))}
                        {minutes("wash_dry", BurnStep::WashDry, bound(form, |f| &mut f.wash_dry))}
                        {minutes("tape", BurnStep::Tape, bound(form, |f| &mut f.tape))}
                    </div>
                </fieldset>
                <SaveBar problems busy=submit.busy/>
            </form>
        </Page>
    }
}
