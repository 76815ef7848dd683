//! The day's screen.

use super::done::DoneToday;
use super::keep::KeepHint;
use super::rail::Rail;
use super::verdict::Verdict;
use crate::failure::FailureBar;
use crate::heat::RoomStrip;
use crate::parts::{Empty, Icon, Page};
use crate::place::Place;
use crate::store::Store;
use crate::words;
use lastpull_core::failure::standing_failures;
use lastpull_core::plan::{RailVerdict, rail};
use leptos::prelude::*;

/// The day: verdict first, then the rail, then what was done.
#[component]
pub fn DayScreen() -> impl IntoView {
    let store = Store::from_context();
    let state = Memo::new(move |_| store.shop.with(|shop| rail(shop, store.clock.get())));
    let verdict = Memo::new(move |_| state.with(|rail| rail.verdict));
    // What stands in the way of everything else comes first.
    let standing = Memo::new(move |_| store.shop.with(standing_failures));
    let aside = move || {
        view! {
            <a class="button" href=Place::Jobs.hash()>{words::place_jobs()}</a>
            <a class="button primary with-icon" href=Place::NewJob.hash()><Icon name="plus"/>{words::new_job()}</a>
        }
    };
    view! {
        <Page title=Signal::derive(|| words::day_title().to_owned()) aside class="day">
            {move || standing.get().into_iter().map(|notice| view! { <FailureBar notice titled=true/> }).collect_view()}
            {move || match verdict.get() {
                RailVerdict::Empty => view! {
                    <Empty icon="day" title=words::day_empty_title() text=words::day_empty_text()>
                        <a class="button primary" href=Place::NewJob.hash()>{words::new_job()}</a>
                    </Empty>
                }.into_any(),
                verdict => view! { <Verdict verdict/> }.into_any(),
            }}
            <RoomStrip/>
            <Rail state/>
            <DoneToday/>
            <KeepHint/>
        </Page>
    }
}
