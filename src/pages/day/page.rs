//! The day's page.

use super::done_today::DoneToday;
use super::first_steps::FirstSteps;
use super::keep_data_hint::KeepDataHint;
use super::rail::Rail as RailList;
use crate::components::{Empty, Icon, Page};
use crate::i18n;
use crate::pages::heat::ClimateStrip;
use crate::pages::shared::{FailureBar, Verdict};
use crate::route::JobsRoute;
use crate::store::Store;
use lastpull_core::failure::failures_stopping_press;
use lastpull_core::plan::{Rail, RailVerdict, rail};
use leptos::prelude::*;

/// The day: verdict first, then the schedule, then what was done.
#[component]
pub fn DayPage() -> impl IntoView {
    let store = Store::from_context();
    let state = Memo::new(move |_| store.shop.with(|shop| rail(shop, store.clock.get())));
    let verdict = Memo::new(move |_| state.with(|rail| rail.verdict));
    let ends_at_press = Memo::new(move |_| state.with(Rail::ending_at_press));
    // Failures that stop the press come before everything else.
    let standing = Memo::new(move |_| store.shop.with(failures_stopping_press));
    let steps = FirstSteps::of(store);
    let aside = move || {
        view! {
            <a class="button" href=JobsRoute::List.hash()>{i18n::nav_jobs()}</a>
            <a class="button primary with-icon" href=JobsRoute::New.hash()><Icon name="plus"/>{i18n::new_job()}</a>
        }
    };
    view! {
        <Page title=Signal::derive(|| i18n::day_title().to_owned()) aside class="day">
            {move || standing.get().into_iter().map(|notice| view! { <FailureBar notice titled=true/> }).collect_view()}
            {move || steps.card()}
            {move || if verdict.with(|verdict| matches!(verdict, RailVerdict::Empty)) {
                if steps.are_drawn() {
                    return ().into_any();
                }
                view! {
                    <Empty icon="day" title=i18n::day_empty_title() text=i18n::day_empty_text()>
                        <a class="button primary" href=JobsRoute::New.hash()>{i18n::new_job()}</a>
                    </Empty>
                }.into_any()
            } else {
                view! { <Verdict verdict=verdict.get()/> }.into_any()
            }}
            {move || (ends_at_press.get() > 0).then(|| view! { <p class="quiet-line" id="dryer-unknown">{i18n::dryer_unknown(ends_at_press.get())}</p> })}
            <ClimateStrip/>
            <RailList state/>
            <DoneToday/>
            <KeepDataHint/>
        </Page>
    }
}
